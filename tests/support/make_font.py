"""Makes the kit's own font from the one it was subset from.

    python tests/support/make_font.py FOLDER

writes kit-reading.ttf, kit-reading.woff2 and OFL.txt into FOLDER. The source is the regular face of
the package `fontpkg-abeezee`: letters and digits of the forms that beginning readers meet on paper.
Its licence (SIL Open Font License 1.1) reserves the original name for unmodified copies, so what is
made here bears a name of its own; copyright, trademark and licence notices stay as they were.
"""

from __future__ import annotations

import argparse
import io
from pathlib import Path

import fontpkg_abeezee
from fontTools import subset
from fontTools.ttLib import TTFont

FAMILY = "Kit Reading"
POSTSCRIPT = "KitReading-Regular"

LATIN_1 = [*range(0x20, 0x7F), *range(0xA0, 0x100)]
# What typesetting adds to it: dotless i, OE, dashes, quotes, bullet, ellipsis, guillemets, fraction
# bar, euro and minus; by number, for half of them look like something else in an editor.
BEYOND = [0x131, 0x152, 0x153, 0x2013, 0x2014, *range(0x2018, 0x201B), *range(0x201C, 0x201F)]
BEYOND += [0x2022, 0x2026, 0x2039, 0x203A, 0x2044, 0x20AC, 0x2212]

# Name records that say what the font is called; the rest are notices, which stay.
NAMES = {
    1: FAMILY,
    2: "Regular",
    3: f"1.003;{POSTSCRIPT}",
    4: f"{FAMILY} Regular",
    5: "Version 1.003",
    6: POSTSCRIPT,
}
NOTICES = (0, 7, 8, 9, 13, 14)


def kit_font() -> TTFont:
    """Return the subset under the kit's name, with no hints and no date but its source's."""
    # Made twice from the same source it must be the same to the byte: keep the source's date.
    font = TTFont(
        fontpkg_abeezee.ROOT / "files" / "ABeeZee-Regular.ttf",
        recalcTimestamp=False,
        lazy=False,
    )
    # Packed by fontTools itself, so that the bytes do not depend on what else is installed.
    font.cfg["fontTools.ttLib.tables.otBase:USE_HARFBUZZ_REPACKER"] = False
    options = subset.Options()
    options.hinting = False
    options.layout_features = ["kern"]
    options.name_IDs = [*NAMES, *NOTICES]
    options.notdef_outline = True
    options.glyph_names = False
    options.drop_tables += ["gasp", "GDEF", "GSUB"]
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=[*LATIN_1, *BEYOND])
    subsetter.subset(font)
    for record in font["name"].names:
        if record.nameID in NAMES:
            record.string = NAMES[record.nameID]
    return font


def written(font: TTFont, flavor: str | None) -> bytes:
    """Return the font as the bytes of a file.

    Args:
        font: the font.
        flavor: `"woff2"`, or None for a plain TrueType file.
    """
    font.flavor = flavor
    file = io.BytesIO()
    font.save(file)
    return file.getvalue()


def main() -> None:
    """Write the three files into the folder given on the command line."""
    parser = argparse.ArgumentParser(description="Make the kit's own font.")
    parser.add_argument("folder", type=Path)
    folder = parser.parse_args().folder
    folder.mkdir(parents=True, exist_ok=True)
    font = kit_font()
    (folder / "kit-reading.ttf").write_bytes(written(font, None))
    (folder / "kit-reading.woff2").write_bytes(written(font, "woff2"))
    licence = (fontpkg_abeezee.ROOT / "LICENSE").read_text(encoding="utf-8")
    (folder / "OFL.txt").write_text(licence, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
