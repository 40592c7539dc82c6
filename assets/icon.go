package assets

import _ "embed"

// Icon is the program's icon, a PNG of 512 × 512 pixels drawn from
// icon/ripplewright.svg.
//
//go:embed icon/ripplewright.png
var Icon []byte
