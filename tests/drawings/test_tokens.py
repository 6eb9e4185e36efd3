from __future__ import annotations

import re

import pytest

from manipulatives.drawings import tokens

CHANNEL = re.compile(r"#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})")


def luminance(colour):
    channels = [int(part, 16) / 255 for part in CHANNEL.fullmatch(colour).groups()]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return sum(share * c for share, c in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


def contrast(one, other):
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.fixture
def style_sheet(tmp_path, monkeypatch):
    path = tmp_path / "tokens.css"
    monkeypatch.setattr(tokens, "TOKENS", path)
    for reader in (tokens.colours, tokens.typeface):
        reader.cache_clear()
    yield path
    for reader in (tokens.colours, tokens.typeface):
        reader.cache_clear()


def test_colours_are_those_of_the_style_sheet():
    text = tokens.TOKENS.read_text(encoding="utf-8")
    for name in ("ink", "quiet", "sheet", "edge", "line", "hour", "minute", "move", "move-soft"):
        assert f"--{name}: {tokens.colour(name)};" in text.lower()


def test_a_colour_in_a_comment_is_ignored(style_sheet):
    style_sheet.write_text("/* --ink: #000000; */ .kit { --ink: #1c2530; --gap: 20px }")
    assert tokens.colours() == {"ink": "#1c2530"}


def test_the_colour_for_paper_is_the_first_one_given(style_sheet):
    style_sheet.write_text(".kit{--ink:#111111} @media (forced-colors){.kit{--ink:#eeeeee}}")
    assert tokens.colour("ink") == "#111111"


def test_the_error_about_an_unknown_colour_lists_the_known_ones():
    with pytest.raises(ValueError, match=r'no colour "pink".*\bink\b'):
        tokens.colour("pink")


def test_text_is_set_in_the_kits_own_font_first():
    assert tokens.typeface().startswith('"Kit Reading",')


@pytest.mark.parametrize("token", ["ink", "quiet", "hour", "minute", "move"])
def test_what_is_printed_can_be_read_on_white_paper(token):
    """WCAG 2.2, success criterion 1.4.3: text 4.5:1."""
    assert contrast(tokens.colour(token), "#ffffff") >= 4.5


def test_an_outline_can_be_seen_on_white_paper():
    """WCAG 2.2, success criterion 1.4.11: what is needed to understand a picture 3:1."""
    assert contrast(tokens.colour("edge"), "#ffffff") >= 3
