package astray

import (
	"regexp"
	"strings"
	"sync"

	"ripplewright/internal/show/tongue"
)

var (
	// common are English words that no German sentence has.
	common = regexp.MustCompile(`(?i)\b(the|of|and|with|from|is|are|not|it|has|have|this|that|which|its|your|you|than|what|when|how|where|only|but|to|by|for|or|at|on|be|no|may|left|custard|foam|tub|tubs|kitchen|freezer|sugar|milk|yolk|yolks|whites?|cream|days?|weeks?|hours?|hard|firm|soft|served?|ribbons?|figures?|lines?|settings?|warning|note|unknown)\b`)
	// sources are what stands as it was published: books, journals, offices, dialogs' codes.
	sources = regexp.MustCompile(`\[[a-z_]+, [^\]]*\]|\[[a-z_]+\]|\([^()]*\b(19|20)\d\d\b[^()]*\)|\([^()]*(FDA|CFR|USDA|CRC|CoFID|Codex|Handbook|Cook Book|McGee)[^()]*\)|FDA Food Code [\d.-]+|\d+ CFR [\d.()a-z]+|J\. Dairy Sci\.[^.;)]*|American Woman's Cook Book|Journal of [A-Z][\w ]+`)
	// kept are texts within quotes, which a file or a maker has said, and paths.
	kept = regexp.MustCompile(`„[^“”]*[“”]|"[^"]*"|\S+\.(yaml|pdf|png|svg|md|html|ics|csv)\S*|(^|\s)--?[a-z]+\b|\b(dense|foam|tubs|blend|eggs|serving|batch|label|kitchen|model)(\.[a-z_]+(\[\d+\])?)+|: (foam|dense|blend|tubs|serving):|to: `)
)

var differ struct {
	sync.Once
	texts map[string]bool
}

// English returns what of a text is English where German is spoken: a message of the
// catalogue that German says otherwise, or else the words that no German has. own are
// the maker's words, which stand as they are.
func English(text string, own ...string) []string {
	differ.Do(func() {
		differ.texts = map[string]bool{}
		german, _ := tongue.Texts("de") // compiled in
		for m := range german {
			shown, _, _ := strings.Cut(string(m), "¦")
			differ.texts[shown] = true
		}
		for _, is := range german { // a word of both
			delete(differ.texts, is)
		}
	})
	text = plain(text)
	if differ.texts[strings.TrimSpace(text)] {
		return []string{text}
	}
	for _, words := range own {
		if words != "" {
			text = strings.ReplaceAll(text, words, "")
		}
	}
	return common.FindAllString(kept.ReplaceAllString(sources.ReplaceAllString(text, ""), ""), -1)
}
