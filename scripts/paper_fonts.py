"""Makes the two TrueType files for paper from the two web fonts: one weight each, both ranges of letters in one file.

The type-setter reads no WOFF2 and picks one file for a family and weight, so the ranges have to be joined.
Run it again only when the web fonts change: `python scripts/paper_fonts.py`.
"""

import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from fontTools.merge import Merger
from fontTools.ttLib import TTFont
from fontTools.varLib.instancer import instantiateVariableFont

FONTS = Path(__file__).resolve().parent.parent / "src" / "conewright" / "data" / "fonts"
FAMILY = "Atkinson Hyperlegible Next"
RANGES = ("latin", "latin-ext")
WEIGHTS = {"Regular": 400, "Bold": 700}
KEPT_NAMES = (0, 5, 7, 8, 9, 11, 13, 14)  # copyright, version, makers, licence
BOLD, REGULAR, ITALIC = 1 << 5, 1 << 6, 1
VARIABLE = ("STAT", "MVAR", "HVAR", "fvar", "avar", "gvar")


def main() -> int:
    """Write both files."""
    for style, weight in WEIGHTS.items():
        font = _named(_joined(weight), style, weight)
        font.save(FONTS / f"AtkinsonHyperlegibleNext-{style}.ttf")
    return 0


def _joined(weight: int) -> TTFont:
    with TemporaryDirectory() as folder:
        parts = []
        for letters in RANGES:
            part = instantiateVariableFont(TTFont(FONTS / f"atkinson-next-{letters}.woff2"), {"wght": weight})
            part.flavor = None
            parts.append(str(Path(folder) / f"{letters}.ttf"))
            part.save(parts[-1])
        return Merger().merge(parts)


def _named(font: TTFont, style: str, weight: int) -> TTFont:
    names = font["name"]
    names.names = [record for record in names.names if record.nameID in KEPT_NAMES]
    full = f"{FAMILY} {style}"
    for number, words in ((1, FAMILY), (2, style), (3, full), (4, full), (6, f"AtkinsonHyperlegibleNext-{style}")):
        names.setName(words, number, 3, 1, 0x409)
    bold = style == "Bold"
    font["OS/2"].usWeightClass = weight
    font["OS/2"].fsSelection = (font["OS/2"].fsSelection & ~(BOLD | REGULAR | ITALIC)) | (BOLD if bold else REGULAR)
    font["head"].macStyle = 1 if bold else 0
    for table in VARIABLE:
        if table in font:
            del font[table]
    return font


if __name__ == "__main__":
    sys.exit(main())
