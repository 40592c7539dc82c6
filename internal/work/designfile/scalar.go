package designfile

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/work/design"
)

// Numbers are read only as people write them, because YAML's other spellings
// (0x10, 010, 1_000, 1e3, .5) are more often a slip than a wish.
var (
	plainNumber  = regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]+)?$`)
	commaNumber  = regexp.MustCompile(`^-?[0-9]+,[0-9]+$`)
	numberInUnit = regexp.MustCompile(`^(-?[0-9]+(?:\.[0-9]+)?)\s*([^0-9\s.,_].*)$`)
	notDecimal   = regexp.MustCompile(`^[-+]?0[xXoObB0-9]`)
	exponent     = regexp.MustCompile(`^[-+]?[0-9.]+[eE][-+]?[0-9]+$`)
)

// readNumber returns the number in n, or what is wrong with it. Its range is
// not looked at.
func readNumber(n *yaml.Node, unit string) (float64, error) {
	if wrong := notPlainNumber(n, unit); wrong != nil {
		return 0, wrong
	}
	v, err := strconv.ParseFloat(n.Value, 64)
	if err != nil {
		return 0, flaw.New("%s is too large a number", echo.Plain(n.Value))
	}
	return v, nil
}

// readWhole returns the whole number in n, or what is wrong with it.
func readWhole(n *yaml.Node, bits int) (int64, error) {
	if wrong := notPlainNumber(n, ""); wrong != nil {
		return 0, wrong
	}
	if whole, fraction, ok := strings.Cut(n.Value, "."); ok {
		if strings.Trim(fraction, "0") == "" {
			return 0, flaw.New("%s: write the whole number without a point: %s", echo.Plain(n.Value), echo.Plain(whole))
		}
		return 0, flaw.New("%s is not a whole number", echo.Plain(n.Value))
	}
	v, err := strconv.ParseInt(n.Value, 10, bits)
	if err != nil {
		return 0, flaw.New("%s is too large a number", echo.Plain(n.Value))
	}
	return v, nil
}

// notPlainNumber says why n is not a number as we read them, or nil.
func notPlainNumber(n *yaml.Node, unit string) error {
	v := n.Value
	// What looks like a number is repeated as it stands, other text in quotes.
	shown, quoted := echo.Plain(v), echo.Quoted(v)
	switch {
	case n.Kind != yaml.ScalarNode:
		return flaw.New("a number is expected here, not a %s", shapeOf(n))
	case n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0 && plainNumber.MatchString(v):
		return flaw.New("%s is in quotes; write the number without them", quoted)
	case n.Style&^yaml.FlowStyle != 0:
		return flaw.New("%s is not a number", quoted)
	case plainNumber.MatchString(v):
		return nil
	case n.ShortTag() == "!!null":
		return flaw.New("has no value; a number is expected here")
	case commaNumber.MatchString(v):
		return flaw.New("%s: write a decimal point: %s", shown, strings.Replace(shown, ",", ".", 1))
	case exponent.MatchString(v):
		return flaw.New("%s: write the number out, without an exponent", shown)
	case notDecimal.MatchString(v):
		return flaw.New("%s: write the number in decimal, without a leading 0", shown)
	case plainNumber.MatchString(strings.ReplaceAll(v, "_", "")):
		return flaw.New("%s: write the digits alone: %s", shown, strings.ReplaceAll(shown, "_", ""))
	case plainNumber.MatchString("0" + v):
		return flaw.New("%s: write a digit before the point: 0%s", shown, shown)
	case n.ShortTag() == "!!float" && strings.HasPrefix(strings.TrimLeft(v, "+-"), "."):
		return flaw.New("%s is not a finite number", shown)
	}
	m := numberInUnit.FindStringSubmatch(v)
	switch {
	case m == nil:
		return flaw.New("%s is not a number", quoted)
	case unit == "":
		return flaw.New("%s: write the number alone: %s", quoted, echo.Plain(m[1]))
	case m[2] == unit:
		return flaw.New("%s: write the number alone, %s; its unit is always %s", quoted, echo.Plain(m[1]), unit)
	}
	return flaw.New("%s: write the number alone, in %s", quoted, unit)
}

// readText returns the text in n, or what is wrong with it.
func readText(n *yaml.Node) (string, error) {
	if n.Kind != yaml.ScalarNode {
		return "", flaw.New("text is expected here, not a %s", shapeOf(n))
	}
	read := map[string]flaw.Word{"!!int": "a number", "!!float": "a number", "!!bool": "true or false", "!!timestamp": "a date"}
	switch tag := n.ShortTag(); tag {
	case "!!str":
		return n.Value, nil
	case "!!null":
		return "", flaw.New(`has no value; write "" for none`)
	default:
		what := read[tag]
		if what == "" {
			what = "something else than text"
		}
		return "", flaw.New("%s is read as %s; put it in quotes: %s", echo.Plain(n.Value), what, echo.Quoted(n.Value))
	}
}

// shapeOf names the kind of n for people.
func shapeOf(n *yaml.Node) flaw.Word {
	switch n.Kind {
	case yaml.MappingNode:
		return "group of keys"
	case yaml.SequenceNode:
		return "list"
	case yaml.AliasNode:
		return "reference"
	}
	return "single value"
}

// readSetting sets field f of d from n, or says what is wrong.
func readSetting(n *yaml.Node, f setting.Field[design.Design], d *design.Design) (wrong error) {
	switch to := f.At(d).(type) {
	case *float64:
		var v float64
		if v, wrong = readNumber(n, f.Unit); wrong == nil {
			*to = v
		}
	case *int:
		var v int64
		if v, wrong = readWhole(n, strconv.IntSize); wrong == nil {
			*to = int(v)
		}
	case *int64:
		var v int64
		if v, wrong = readWhole(n, 64); wrong == nil {
			*to = v
		}
	case *string:
		var v string
		if v, wrong = readText(n); wrong == nil {
			*to = v
		}
	}
	return wrong
}

// value is a scalar about to be written.
type value struct {
	text   string
	number bool
}

// settingValue returns field f of d as it is written.
func settingValue(f setting.Field[design.Design], d *design.Design) value {
	switch v := f.At(d).(type) {
	case *float64:
		return numberValue(*v)
	case *int:
		return value{strconv.Itoa(*v), true}
	case *int64:
		return value{strconv.FormatInt(*v, 10), true}
	case *string:
		return value{*v, false}
	}
	panic("designfile: setting " + f.Path + " has a type that cannot be written")
}

// numberValue writes v in the fewest digits that read back as v.
func numberValue(v float64) value {
	if v == 0 { // also −0
		return value{"0", true}
	}
	return value{strconv.FormatFloat(v, 'f', -1, 64), true}
}

// node returns v as a new node.
func (v value) node() *yaml.Node {
	n := &yaml.Node{Kind: yaml.ScalarNode}
	v.into(n)
	return n
}

// into makes v the value of scalar n, in n's own style of quotes if that
// can hold it.
func (v value) into(n *yaml.Node) {
	n.Value = v.text
	if v.number {
		n.Tag, n.Style = "", 0
		return
	}
	n.Tag = "!!str"
	quoted := n.Style & (yaml.SingleQuotedStyle | yaml.DoubleQuotedStyle)
	switch {
	case quoted != 0 && v.printable():
		n.Style = quoted
	case v.bare():
		n.Style = 0
	case v.readsWellInLines():
		n.Style = yaml.LiteralStyle
	default:
		n.Style = yaml.DoubleQuotedStyle
	}
}

// inline returns v on one line, with quotes where YAML needs them.
func (v value) inline() string {
	if v.number || v.bare() {
		return v.text
	}
	return strconv.Quote(v.text) // every escape of Go's is one of YAML's
}

var bareWords = regexp.MustCompile(`^\pL[\pL\pN_.%()'°+/-]*( [\pL\pN_.%()'°+/-]+)*$`)

// bare reports whether the text is read back as itself without quotes.
func (v value) bare() bool {
	return bareWords.MatchString(v.text) && (&yaml.Node{Kind: yaml.ScalarNode, Value: v.text}).ShortTag() == "!!str"
}

// printable reports whether the text is one line of visible signs.
func (v value) printable() bool {
	return !strings.ContainsFunc(v.text, func(r rune) bool { return !unicode.IsPrint(r) })
}

// readsWellInLines reports whether the text is several plain lines.
func (v value) readsWellInLines() bool {
	all := strings.Split(strings.TrimSuffix(v.text, "\n"), "\n")
	if len(all) < 2 || all[0] == "" || all[len(all)-1] == "" {
		return false
	}
	for _, l := range all {
		if !(value{text: l}).printable() || strings.TrimSpace(l) != l {
			return false
		}
	}
	return true
}
