package written

import (
	"slices"
	"strings"

	"ripplewright/internal/food/egg"
)

// sized takes the size of eggs out of the name, "" for none.
func (r *Reader) sized(p *parts) (name, size string) {
	fields := strings.Fields(p.name)
	var kept []string
	eggy, lettered := false, false
	for _, f := range fields {
		switch one(strings.ToLower(strings.Trim(f, "."))) {
		case "egg", "yolk", "white":
			eggy = true
		}
	}
	if !eggy {
		return p.name, ""
	}
	for i := 0; i < len(fields); i++ {
		f := strings.ToLower(strings.Trim(fields[i], "-."))
		switch {
		case f == "extra" && i+1 < len(fields) && strings.EqualFold(fields[i+1], "large"):
			size, i = "extra large", i+1
		case f == "extra-large" || f == "xl":
			size = "extra large"
		case shortSizes[f] != "":
			size = shortSizes[f]
		case f == "large" || f == "medium" || f == "small" || f == "jumbo" || f == "peewee":
			size = f
		case fields[i] == "L" || fields[i] == "M" || fields[i] == "S":
			lettered = size == ""
			size = map[string]string{"L": "large", "M": "medium", "S": "small"}[fields[i]]
		case f == "size" || f == "sized":
		default:
			kept = append(kept, fields[i])
		}
	}
	p.lettered = lettered && !slices.ContainsFunc(fields, func(f string) bool { return shellWords[strings.ToLower(f)] })
	return strings.Join(kept, " "), size
}

// sizeWords are words that alone in brackets tell the size of eggs.
var sizeWords = words("large medium small jumbo l m s xl lg lge lrg med sm")

// shellWords are the sizes that the US has in words.
var shellWords = words("small medium large")

// shortSizes are sizes as they are cut short.
var shortSizes = map[string]string{"lg": "large", "lge": "large", "lrg": "large", "med": "medium", "sm": "small", "sml": "small"}

// european are the names of sizes there.
var european = map[string]string{"small": "S", "medium": "M", "large": "L", "extra large": "XL"}

func (r *Reader) classOf(size string) (egg.Size, bool) {
	if size == "" {
		size = r.eggs.Size
	} else if strings.EqualFold(r.eggs.System, "EU") {
		size = european[size]
	}
	s, err := egg.Find(r.eggs.System, size)
	return s, err == nil
}
