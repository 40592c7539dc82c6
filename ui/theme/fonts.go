package theme

import (
	_ "embed"

	"fyne.io/fyne/v2"
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
