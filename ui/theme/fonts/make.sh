#!/bin/sh
# Makes signs-regular.ttf and signs-bold.ttf: the signs that the toolkit's font
# lacks, mathematics from Liberation Sans and ticks and arrows from DejaVu Sans,
# with the line metrics of Noto Sans, so that a sign stands on the line of its
# neighbours, and its space, since the toolkit takes the space after a sign from
# the sign's font. Needs the Debian packages fonttools, fonts-liberation2 and
# fonts-dejavu-core. A sign that the tests miss is added to a list below.
#
#   sh make.sh [FOLDER OF TRUETYPE FONTS]
set -eu
cd "$(dirname "$0")"
from=${1:-/usr/share/fonts/truetype}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
plain='--layout-features= --no-hinting --drop-tables+=MATH,FFTM'
for style in Regular Bold; do
	dejavu=DejaVuSans.ttf
	[ $style = Regular ] || dejavu=DejaVuSans-Bold.ttf
	pyftsubset "$from/liberation2/LiberationSans-$style.ttf" --unicodes=20,A0,2202,2212,221A,221E,222B,2248,2260,2264,2265 $plain --output-file="$work/a.ttf"
	pyftsubset "$from/dejavu/$dejavu" --unicodes=2190-2193,2713,2717,26A0 $plain --output-file="$work/b.ttf"
	(cd "$work" && pyftmerge a.ttf b.ttf)
	/usr/bin/python3 - "$work/merged.ttf" $style <<'P'
import sys
from fontTools.ttLib import TTFont
f, style = TTFont(sys.argv[1]), sys.argv[2]
em = f["head"].unitsPerEm
up, down = round(1.069 * em), -round(0.293 * em)  # Noto Sans: 1069 and -293 of 1000
f["hhea"].ascent, f["hhea"].descent, f["hhea"].lineGap = up, down, 0
o = f["OS/2"]
o.sTypoAscender, o.sTypoDescender, o.sTypoLineGap, o.usWinAscent, o.usWinDescent = up, down, 0, up, -down
for code in (0x20, 0xA0):
    f["hmtx"][f.getBestCmap()[code]] = (round(0.26 * em), 0)  # Noto Sans: 260 of 1000
f["name"].names = []
for i, s in ((0, "Liberation Sans (c) 2012 Red Hat, Inc.; DejaVu Sans (c) 2003 Bitstream, Inc., changes in the public domain"),
             (1, "Ripplewright Signs"), (2, style), (4, "Ripplewright Signs " + style), (6, "RipplewrightSigns-" + style),
             (13, "SIL Open Font License 1.1; of arrows and ticks the Bitstream Vera licence")):
    f["name"].setName(s, i, 3, 1, 0x409)
f.save("signs-%s.ttf" % style.lower())
P
done
