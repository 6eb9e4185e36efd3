"""The printed sheet, read back from the PDF as a printer would draw it."""

from __future__ import annotations

import datetime as dt
import io
import itertools
import math
import os
import re
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from num2words import num2words
from pypdf import PdfReader

from manipulatives.drawings.clock import FACE
from manipulatives.drawings.shapes import Circle, Drawing, Text
from manipulatives.drawings.tokens import colour
from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round, round_seed
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.settings import ClassSettings, settled
from manipulatives.notebook.writing import notebook_of
from manipulatives.outputs.sheet import sheet_of, sheet_of_file
from manipulatives.outputs.sheet.code import code_of
from manipulatives.outputs.sheet.layout.lines import wrapped
from manipulatives.outputs.sheet.layout.pages import Block, laid_out
from manipulatives.outputs.sheet.layout.paper import MARGIN, PAPERS
from manipulatives.outputs.sheet.pdf.letters import printable, text_width
from manipulatives.outputs.sheet.tasks import printers
from support.pdf import Line, Page, Path, pages_of

# Paper in millimetres: ISO 216 for A4, 8.5 by 11 inches for Letter.
PAPER_SIZES = {"a4": (210, 297), "letter": (8.5 * 25.4, 11 * 25.4)}
LEAST_MARGIN = 12.7
WHITE = "#ffffff"

READ = "time.read_five_minutes"
LONG = "One more before home time, with a heading that goes on until it is broken"
WIDE = Lesson(
    "Market day at Penny Cross",
    seed=90213,
    rounds=(
        Round(READ, seed=11, tasks=5),
        Round("time.set_hands", seed=12, tasks=4),
        Round("time.set_hands", seed=16, tasks=3, options={"given": "words"}),
        Round("time.later", seed=13, tasks=3, options={"by": 35}),
        Round("time.earlier", seed=18, tasks=3, options={"by": 40, "answer": "hands"}),
        Round("time.read_half", seed=14, tasks=5, options={"answer": "choice"}),
        Round("time.read_hour", seed=15, tasks=1, title=LONG),
    ),
)  # fmt: skip

FORMS = list(itertools.product(PAPER_SIZES, (False, True), (False, True)))
IDS = [f"{paper}{'-large' if large else ''}{'-key' if key else ''}" for paper, large, key in FORMS]


def printed(*rounds, key=False, vocabulary="us", paper="a4", large=False, title="Market day"):
    lesson = Lesson(title, seed=90213, rounds=rounds)
    settings = ClassSettings(vocabulary=vocabulary, paper=paper)
    return pages_of(sheet_of(lesson, settings, key=key, large_print=large))


@pytest.fixture(scope="module", params=FORMS, ids=IDS)
def form(request):
    paper, large, key = request.param
    content = sheet_of(WIDE, ClassSettings(paper=paper), key=key, large_print=large)
    return request.param, content, pages_of(content)


# What is seen on a page


def centre(box):
    return (box[0] + box[2]) / 2, (box[1] + box[3]) / 2


def inside(point, box):
    return box[0] <= point[0] <= box[2] and box[1] <= point[1] <= box[3]


def crossing(one, other):
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def rims(page: Page) -> list[Path]:
    """The faces: large white discs with a dark edge, row by row."""
    found = [p for p in page.paths if p.curved and p.fill == WHITE and p.stroke == colour("ink")]
    found.sort(key=lambda p: centre(p.box)[1])
    rows: list[list[Path]] = []
    for path in found:
        if not rows or centre(path.box)[1] > centre(rows[-1][0].box)[1] + 1:
            rows.append([])
        rows[-1].append(path)
    return [path for row in rows for path in sorted(row, key=lambda p: p.box[0])]


def hand(page: Page, rim: Path, token: str) -> list[Path]:
    straight = (p for p in page.paths if p.fill == colour(token) and not p.curved)
    return [path for path in straight if inside(centre(path.box), rim.box) and len(path.points) > 3]


def angle(path: Path, rim: Path) -> float:
    """From twelve, clockwise, of the line from the centre to the middle of the far end."""
    x0, y0 = centre(rim.box)
    far = max(math.dist(point, (x0, y0)) for point in path.points)
    # A PDF says where a point is to 0.01 points, that is 0.0035 mm.
    ends = [point for point in path.points if math.dist(point, (x0, y0)) > far - 0.01]
    x, y = (sum(values) / len(ends) for values in zip(*ends, strict=True))
    return math.degrees(math.atan2(x - x0, y0 - y)) % 360


def apart(one: float, other: float) -> float:
    return abs((one - other + 180) % 360 - 180)


def time_of(minute_angle: float, hour_angle: float) -> str:
    """The time that two hands show; they must agree to a tenth of a degree."""
    minute = round(minute_angle / 6) % 60
    hour = math.floor((hour_angle - minute / 2) / 30 + 0.5) % 12
    assert apart(minute_angle, float(Fraction(360, 60) * minute)) < 0.1
    assert apart(hour_angle, float(Fraction(360, 12) * hour + Fraction(minute, 2))) < 0.1
    return f"{hour or 12}:{minute:02}"


def times_shown(pages, *tokens) -> list[str]:
    """What the faces with hands of these colours show, in reading order."""
    found = []
    for page in pages:
        for rim in rims(page):
            hours, minutes = (hand(page, rim, token) for token in tokens)
            if tokens[0] == tokens[1]:
                # Both in one colour: the arrow has seven corners, the other hand four.
                hours = [path for path in hours if len(set(path.points)) > 4]
                minutes = [path for path in minutes if len(set(path.points)) == 4]
            if hours:
                (hour,), (minute,) = hours, minutes
                found.append(time_of(angle(minute, rim), angle(hour, rim)))
    return found


def tasks_on(page: Page) -> list[tuple[Path, list[Line]]]:
    """Each task by its (first) face, with the text beside it from top to bottom."""
    faces = rims(page)
    number = {id(face): line for face in faces for line in page.lines if at_corner(line, face)}
    first = [face for face in faces if id(face) in number]
    found = []
    for face in first:
        level = [f.box[0] for f in first if f.box[0] > face.box[2] and same_row(f, face)]
        below = [f.box[1] for f in first if f.box[1] > face.box[3]]
        room = (
            face.box[2],
            face.box[1] - 1,
            min(level, default=page.width),
            min(below, default=face.box[3] + 12),
        )
        texts = [line for line in page.lines if inside((line.x, line.y), room)]
        texts = [t for t in texts if not any(inside(centre(t.box), f.box) for f in faces)]
        found.append((face, sorted(texts, key=lambda line: (line.y, line.x))))
    return found


def same_row(one: Path, other: Path) -> bool:
    return abs(centre(one.box)[1] - centre(other.box)[1]) < 1


def at_corner(line: Line, face: Path) -> bool:
    return line.text.isdigit() and math.dist(line.box[:2], face.box[:2]) < 4


def chips(page: Page, token: str) -> list[Path]:
    """Boxes with an edge of this colour, without rings around numbers."""
    found = [p for p in page.paths if p.curved and p.stroke == colour(token)]
    return [p for p in found if p.box[2] - p.box[0] > 1.1 * (p.box[3] - p.box[1])]


def answers(pages) -> list[str]:
    """What is marked as right, task by task."""
    found = []
    for page in pages:
        boxes = [chip.box for chip in chips(page, "move")]
        for _, texts in tasks_on(page):
            marked = [t for t in texts if any(inside(centre(t.box), box) for box in boxes)]
            found += [line.text for line in marked]
    return found


def prompts(pages) -> list[str]:
    """What is asked beside each face, task by task."""
    return [
        " ".join(line.text for line in texts if line.colour == colour("ink"))
        for page in pages
        for _, texts in tasks_on(page)
    ]


# The paper


def test_pages_have_the_size_of_the_paper(form):
    (paper, _, _), content, pages = form
    for page in pages:
        assert (page.width, page.height) == pytest.approx(PAPER_SIZES[paper], abs=0.1)
    assert len(PdfReader(io.BytesIO(content)).pages) == len(pages) > 1


def test_nothing_is_printed_in_the_margins(form):
    for page in form[2]:
        for mark in (*page.paths, *page.lines):
            left, top, right, bottom = mark.box
            assert left >= LEAST_MARGIN, mark
            assert top >= LEAST_MARGIN, mark
            assert right <= page.width - LEAST_MARGIN, mark
            assert bottom <= page.height - LEAST_MARGIN, mark


def test_type_is_large_enough_for_young_readers(form):
    (_, large, _), _, pages = form
    sizes = [line.size for page in pages for line in page.lines]
    assert min(sizes) >= (18 if large else 12) - 1e-6


def test_no_text_touches_other_text(form):
    for page in form[2]:
        for one, other in itertools.combinations(page.lines, 2):
            assert not crossing(one.box, other.box), (one.text, other.text)


def test_no_face_touches_another_or_any_text_outside_it(form):
    for page in form[2]:
        faces = [(centre(rim.box), (rim.box[2] - rim.box[0]) / 2) for rim in rims(page)]
        for (one, r1), (other, r2) in itertools.combinations(faces, 2):
            assert math.dist(one, other) > r1 + r2
        for (x, y), radius in faces:
            for line in page.lines:
                left, top, right, bottom = line.box
                nearest = min(max(x, left), right), min(max(y, top), bottom)
                if math.dist(centre(line.box), (x, y)) > radius:
                    assert math.dist(nearest, (x, y)) > radius, line.text


def test_text_in_a_box_stays_in_it_and_boxes_do_not_touch(form):
    for page in form[2]:
        edges = {colour("edge"), colour("move")}
        boxes = [p.box for p in page.paths if p.curved and p.stroke in edges]
        assert boxes
        for one, other in itertools.combinations(boxes, 2):
            assert not crossing(one, other)
        for line in page.lines:
            for box in boxes:
                if crossing(line.box, box):
                    assert inside(line.box[:2], box), line.text
                    assert inside(line.box[2:], box), line.text


def test_no_line_to_write_on_runs_through_anything(form):
    for page in form[2]:
        lines = [p for p in page.paths if p.stroke == colour("ink") and is_level(p)]
        things = [line.box for line in page.lines] + [rim.box for rim in rims(page)]
        for line in lines:
            if line.length > 20:
                assert not [box for box in things if crossing(line.box, box)]


def is_level(path: Path) -> bool:
    return len(path.points) == 2 and path.points[0][1] == pytest.approx(path.points[1][1])


def test_every_page_says_which_one_it_is(form):
    pages = form[2]
    for number, page in enumerate(pages, start=1):
        assert f"Page {number} of {len(pages)}" in [line.text for line in page.lines]


def test_the_ruler_is_100_mm_long_with_a_mark_at_each_10(form):
    page = form[2][0]
    note = "Is this line 100 mm long? If not, print at actual size."
    assert note in [line.text for line in page.lines]
    level = [p for p in page.paths if is_level(p) and p.length == pytest.approx(100, abs=0.1)]
    (ruler,) = [p for p in level if p.stroke == colour("ink")]
    (start, y), (end, _) = ruler.points
    upright = [
        p.points[0][0]
        for p in page.paths
        if len(p.points) == 2 and p.points[0][1] == pytest.approx(y) and p is not ruler
        and p.points[0][0] == pytest.approx(p.points[1][0])
    ]  # fmt: skip
    assert upright == pytest.approx([start + 10 * mark for mark in range(11)], abs=0.1)
    assert end - start == pytest.approx(100, abs=0.1)


def test_there_is_a_line_for_the_name_and_one_for_the_date(form):
    page = form[2][0]
    for label in ("Name", "Date"):
        (word,) = [line for line in page.lines if line.text == label]
        beside = [p for p in page.paths if is_level(p) and p.points[0][1] == pytest.approx(word.y)]
        following = [p for p in beside if 0 < p.points[0][0] - (word.x + word.width) < 5]
        (line,) = following
        assert line.length > 35


def test_tasks_are_numbered_from_one_on(form):
    numbers = [
        int(line.text)
        for page in form[2]
        for face in rims(page)
        for line in page.lines
        if at_corner(line, face)
    ]
    assert numbers == list(range(1, 25))


def test_a_heading_is_on_the_same_page_as_a_task_of_its_round(form):
    for page in form[2]:
        for line in page.lines:
            if line.size in (17, 24):
                assert [rim for rim in rims(page) if rim.box[1] > line.y]


def test_the_heading_of_a_continued_round_is_repeated():
    pages = printed(Round(READ, seed=1, tasks=20))
    for page in pages[1:]:
        texts = [line.text for line in page.lines]
        assert texts[0] == "Minutes (continued)"
        assert texts[1] == "Write the time on the line."


def test_lines_to_write_on_are_a_hand_apart_for_six_and_seven_year_olds():
    """Common practice: 15 to 20 mm for six-year-olds, 12 to 15 mm for seven-year-olds."""
    for large, height in ((False, 15), (True, 20)):
        for page in printed(Round(READ, seed=1, tasks=6), large=large):
            tops = sorted(p.points[0][:2] for p in page.paths if p.dashed)
            assert tops
            for x, y in tops:
                below = [
                    p
                    for p in page.paths
                    if is_level(p)
                    and not p.dashed
                    and p.points[0] == pytest.approx((x, y + height), abs=0.1)
                ]
                assert len(below) == 1
                assert below[0].length > 30


# Drawn to scale


@pytest.mark.parametrize("paper", PAPER_SIZES)
@pytest.mark.parametrize(("large", "size"), [(False, 44), (True, 58)])
def test_faces_are_drawn_to_scale(paper, large, size):
    radius = size / 2 / FACE["field"]["plain"]
    for page in printed(Round(READ, seed=3, tasks=7), paper=paper, large=large):
        for rim in rims(page):
            left, top, right, bottom = rim.box
            across = 2 * radius * (FACE["rim"]["radius"] + FACE["rim"]["width"] / 2)
            assert right - left == pytest.approx(across, abs=0.1)
            assert bottom - top == pytest.approx(across, abs=0.1)
            for token in ("hour", "minute"):
                length = FACE[token]["length"]
                (path,) = hand(page, rim, token)
                far = max(math.dist(point, centre(rim.box)) for point in path.points)
                assert far == pytest.approx(length * radius, abs=0.1)


def test_the_paper_is_not_tinted(form):
    tint = {colour("sheet"), colour("paper")}
    assert not [p for page in form[2] for p in page.paths if {p.fill, p.stroke} & tint]


# Right answers


def test_the_answer_to_a_face_is_the_time_it_shows():
    for skill in ("time.read_hour", "time.read_half", "time.read_quarter", READ):
        rounds = Round(skill, seed=1, tasks=6)
        sheet, key = printed(rounds), printed(rounds, key=True)
        assert times_shown(sheet, "hour", "minute") == answers(key)
        assert len(answers(key)) == 6
        assert answers(sheet) == []


def moved(time: str, minutes: int) -> str:
    start = dt.datetime.strptime(time, "%I:%M")  # noqa: DTZ007 (a clock on the wall)
    return (start + dt.timedelta(minutes=minutes)).strftime("%I:%M").lstrip("0")


@pytest.mark.parametrize(
    ("skill", "way", "said"),
    [("time.later", 1, r"in (\d+) minutes"), ("time.earlier", -1, r"(\d+) minutes ago")],
)
@pytest.mark.parametrize("by", [5, 35, 60])
def test_the_answer_some_minutes_later_or_earlier_is_right(skill, way, said, by):
    rounds = Round(skill, seed=4, tasks=5, options={"by": by})
    sheet, key = printed(rounds), printed(rounds, key=True)
    minutes = [int(re.search(said, prompt)[1]) for prompt in prompts(sheet)]
    assert minutes == [by] * 5
    starts = times_shown(sheet, "hour", "minute")
    assert answers(key) == [moved(time, way * by) for time in starts]


def in_words(time: str, vocabulary: str) -> str:
    hour, minute = map(int, time.split(":"))
    following = num2words(hour % 12 + 1)
    if minute == 0:
        return f"{num2words(hour)} o'clock"
    if vocabulary == "us":
        return f"{num2words(hour)} {'oh ' if minute < 10 else ''}{num2words(minute)}"
    parts = {15: "quarter", 30: "half"}
    if minute <= 30:
        return f"{parts.get(minute, num2words(minute))} past {num2words(hour)}"
    return f"{parts.get(60 - minute, num2words(60 - minute))} to {following}"


@pytest.mark.parametrize("vocabulary", ["us", "uk"])
@pytest.mark.parametrize("given", ["digits", "words"])
def test_hands_to_draw_are_drawn_in_the_key_and_not_in_the_sheet(vocabulary, given):
    rounds = Round("time.set_hands", seed=5, tasks=8, options={"given": given})
    sheet = printed(rounds, vocabulary=vocabulary)
    key = printed(rounds, vocabulary=vocabulary, key=True)
    asked = [re.search(r" at (.*)\. Set the clock\.$", prompt)[1] for prompt in prompts(sheet)]
    drawn = times_shown(key, "move", "move")
    assert len(drawn) == 8
    spelt = [in_words(time, vocabulary) for time in drawn] if given == "words" else drawn
    assert asked == spelt
    assert answers(key) == drawn
    for tokens in (("hour", "minute"), ("move", "move")):
        assert times_shown(sheet, *tokens) == []
    assert sum(len(rims(page)) for page in sheet) == 8


def test_hands_moved_on_are_drawn_on_a_second_face_and_the_first_stays():
    rounds = Round("time.later", seed=6, tasks=5, options={"by": 25, "answer": "hands"})
    sheet, key = printed(rounds), printed(rounds, key=True)
    starts = times_shown(sheet, "hour", "minute")
    assert len(starts) == 5
    assert sum(len(rims(page)) for page in sheet) == 10
    assert times_shown(key, "hour", "minute") == starts
    assert times_shown(key, "move", "move") == answers(key) == [moved(t, 25) for t in starts]
    assert times_shown(sheet, "move", "move") == []


def test_of_the_choices_the_key_marks_the_right_one_by_colour_and_by_a_broader_edge():
    rounds = Round(READ, seed=7, tasks=6, options={"answer": "choice"})
    sheet, key = printed(rounds), printed(rounds, key=True)
    shown = times_shown(sheet, "hour", "minute")
    assert answers(key) == shown
    edges = {
        token: [chip.width for page in key for chip in chips(page, token)]
        for token in ("move", "edge")
    }
    assert len(edges["move"]) == 6 + 1  # the mark of the key has the same look
    assert min(edges["move"]) > 2 * max(edges["edge"])
    for time in shown:
        assert time in all_texts(sheet)


def all_texts(pages):
    return [line.text for page in pages for line in page.lines]


def test_a_key_also_gives_a_written_answer_in_words():
    rounds = Round(READ, seed=8, tasks=6)
    for vocabulary in ("us", "uk"):
        key = printed(rounds, key=True, vocabulary=vocabulary)
        said = " ".join(
            line.text for page in key for line in page.lines if line.colour == colour("quiet")
        )
        for time in answers(key):
            assert in_words(time, vocabulary) in said


@pytest.mark.parametrize("large", [False, True])
def test_sheet_and_key_are_laid_out_alike(large):
    sheet, key = (
        pages_of(sheet_of(WIDE, ClassSettings(), key=key, large_print=large))
        for key in (False, True)
    )
    assert len(sheet) == len(key)
    for asked, answered in zip(sheet, key, strict=True):
        there = {place(line) for line in answered.lines}
        # The foot says which of the two it is.
        moved_away = [line.text for line in asked.lines if place(line) not in there]
        [foot] = moved_away
        assert re.fullmatch(r"Sheet 90213-A-[A-Z]{3}-[\d.]+ · Market.+", foot)
        assert [rim.box for rim in rims(asked)] == [rim.box for rim in rims(answered)]


def place(line: Line):
    return line.text, round(line.x, 3), round(line.y, 3)


def test_the_key_says_that_it_is_one_on_every_page():
    key = pages_of(sheet_of(WIDE, ClassSettings(), key=True))
    assert "Answers" in [line.text for line in key[0].lines]
    for page in key:
        code = code_of(settled(WIDE, ClassSettings()), "A")
        assert f"Key {code} · {WIDE.title}" in [line.text for line in page.lines]


# Words


def test_a_prompt_that_all_tasks_share_is_printed_once():
    pages = printed(Round("time.read_hour", seed=3, tasks=1))
    said = " ".join(line.text for line in pages[0].lines)
    assert len(re.findall(r"What time|\?", said.replace("long?", ""))) == 2
    assert "Write the time on the line." in said


def test_a_heading_is_the_childs_words_unless_the_round_has_a_title():
    own = Round("time.read_hour", seed=3, tasks=2, title="At the ferry")
    pages = printed(Round("time.read_hour", seed=3, tasks=2), own)
    headings = [line.text for page in pages for line in page.lines if line.size == 17]
    assert headings == ["O'clock", "At the ferry"]


def test_letters_that_the_kits_font_lacks_are_printed_all_the_same():
    pages = printed(Round("time.read_hour", seed=1), title="Dzień targowy w Łodzi")
    (title,) = [line for line in pages[0].lines if line.size == 22]
    assert title.text == "Dzień targowy w Łodzi"
    assert {name.split("+")[1] for name in title.fonts} == {"KitReading", "DejaVuSansBook"}


def test_emoji_and_dollars_in_a_title_harm_nothing():
    pages = printed(Round("time.read_hour", seed=1), title="Cheese 🧀 for $5, not $6^2_a\\frac")
    (title,) = [line for line in pages[0].lines if line.size == 22]
    assert title.text == "Cheese for $5, not $6^2_a\\frac"


def test_a_letter_that_no_font_has_leaves_an_empty_box():
    pages = printed(Round("time.read_hour", seed=1), title="市場 day")
    (title,) = [line for line in pages[0].lines if line.size == 22]
    assert title.text == "□□ day"


def test_a_long_title_is_broken_into_lines_and_ends_in_dots():
    pages = printed(Round("time.read_hour", seed=1), title="market " * 10 + "day", large=True)
    title = [line for line in pages[0].lines if line.size == 30]
    assert len(title) == 2
    assert title[-1].text.endswith("…")


@given(
    st.text(st.characters(codec="latin-1", categories=["L", "N", "P", "Zs"]), max_size=60),
    st.floats(12, 60),
)
def test_broken_lines_fit_and_lose_no_letter(text, width):
    lines = wrapped(text, 5, width, most=1000)
    assert all(text_width(line, 5) <= width or len(line) == 1 for line in lines)
    assert "".join("".join(lines).split()) == "".join(printable(text).split())


def test_a_text_is_as_wide_as_it_is_printed():
    for line in printed(Round(READ, seed=1))[0].lines:
        assert text_width(line.text, line.size * 25.4 / 72) == pytest.approx(line.width, abs=0.05)


# The file


def test_the_font_is_embedded_as_truetype_and_no_other_is_used(form):
    reader = PdfReader(io.BytesIO(form[1]))
    for page in reader.pages:
        fonts = page["/Resources"]["/Font"]
        assert fonts
        for name in fonts:
            (inner,) = fonts[name]["/DescendantFonts"]
            inner = inner.get_object()
            assert re.fullmatch(r"/[A-Z]{6}\+KitReading", inner["/BaseFont"])
            assert inner["/Subtype"] == "/CIDFontType2"
            assert len(inner["/FontDescriptor"]["/FontFile2"].get_data()) > 1000


def test_pictures_are_lines_and_not_pixels(form):
    for page in PdfReader(io.BytesIO(form[1])).pages:
        assert not list(page.images)


def test_the_file_has_a_title_and_a_language_and_no_date(form):
    (_, _, key), content, _ = form
    reader = PdfReader(io.BytesIO(content))
    assert reader.metadata.title == WIDE.title + (": answers" if key else "")
    assert {"/CreationDate", "/ModDate"}.isdisjoint(reader.metadata)
    # The kit recognises its own files by this.
    assert b"/Creator (manipulatives)" in content
    assert reader.root_object["/Lang"] == "en-US"


def test_viewers_are_asked_to_print_at_true_size(form):
    """ISO 32000-1, table 150: PrintScaling None."""
    reader = PdfReader(io.BytesIO(form[1]))
    assert reader.root_object["/ViewerPreferences"]["/PrintScaling"] == "/None"
    assert reader.root_object["/ViewerPreferences"]["/DisplayDocTitle"].value is True


SCRIPT = """
import sys
from manipulatives.outputs.sheet import sheet_of_file
sys.stdout.buffer.write(sheet_of_file(sys.argv[1], key=True))
"""


def test_the_same_lesson_gives_the_same_bytes_whatever_the_surroundings(tmp_path):
    file = tmp_path / "monday.toml"
    write_lesson(WIDE, file)
    made = []
    for seed, zone in (("1", "UTC"), ("2", "Asia/Tokyo")):
        surroundings = {**os.environ, "PYTHONHASHSEED": seed, "TZ": zone}
        done = subprocess.run(
            [sys.executable, "-c", SCRIPT, str(file)],
            env=surroundings, cwd=tmp_path, capture_output=True, check=True,
        )  # fmt: skip
        made.append(done.stdout)
    assert made[0] == made[1] == sheet_of(WIDE, ClassSettings(), key=True)


def test_a_sheet_is_made_without_anything_for_plots(tmp_path):
    write_lesson(WIDE, tmp_path / "monday.toml")
    code = (
        "import sys; from manipulatives.outputs.sheet import sheet_of_file; "
        "sheet_of_file('monday.toml'); print(*sys.modules)"
    )
    loaded = subprocess.run(
        [sys.executable, "-c", code], cwd=tmp_path, capture_output=True, text=True, check=True
    )
    assert "fpdf" in loaded.stdout.split()
    assert "matplotlib" not in loaded.stdout.split()


def test_sheets_made_at_the_same_time_are_the_same():
    wanted = sheet_of(WIDE, ClassSettings(), key=True)
    with ThreadPoolExecutor(4) as pool:
        made = pool.map(lambda _: sheet_of(WIDE, ClassSettings(), key=True), range(8))
    assert set(made) == {wanted}


# From files


def test_a_lesson_file_and_its_notebook_give_the_same_sheet(tmp_path):
    import nbformat  # noqa: PLC0415 (here alone)

    write_lesson(WIDE, tmp_path / "monday.toml")
    nbformat.write(notebook_of(WIDE), tmp_path / "monday.ipynb")
    assert sheet_of_file(tmp_path / "monday.toml") == sheet_of_file(tmp_path / "monday.ipynb")


def test_the_class_settings_of_the_folder_say_paper_and_words(tmp_path):
    write_lesson(WIDE, tmp_path / "monday.toml")
    (tmp_path / "class.toml").write_text('paper = "a4"\nvocabulary = "uk"\n')
    content = sheet_of_file(tmp_path / "monday.toml", key=True)
    assert content == sheet_of(WIDE, ClassSettings(paper="a4", vocabulary="uk"), key=True)
    assert PdfReader(io.BytesIO(content)).root_object["/Lang"] == "en-GB"
    letter = sheet_of_file(tmp_path / "monday.toml", paper="letter")
    assert pages_of(letter)[0].height == pytest.approx(279.4, abs=0.1)


def test_another_seed_gives_other_tasks_of_the_same_kind(tmp_path):
    write_lesson(WIDE, tmp_path / "monday.toml")
    content = sheet_of_file(tmp_path / "monday.toml", seed=5)
    sown = tuple(
        replace(each, seed=round_seed(5, place)) for place, each in enumerate(WIDE.rounds, start=1)
    )
    assert content == sheet_of(replace(WIDE, seed=5, rounds=sown), ClassSettings())
    assert content != sheet_of_file(tmp_path / "monday.toml")


@pytest.mark.parametrize("seed", [-1, 10**9])
def test_a_seed_out_of_range_is_refused(tmp_path, seed):
    write_lesson(WIDE, tmp_path / "monday.toml")
    with pytest.raises(LessonProblem, match=r"monday\.toml, seed: .*999"):
        sheet_of_file(tmp_path / "monday.toml", seed=seed)


# What cannot be printed


def test_a_lesson_without_rounds_has_nothing_to_print():
    with pytest.raises(LessonProblem, match="there is nothing to print; give the lesson a round"):
        sheet_of(Lesson("Empty", seed=1), ClassSettings())


def test_the_error_about_an_unknown_paper_lists_the_known_ones():
    with pytest.raises(LessonProblem, match='there is no paper "a3"; print on "a4" or "letter"'):
        sheet_of(WIDE, ClassSettings(), paper="a3")


def test_a_manipulative_that_cannot_be_drawn_is_named_with_its_round(monkeypatch):
    monkeypatch.setattr(printers, "printers", lambda: {"Abacus": None})
    with pytest.raises(LessonProblem, match=r"round 1: Clock cannot be printed; .*Abacus"):
        sheet_of(WIDE, ClassSettings())


# Page after page


blocks = st.lists(
    st.tuples(st.floats(1, 80), st.floats(0, 10), st.booleans(), st.booleans()), min_size=1
)


@given(blocks, st.sampled_from(list(PAPERS)))
def test_blocks_follow_in_order_within_the_margins_and_never_overlap(sizes, paper):
    on = PAPERS[paper]
    again = Drawing(on.inside, 15, (Circle((1, 1), 1, role="again"),))
    given_blocks = [
        Block(
            Drawing(on.inside, height, (Text((0, height), f"{number} {height}", 5),)),
            before,
            # A run of headings without end could not stay on one page.
            keep_with_next=keep and number % 2 == 0 and number + 1 < len(sizes),
            repeated_heading=again if repeats else None,
        )
        for number, (height, before, keep, repeats) in enumerate(sizes)
    ]
    pages = laid_out(
        given_blocks,
        on,
        lambda page, of: Drawing(on.inside, 10, (Text((0, 10), f"{page}/{of}", 5, role="foot"),)),
    )
    seen = []
    for number, page in enumerate(pages, start=1):
        assert (page.width, page.height) == (on.width, on.height)
        foot = [shape for shape in page.shapes if shape.role == "foot"]
        assert [text.text for text in foot] == [f"{number}/{len(pages)}"]
        level = MARGIN
        for shape in page.shapes:
            if shape.role == "again":
                assert level == MARGIN
                level += 15
            elif shape.role == "":
                name, height = shape.text.split()
                top = shape.at[1] - float(height)
                assert top >= level - 1e-6
                level = shape.at[1]
                seen.append((int(name), number))
        assert level <= on.height - MARGIN - 10 + 1e-6
    assert [name for name, _ in seen] == list(range(len(sizes)))
    for name, page in seen:
        if given_blocks[name].keep_with_next:
            assert dict(seen)[name + 1] == page
