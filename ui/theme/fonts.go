package theme

import (
	_ "embed"

	"fyne.io/fyne/v2"
	base "fyne.io/fyne/v2/theme"
)

// The toolkit's own font has no minus, no "at least" and no tick, and a desktop
// without fonts has none to lend. These hold just such signs, and the space that
// the toolkit takes from the font of the sign before it; all other letters come
// from the toolkit's font, which it asks next. fonts/make.sh made them.
var (
	//go:embed fonts/signs-regular.ttf
	signsRegular []byte
	//go:embed fonts/signs-bold.ttf
	signsBold []byte

	regular = fyne.NewStaticResource("signs-regular.ttf", signsRegular)
	bold    = fyne.NewStaticResource("signs-bold.ttf", signsBold)
)

// The toolkit reads its font of coloured pictures, 4 MB, once for each style of letters
// before it sets the first, and keeps them. Nothing of ours is written in them; what a
// maker writes in them the toolkit then sets in the desktop's own.
func init() {
	if f, ok := base.DefaultEmojiFont().(*fyne.StaticResource); ok {
		f.StaticContent = signsRegular
	}
}
