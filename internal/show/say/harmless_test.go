package say

import (
	"html"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

func TestHarmlessSaysOnlyWhatItSays(t *testing.T) {
	for _, c := range []struct {
		place      For
		text, want string
	}{
		{Terminal, "red \x1b[31mred\x1b[0m", "red [31mred[0m"},
		{Terminal, "a\u009b31mb", "a31mb"},
		{Terminal, "bell\a and back\b", "bell and back"},
		{Terminal, "gpj.\u202eexe", "gpj.exe"},
		{Terminal, "\u2066left\u2069", "left"},
		{Terminal, "two\r\nlines\u2028three\u0085four", "two lines three four"},
		{Terminal, "  crème brûlée\u00a0№ 1  ", "crème brûlée\u00a0№ 1"},
		{Terminal, "bad \xff\xfe bytes", "bad bytes"},
		{Markdown, "<script>alert(1)</script>", "&lt;script&gt;alert(1)&lt;/script&gt;"},
		{Markdown, "a | b *c* `d` [e](f) #g", "a \\| b \\*c\\* \\`d\\` \\[e](f) \\#g"},
		{Markdown, "- not a list", `\- not a list`},
		{Markdown, "1. not a list", `1\. not a list`},
		{HTML, `<img src="x">&`, "&lt;img src=&#34;x&#34;&gt;&amp;"},
		{FileName, "../../etc/passwd", "etc-passwd"},
		{FileName, "lemon / lime: 2?", "lemon - lime- 2"},
		{FileName, ".hidden", "hidden"},
		{FileName, "con.yaml", "_con.yaml"},
		{FileName, "COM1", "_COM1"},
		{FileName, "\x00\n", "untitled"},
		{FileName, "..", "untitled"},
	} {
		assert.Equal(t, c.want, Harmless(c.text, c.place), "%q", c.text)
	}
	assert.Equal(t, "one  1\ntwo", HarmlessPage("one  1\ntw\x1b\u202eo\r"))
}

func FuzzHarmless(f *testing.F) {
	for _, s := range []string{"", "lemon", "\x1b]0;title\a", "\u202e", "a\xffb", "- x", "1) x", "<b>", strings.Repeat("ü", 300), "nul", "\u00a0."} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, place := range []For{Terminal, Markdown, HTML, FileName} {
			out := Harmless(text, place)
			if !utf8.ValidString(out) || utf8.RuneCountInString(html.UnescapeString(strings.ReplaceAll(out, `\`, ""))) > textRunes {
				t.Fatalf("not valid or too long: %q", out)
			}
			for _, r := range out {
				if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || r == '\u2028' || r == '\u2029' {
					t.Fatalf("%U is left in %q", r, out)
				}
			}
			switch place {
			case Markdown, HTML:
				if strings.ContainsAny(out, "<>") {
					t.Fatalf("a tag is left in %q", out)
				}
			case FileName:
				if out == "" || len(out) > nameBytes+1 || strings.ContainsAny(out, `/\:*?"<>|`) || strings.HasPrefix(out, ".") || strings.HasSuffix(out, ".") || strings.HasSuffix(out, " ") {
					t.Fatalf("no name for a file: %q", out)
				}
			}
		}
	})
}

// A kitchen's name is the maker's own, and stands in lists and sentences.
func TestAKitchensNameIsShownHarmlessly(t *testing.T) {
	name := KitchenName("Quay\u202ecba\x1b[31m\nloft" + strings.Repeat("x", 10000))
	assert.NotContains(t, name, "\u202e")
	assert.NotContains(t, name, "\x1b")
	assert.NotContains(t, name, "\n")
	assert.LessOrEqual(t, len([]rune(name)), 120)
	assert.Equal(t, "Quay loft", KitchenName("Quay loft"))
}
