from __future__ import annotations

import base64
import re
import subprocess
import sys
from pathlib import Path

import fontpkg_abeezee
import pytest
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.ttLib import TTFont

from manipulatives.data import font

SCRIPT = Path(__file__).parents[1] / "support" / "make_font.py"
RESERVED = "ABeeZee"


@pytest.fixture(scope="module")
def remade(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("font")
    subprocess.run([sys.executable, str(SCRIPT), str(folder)], check=True)
    return folder


@pytest.fixture(scope="module", params=[font.TTF, font.WOFF2], ids=["ttf", "woff2"])
def kit(request) -> TTFont:
    return TTFont(request.param)


@pytest.fixture(scope="module")
def source() -> TTFont:
    return TTFont(fontpkg_abeezee.ROOT / "files" / "ABeeZee-Regular.ttf")


def tables(path: Path) -> dict[str, bytes]:
    # Table by table: another version of the compressor may pack the same font differently, and the
    # check sum of the whole file (in head) follows from the packing.
    loaded = TTFont(path)
    content = {tag: loaded.getTableData(tag) for tag in loaded.keys() if tag != "GlyphOrder"}  # noqa: SIM118 (a font is no dict)
    content["head"] = content["head"][:8] + content["head"][12:]
    return content


@pytest.mark.parametrize("name", ["kit-reading.ttf", "kit-reading.woff2"])
def test_the_font_is_what_the_script_makes(remade, name):
    assert tables(font.TTF.with_name(name)) == tables(remade / name)


def test_the_licence_is_the_one_of_the_source(remade):
    assert font.LICENCE.read_bytes() == (remade / "OFL.txt").read_bytes()
    assert "SIL OPEN FONT LICENSE Version 1.1" in font.LICENCE.read_text(encoding="utf-8")


def test_the_name_is_the_kits_and_the_notices_are_the_makers(kit, source):
    names = {record.nameID: record.toUnicode() for record in kit["name"].names}
    assert names[1] == font.FAMILY
    for number, name in names.items():
        if number in {0, 7, 8, 9, 13, 14}:
            assert name == source["name"].getDebugName(number)
        else:
            assert RESERVED.lower() not in name.lower(), number
    assert {0, 13, 14} <= set(names)


def test_every_letter_a_teacher_types_is_there(kit):
    latin_1 = [*range(0x20, 0x7F), *range(0xA0, 0x100)]  # accents, pound, cent, times, fractions
    dashes_and_quotes = [0x2013, 0x2014, 0x2018, 0x2019, 0x201A, 0x201C, 0x201D, 0x201E]
    others = [0x152, 0x153, 0x2022, 0x2026, 0x2039, 0x203A, 0x20AC, 0x2212]
    wanted = {*latin_1, *dashes_and_quotes, *others}
    assert wanted <= set(kit.getBestCmap())


def test_letters_keep_the_shape_and_width_of_the_source(kit, source):
    for code, name in kit.getBestCmap().items():
        twin = source.getBestCmap()[code]
        drawn, expected = (DecomposingRecordingPen(each.getGlyphSet()) for each in (kit, source))
        kit.getGlyphSet()[name].draw(drawn)
        source.getGlyphSet()[twin].draw(expected)
        assert drawn.value == expected.value, chr(code)
        assert kit["hmtx"][name][0] == source["hmtx"][twin][0], chr(code)


def test_digits_are_of_equal_width(kit):
    assert len({kit["hmtx"][kit.getBestCmap()[ord(digit)]][0] for digit in "0123456789"}) == 1


def test_the_font_carries_no_programs(kit):
    assert {"fpgm", "prep", "cvt "}.isdisjoint(kit.keys())


def test_the_font_for_the_browser_is_small():
    assert font.WOFF2.stat().st_size < 16_000


def test_the_css_rule_brings_the_font_with_it():
    rule = font.font_face_css()
    (data,) = re.findall(r'url\("data:font/woff2;base64,([^"]+)"\)', rule)
    assert base64.b64decode(data) == font.WOFF2.read_bytes()
    assert re.findall(r"url\(", rule) == ["url("]
    assert f'font-family:"{font.FAMILY}"' in rule
