package theme

import (
	"image/color"

	"fyne.io/fyne/v2"
	base "fyne.io/fyne/v2/theme"

	"ripplewright/ui/kit"
)

type palette map[fyne.ThemeColorName]color.NRGBA

// rgb is the opaque colour written 0xRRGGBB; rgba the same with its opacity.
func rgb(hex uint32) color.NRGBA { return rgba(hex, 0xFF) }

func rgba(hex uint32, a uint8) color.NRGBA {
	return color.NRGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: a}
}

// light is paper in daylight.
var light = palette{
	base.ColorNameBackground:          rgb(0xFAF5EA),
	base.ColorNameForeground:          rgb(0x17313A),
	base.ColorNamePlaceHolder:         rgb(0x566A6E),
	base.ColorNameDisabled:            rgb(0x7C8784),
	base.ColorNameButton:              rgb(0xECE3D0),
	base.ColorNameDisabledButton:      rgb(0xF1EBDD),
	base.ColorNameInputBackground:     rgb(0xFFFDF8),
	base.ColorNameInputBorder:         rgb(0x858C86),
	base.ColorNameHeaderBackground:    rgb(0xF0E8D7),
	base.ColorNameMenuBackground:      rgb(0xFFFBF2),
	base.ColorNameOverlayBackground:   rgb(0xFFFBF2),
	base.ColorNamePrimary:             rgb(0x0F6070),
	base.ColorNameForegroundOnPrimary: rgb(0xFFFDF8),
	base.ColorNameHyperlink:           rgb(0x0B5968),
	base.ColorNameFocus:               rgba(0xC9781A, 0x66),
	base.ColorNameHover:               rgba(0x0F6070, 0x1C),
	base.ColorNamePressed:             rgba(0x0F6070, 0x38),
	base.ColorNameSelection:           rgba(0xC9781A, 0x40),
	base.ColorNameSeparator:           rgb(0xDACFB9),
	base.ColorNameScrollBar:           rgba(0x17313A, 0x90),
	base.ColorNameScrollBarBackground: rgba(0x17313A, 0x18),
	base.ColorNameShadow:              rgba(0x17313A, 0x40),
	base.ColorNameError:               rgb(0xA32A1F),
	base.ColorNameForegroundOnError:   rgb(0xFFFDF8),
	base.ColorNameSuccess:             rgb(0x2E6B3C),
	base.ColorNameForegroundOnSuccess: rgb(0xFFFDF8),
	base.ColorNameWarning:             rgb(0x8E5207),
	base.ColorNameForegroundOnWarning: rgb(0xFFFDF8),
	kit.ColorNameDense:                rgb(0x924A0C),
	kit.ColorNameFoam:                 rgb(0x0B5F6C),
	kit.ColorNameBoth:                 rgb(0x356B3F),
	kit.ColorNameGrid:                 rgb(0xE2D8C3),
	kit.ColorNameCustard:              rgb(0xEBB457),
	kit.ColorNameMeringue:             rgb(0xFBF3E2),
	kit.ColorNameCardboard:            rgb(0xCDB48D),
}

// dark is the sea at night.
var dark = palette{
	base.ColorNameBackground:          rgb(0x10222A),
	base.ColorNameForeground:          rgb(0xF1E9D8),
	base.ColorNamePlaceHolder:         rgb(0xA3B4B3),
	base.ColorNameDisabled:            rgb(0x7C8E8F),
	base.ColorNameButton:              rgb(0x22404A),
	base.ColorNameDisabledButton:      rgb(0x1A313A),
	base.ColorNameInputBackground:     rgb(0x0B181E),
	base.ColorNameInputBorder:         rgb(0x6F8488),
	base.ColorNameHeaderBackground:    rgb(0x193039),
	base.ColorNameMenuBackground:      rgb(0x19313A),
	base.ColorNameOverlayBackground:   rgb(0x162B34),
	base.ColorNamePrimary:             rgb(0x6CC7CB),
	base.ColorNameForegroundOnPrimary: rgb(0x08171C),
	base.ColorNameHyperlink:           rgb(0x7FD3D6),
	base.ColorNameFocus:               rgba(0xF0B05A, 0x4C),
	base.ColorNameHover:               rgba(0x6CC7CB, 0x20),
	base.ColorNamePressed:             rgba(0x6CC7CB, 0x38),
	base.ColorNameSelection:           rgba(0xF0B05A, 0x3C),
	base.ColorNameSeparator:           rgb(0x2B4751),
	base.ColorNameScrollBar:           rgba(0xF1E9D8, 0x80),
	base.ColorNameScrollBarBackground: rgba(0xF1E9D8, 0x18),
	base.ColorNameShadow:              rgba(0x000000, 0x80),
	base.ColorNameError:               rgb(0xFF9C8D),
	base.ColorNameForegroundOnError:   rgb(0x2A0703),
	base.ColorNameSuccess:             rgb(0x86CE93),
	base.ColorNameForegroundOnSuccess: rgb(0x06210C),
	base.ColorNameWarning:             rgb(0xF0B35E),
	base.ColorNameForegroundOnWarning: rgb(0x2B1700),
	kit.ColorNameDense:                rgb(0xF2B063),
	kit.ColorNameFoam:                 rgb(0x7CD2D8),
	kit.ColorNameBoth:                 rgb(0x93D39C),
	kit.ColorNameGrid:                 rgb(0x263F49),
	kit.ColorNameCustard:              rgb(0xDFA548),
	kit.ColorNameMeringue:             rgb(0xF3EAD8),
	kit.ColorNameCardboard:            rgb(0x8F7A5B),
}

// lightStrong and darkStrong replace what high contrast changes.
var lightStrong = palette{
	base.ColorNameBackground:        rgb(0xFFFFFF),
	base.ColorNameForeground:        rgb(0x000000),
	base.ColorNamePlaceHolder:       rgb(0x2E3A3C),
	base.ColorNameDisabled:          rgb(0x4A5556),
	base.ColorNameButton:            rgb(0xE6E6E6),
	base.ColorNameDisabledButton:    rgb(0xF2F2F2),
	base.ColorNameInputBackground:   rgb(0xFFFFFF),
	base.ColorNameInputBorder:       rgb(0x000000),
	base.ColorNameMenuBackground:    rgb(0xFFFFFF),
	base.ColorNameOverlayBackground: rgb(0xFFFFFF),
	base.ColorNameHeaderBackground:  rgb(0xEEEEEE),
	base.ColorNamePrimary:           rgb(0x004552),
	base.ColorNameHyperlink:         rgb(0x004552),
	base.ColorNameFocus:             rgba(0xFF9500, 0x99),
	base.ColorNameSelection:         rgba(0xFF9500, 0x70),
	base.ColorNameSeparator:         rgb(0x6A6A6A),
	base.ColorNameError:             rgb(0x8C0D05),
	base.ColorNameSuccess:           rgb(0x0D4F1C),
	base.ColorNameWarning:           rgb(0x663600),
	kit.ColorNameDense:              rgb(0x6B3100),
	kit.ColorNameFoam:               rgb(0x004552),
	kit.ColorNameBoth:               rgb(0x0D4F1C),
	kit.ColorNameGrid:               rgb(0xB9B9B9),
}

var darkStrong = palette{
	base.ColorNameBackground:        rgb(0x000000),
	base.ColorNameForeground:        rgb(0xFFFFFF),
	base.ColorNamePlaceHolder:       rgb(0xD5DDDD),
	base.ColorNameDisabled:          rgb(0xA9B5B5),
	base.ColorNameButton:            rgb(0x1E2C30),
	base.ColorNameDisabledButton:    rgb(0x141A1C),
	base.ColorNameInputBackground:   rgb(0x000000),
	base.ColorNameInputBorder:       rgb(0xFFFFFF),
	base.ColorNameMenuBackground:    rgb(0x0A0A0A),
	base.ColorNameOverlayBackground: rgb(0x0A0A0A),
	base.ColorNameHeaderBackground:  rgb(0x1A1A1A),
	base.ColorNamePrimary:           rgb(0x8CEBF0),
	base.ColorNameHyperlink:         rgb(0x8CEBF0),
	base.ColorNameFocus:             rgba(0xFFC247, 0x66),
	base.ColorNameSelection:         rgba(0xFFC247, 0x50),
	base.ColorNameSeparator:         rgb(0x9A9A9A),
	base.ColorNameError:             rgb(0xFFB4A8),
	base.ColorNameSuccess:           rgb(0xA5F0B1),
	base.ColorNameWarning:           rgb(0xFFCC80),
	kit.ColorNameDense:              rgb(0xFFC37A),
	kit.ColorNameFoam:               rgb(0x8CEBF0),
	kit.ColorNameBoth:               rgb(0xA5F0B1),
	kit.ColorNameGrid:               rgb(0x555555),
}
