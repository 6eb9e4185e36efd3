from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.notebook.markdown import heading, headings, html, without_title

LINES = st.text(st.characters(exclude_categories=["Cs", "Cc", "Zl", "Zp"]), min_size=1)


@given(LINES, st.integers(1, 3))
def test_a_heading_gives_back_its_words_but_for_spaces(words, level):
    expected = " ".join(words.split())
    found = headings(heading(level, words))
    assert found == [(level, expected)]


@pytest.mark.parametrize("words", ["Half past", "Tick, tock!", "5 * 2 = 10", "Baker & co.", "#1"])
def test_plain_words_are_written_as_they_are(words):
    assert heading(2, words) == f"## {words}"


def test_dollars_in_a_heading_are_no_formula():
    assert heading(2, "From $5 to $6") == r"## From \$5 to \$6"


def test_headings_inside_lists_and_quotations_are_no_headings_of_the_lesson():
    assert headings("> # Quoted\n\n- # Listed\n\n```\n# code\n```\n\n# Real") == [(1, "Real")]


def test_an_underlined_heading_counts_too():
    assert headings("Market\n======\n\nHalf past\n---------") == [(1, "Market"), (2, "Half past")]


def test_the_title_is_taken_out_once():
    assert without_title("Before\n\n# One\n\nBetween\n\n# Two") == (
        "One",
        "Before\n\n\nBetween\n\n# Two",
    )
    assert without_title("## Only a part") == (None, "## Only a part")


@pytest.mark.parametrize(
    "text",
    [
        "<script>alert(1)</script>",
        "</script><script>alert(1)</script>",
        '<img src=x onerror="alert(1)">',
        "<svg/onload=alert(1)>",
        "<style>*{display:none}</style>",
        "<iframe src=javascript:alert(1)>",
        '<a href="javascript:alert(1)">',
        "<!-- hidden -->",
        "a <b>bold</b> word",
    ],
)
def test_html_in_a_text_is_shown_as_it_was_typed(text):
    made, _ = html(text)
    visible = re.sub(r"<[^>]*>", "", made)
    for letters, entity in (("<", "&lt;"), (">", "&gt;"), ('"', "&quot;")):
        visible = visible.replace(entity, letters)
    assert visible == text
    assert set(re.findall(r"<(\w+)", made)) <= {"p"}


@pytest.mark.parametrize(
    "text",
    [
        "[press](javascript:alert(1))",
        "[press](JaVaScRiPt:alert(1))",
        "[press](data:text/html;base64,PHNjcmlwdD4=)",
        "[press](vbscript:x)",
        "[press](file:///etc/passwd)",
        "<javascript:alert(1)>",
        "[press](//ferry.example)",
        "[press](/etc/passwd)",
        "![p](javascript:alert(1))",
    ],
)
def test_any_other_link_leads_nowhere(text):
    made, _ = html(text)
    assert not re.search(r"(href|src)=", made)


@pytest.mark.parametrize("target", ["https://ferry.example/a?b=1", "#end", "tuesday.html"])
def test_links_to_the_web_and_to_the_next_page_stay(target):
    made, _ = html(f"[the *ferry*]({target})")
    assert made == (f'<p><a href="{target}" rel="noopener noreferrer">the <em>ferry</em></a></p>')


@pytest.mark.parametrize(
    "source",
    ["https://ferry.example/a.png", "//ferry.example/a.png", "picture.png", "attachment:gone.png"],
)
def test_a_picture_that_would_be_fetched_leaves_its_description(source):
    made, left_out = html(f"![the ferry]({source})")
    assert made == "<p>the ferry</p>"
    assert left_out == [source]


def test_a_pasted_picture_is_carried():
    pictures = {"my ferry.png": {"image/png": "iVBORw0KGgo="}}
    made, left_out = html("![the ferry](attachment:my%20ferry.png)", pictures)
    assert made == '<p><img src="data:image/png;base64,iVBORw0KGgo=" alt="the ferry"></p>'
    assert left_out == []


@pytest.mark.parametrize(
    "pictures",
    [
        {"x": {"text/html": "PHNjcmlwdD4="}},
        {"x": {"image/png": '" onerror="alert(1)'}},
        {"x": {"image/svg+xml": "PHN2Zy8+"}},
    ],
)
def test_an_attachment_that_is_no_picture_is_left_out(pictures):
    assert html("![p](attachment:x)", pictures) == ("<p>p</p>", [next(iter(_sources(pictures)))])


def _sources(pictures):
    for data in pictures.values():
        for kind, coded in data.items():
            yield f"data:{kind};base64,{coded}"


@given(st.text())
def test_no_text_makes_a_tag_that_was_not_foreseen(text):
    made, _ = html(text)
    allowed = (
        "h[1-6]|p|br|hr|blockquote|pre|code|em|strong|s|ul|ol|li|a|img|table|thead|tbody|tr|th|td"
    )
    assert not re.sub(rf"</?({allowed})(\s[^>]*)?>", "", made).count("<")
