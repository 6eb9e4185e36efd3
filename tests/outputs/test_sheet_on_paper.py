"""PDFs of a few lessons, read back: everything is where the drawings have it, at its true size."""

from __future__ import annotations

import io
import math
import random
import re

import pytest
import segno
from pypdf import PdfReader

from manipulatives.drawings.shapes import MM_PER_POINT, Box, Circle, Line, Polygon, Text
from manipulatives.drawings.tokens import colour
from manipulatives.lessons.lesson import CURRENCIES, Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.settings import ClassSettings, settled
from manipulatives.outputs.sheet import (
    cutouts_of,
    script_of,
    sheet_of,
    sheet_of_file,
)
from manipulatives.outputs.sheet.code import VERSIONS, code_of, read_code
from manipulatives.outputs.sheet.layout.paper import PAPERS
from manipulatives.outputs.sheet.pdf.letters import printable
from manipulatives.outputs.sheet.printed_sheet import KINDS
from manipulatives.outputs.sheet.rounds import tasks_by_round
from manipulatives.outputs.sheet.sheet import pages_of
from support.paper import box_of, crossing, inside, some_lessons
from support.pdf import pages_of as read
from support.seeds import THOROUGH

# Across, in millimetres: the United States Mint's coin specifications; The Royal Mint's "United
# Kingdom circulating coin designs" specifications.
MILLIMETRES = {
    "usd": {25: 24.26, 10: 17.91, 5: 21.21, 1: 19.05},
    "gbp": {200: 28.4, 100: 23.43, 50: 27.3, 20: 21.4, 10: 24.5, 5: 18.0, 2: 25.9, 1: 20.3},
}
MONDAY = Lesson(
    "Monday at Penny Cross",
    seed=90213,
    rounds=(
        Round("counting.on_in_fives", seed=1, tasks=3),
        Round("addition.two_digit", seed=2, tasks=3),
        Round("money.count_mixed", seed=3, tasks=3),
        Round("time.set_hands", seed=4, tasks=2),
        Round("shapes.count_sides", seed=5, tasks=2),
        Round("place_value.read_blocks", seed=6, tasks=2),
    ),
)
ADDRESS = "https://school.example/monday.html"


# The PDF has what the drawing has


# A thorough run prints two hundred lessons on both papers.
@pytest.mark.parametrize("part", range(200 if THOROUGH else 3))
@pytest.mark.parametrize("paper", PAPERS)
def test_everything_is_printed_where_the_drawing_has_it(part, paper):
    chance = random.Random(part)  # noqa: S311 - which pages are looked at is no secret
    [lesson] = some_lessons(1, seed=500 + part)
    kind, large = KINDS[part % 3], chance.random() < 0.5
    settings = ClassSettings(paper=paper)
    whole = settled(lesson, settings)
    drawn = pages_of(whole, tasks_by_round(whole, settings), kind=kind, large_print=large)
    there = read(sheet_of(lesson, settings, kind=kind, large_print=large))
    assert len(drawn) == len(there)
    for drawing, page in zip(drawn, there, strict=True):
        words = [shape for shape in drawing.shapes if isinstance(shape, Text)]
        assert [line.text for line in page.lines] == [printable(word.text) for word in words]
        for word, line in zip(words, page.lines, strict=True):
            left, _, right, _ = box_of(word)
            assert (line.x, line.y) == pytest.approx((left, word.at[1]), abs=0.1)
            assert line.width == pytest.approx(right - left, abs=0.15)
            assert line.size * MM_PER_POINT == pytest.approx(word.size, abs=0.01)
        halos = sum(word.halo > 0 for word in words)
        others = [shape for shape in drawing.shapes if not isinstance(shape, Text)]
        assert len(page.paths) == len(others) + halos
        plain = iter(page.paths)
        for shape in drawing.shapes:
            if isinstance(shape, Text):
                if shape.halo:
                    next(plain)
                continue
            path = next(plain)
            if isinstance(shape, (Line, Polygon, Box, Circle)):
                assert path.box == pytest.approx(box_of(shape), abs=0.1), shape
            paint = shape.paint
            assert bool(path.fill) == bool(paint.fill)
            assert bool(path.stroke) == bool(paint.stroke)


# True sizes


def discs(page, rims):
    """Areas in the colours of coins: their keys follow from the digits on them."""
    found = []
    for path in page.paths:
        if path.fill and path.stroke in rims and len(path.points) > 20:
            xs, ys = zip(*path.points, strict=True)
            box = min(xs), min(ys), max(xs), max(ys)
            found.append((path, box))
    return found


@pytest.mark.parametrize("money", MILLIMETRES)
@pytest.mark.parametrize("large", [False, True])
@pytest.mark.parametrize("paper", PAPERS)
def test_coins_have_their_true_diameters(money, large, paper):
    rounds = (Round("money.count_mixed", seed=3, tasks=5, options={"most": 8}),)
    lesson = Lesson("Coins", seed=1, rounds=rounds, currency=money)
    measured = 0
    for content in (
        sheet_of(lesson, ClassSettings(), large_print=large, paper=paper),
        cutouts_of(lesson, ClassSettings(), paper=paper),
    ):
        measured += sum(measure(page, MILLIMETRES[money]) for page in read(content))
    assert measured > 30


def measure(page, widths):
    """Check every coin of a page; return how many there are."""
    rims = {colour(f"{metal}-rim") for metal in ("copper", "silver", "gold")}
    seen = 0
    outer = []
    for path, box in discs(page, rims):
        # A two-coloured coin has another area inside: only the outer one is its edge.
        if any(inside(box, other, by=0) for other in outer):
            continue
        outer.append(box)
        said = [line.text for line in page.lines if inside(line.box, box, by=0.5)]
        key = next(text for text in said if re.search(r"\d", text))
        worth = int(re.sub(r"\D", "", key)) * (100 if key[0] in "£$" else 1)
        across = widths[worth]
        middle = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
        if worth in (20, 50) and 20 in widths:
            # Of constant width: as broad in every direction as in this one.
            assert breadth(path.points) == pytest.approx(across, abs=0.1)
        elif worth == 100:
            # Twelve corners: across them.
            far = max(math.dist(point, middle) for point in path.points)
            assert 2 * far == pytest.approx(across, abs=0.1)
        else:
            assert box[2] - box[0] == pytest.approx(across, abs=0.1)
            assert box[3] - box[1] == pytest.approx(across, abs=0.1)
        seen += 1
    return seen


def breadth(points):
    widths = []
    for step in range(36):
        turn = math.pi * step / 36
        along = [x * math.cos(turn) + y * math.sin(turn) for x, y in points]
        widths.append(max(along) - min(along))
    assert max(widths) - min(widths) < 0.1
    return sum(widths) / len(widths)


@pytest.mark.parametrize("paper", PAPERS)
def test_ten_ones_to_cut_out_are_as_long_as_a_ten_and_ten_tens_as_wide_as_a_hundred(paper):
    lesson = Lesson("Blocks", seed=1, rounds=(Round("place_value.read_blocks", seed=1),))
    [page] = read(cutouts_of(lesson, ClassSettings(), paper=paper))
    edges = {place: colour(place) for place in ("ones", "tens", "hundreds")}
    size = {}
    for place, edge in edges.items():
        found = [p for p in page.paths if p.stroke == edge and p.curved and not p.fill]
        xs, ys = zip(*found[0].points, strict=True)
        size[place] = max(xs) - min(xs), max(ys) - min(ys)
        assert len(found) >= {"ones": 10, "tens": 20, "hundreds": 1}[place]
    one = size["ones"][0]
    assert size["ones"] == pytest.approx((one, one), abs=0.01)
    assert size["tens"] == pytest.approx((one, 10 * one), abs=0.01)
    assert size["hundreds"] == pytest.approx((10 * one, 10 * one), abs=0.01)


def test_hands_to_pin_reach_as_far_as_those_of_the_drawn_clock():
    lesson = Lesson("Clock", seed=1, rounds=(Round("time.read_hour", seed=1),))
    [page] = read(cutouts_of(lesson, ClassSettings(), paper="a4"))
    [rim] = [p for p in page.paths if p.curved and p.stroke == colour("ink") and wide(p) > 100]
    radius = 150 / 2 / 1.01
    for token, length in (("hour", 0.51), ("minute", 0.9)):
        [hand] = [p for p in page.paths if p.fill == colour(token) and not p.curved]
        holes = [p for p in page.paths if p.curved and p.fill == "#ffffff" and wide(p) < 3]
        [pin] = [p for p in holes if inside(p.box, hand.box)]
        middle = (pin.box[0] + pin.box[2]) / 2
        assert max(x for x, _ in hand.points) - middle == pytest.approx(length * radius, abs=0.1)
    assert wide(rim) == pytest.approx(2 * radius * (0.988 + 0.012), abs=0.1)


def wide(path):
    return path.box[2] - path.box[0]


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("currency", CURRENCIES)
def test_cutouts_do_not_touch_and_are_inside_the_paper(currency, paper):
    on = PAPERS[paper]
    lesson = Lesson("All", seed=1, currency=currency)
    for page in read(cutouts_of(lesson, ClassSettings(), paper=paper)):
        free = 12.7, 12.7, on.width - 12.7, on.height - 12.7
        for thing in (*page.paths, *page.lines):
            assert inside(thing.box, free)
        coins = [
            box
            for _, box in discs(page, {colour(f"{m}-rim") for m in ("copper", "silver", "gold")})
        ]
        whole = [box for box in coins if not any(inside(box, o, 0) for o in coins if o != box)]
        for at, one in enumerate(whole):
            assert not [other for other in whole[:at] if crossing(one, other)]


# Printed in grey


@pytest.mark.parametrize("kind", ["pupil", "key"])
def test_everything_can_be_distinguished_in_grey(kind):
    """The key's marks are broader, and no two areas are told apart by hue alone."""
    settings = ClassSettings()
    whole = settled(MONDAY, settings)
    for page in pages_of(whole, tasks_by_round(whole, settings), kind=kind):
        for shape in page.shapes:
            if isinstance(shape, Text):
                assert contrast(colour(shape.colour)) >= 4.5, shape
        marked = [s for s in page.shapes if s.role == "choice" and s.paint.stroke == "move"]
        assert all(s.paint.width >= 0.8 for s in marked)


def contrast(code):
    """With white paper, as WCAG 2.2 reckons it."""
    parts = [int(code[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 1.05 / (0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2] + 0.05)


# Codes and versions


def test_versions_ask_alike_but_about_other_numbers():
    whole = settled(MONDAY, ClassSettings())
    made = {version: tasks_by_round(whole, ClassSettings(), version) for version in VERSIONS}
    for one, two, three in zip(*made.values(), strict=True):
        assert len(one.tasks) == len(two.tasks) == len(three.tasks)
        asked = [{task.asks for task in each.tasks} for each in (one, two, three)]
        assert not asked[0] & asked[1]
        assert not asked[0] & asked[2]
        assert not asked[1] & asked[2]


def test_versions_have_the_same_options_at_each_place():
    pattern = ["tens", "ones", "none"]
    rounds = (Round("addition.two_digit", seed=2, tasks=3, options={"regroup": pattern}),)
    whole = settled(Lesson("Sums", seed=1, rounds=rounds), ClassSettings())
    for version in VERSIONS:
        [each] = tasks_by_round(whole, ClassSettings(), version)
        kinds = []
        for task in each.tasks:
            (a, b), (c, d) = (map(int, f"{n:02}") for n in task.start["sum"]["numbers"])
            ones = b + d > 9
            kinds.append("ones" if ones else "tens" if a + c > 9 else "none")
        assert kinds == pattern


def foot_code(content):
    words = " ".join(line.text for line in read(content)[0].lines)
    return re.search(r"(\d+-[ABC]-[A-Z]{3}-[\d.]+)", words)[1]


def test_the_code_at_the_foot_makes_the_same_sheet_again(tmp_path):
    file = tmp_path / "monday.toml"
    from manipulatives.lessons.files import write_lesson  # noqa: PLC0415 (here alone)

    write_lesson(MONDAY, file)
    for given in ({"version": "B"}, {"seed": 77}, {"seed": 77, "version": "C"}, {}):
        content = sheet_of_file(file, **given)
        assert sheet_of_file(file, code=foot_code(content)) == content
    codes = {foot_code(sheet_of_file(file, version=version)) for version in VERSIONS}
    assert len(codes) == 3


def test_a_code_of_another_lesson_is_refused(tmp_path):
    file = tmp_path / "monday.toml"
    file.write_text(
        'title = "Monday"\nseed = 7\n[[rounds]]\nskill = "time.read_hour"\nseed = 9\n', "utf-8"
    )
    code = foot_code(sheet_of_file(file))
    file.write_text(
        'title = "Monday"\nseed = 7\n[[rounds]]\nskill = "time.read_hour"\nseed = 8\n', "utf-8"
    )
    with pytest.raises(LessonProblem, match=rf"code: .* the numbers of sheet {code}; look"):
        sheet_of_file(file, code=code)
    with pytest.raises(LessonProblem, match="is no code of a sheet; type it as it stands"):
        sheet_of_file(file, code="7-D-XXX")


def test_a_code_can_be_typed_in_small_letters():
    code = code_of(settled(MONDAY, ClassSettings()), "B")
    assert read_code(str(code).lower()) == read_code(f" {code} ") == code


def test_there_is_no_version_d():
    with pytest.raises(LessonProblem, match="version: 'D' is not allowed"):
        sheet_of(MONDAY, ClassSettings(), version="D")


# The QR code


def test_the_qr_code_has_the_squares_of_the_address():
    page = read(sheet_of(MONDAY, ClassSettings(), address=ADDRESS))[0]
    dark = [p.box for p in page.paths if p.fill == colour("ink") and not p.curved and not p.stroke]
    dark = [box for box in dark if box[3] - box[1] == pytest.approx(0.75, abs=0.01)]
    left, top = min(box[0] for box in dark), min(box[1] for box in dark)
    matrix = [list(row) for row in segno.make_qr(ADDRESS, error="m", boost_error=False).matrix]
    found = [[0] * len(matrix) for _ in matrix]
    for box in dark:
        row = round((box[1] - top) / 0.75)
        for column in range(round((box[0] - left) / 0.75), round((box[2] - left) / 0.75)):
            found[row][column] = 1
    assert found == [[int(square) for square in row] for row in matrix]


def test_a_qr_code_has_four_free_squares_around_it():
    """ISO/IEC 18004 asks for four."""
    page = read(sheet_of(MONDAY, ClassSettings(), address=ADDRESS, large_print=True))[0]
    dark = [p.box for p in page.paths if p.fill == colour("ink") and not p.curved and not p.stroke]
    dark = [box for box in dark if box[3] - box[1] == pytest.approx(0.75, abs=0.01)]
    free = (
        min(b[0] for b in dark) - 3, min(b[1] for b in dark) - 3,
        max(b[2] for b in dark) + 3, max(b[3] for b in dark) + 3,
    )  # fmt: skip
    others = [thing.box for thing in (*page.paths, *page.lines) if thing.box not in dark]
    assert not [box for box in others if crossing(box, free, 0.05)]


@pytest.mark.parametrize(
    "address", ["school.example", "ftp://a.example", "https://a b", "https://" + "x" * 300]
)
def test_what_is_no_address_is_refused(address):
    with pytest.raises(LessonProblem, match=r"address: .* is no address of a page"):
        sheet_of(MONDAY, ClassSettings(), address=address)


# Other kinds


def test_worked_steps_are_all_in_the_key_with_steps():
    whole = settled(MONDAY, ClassSettings())
    said = " ".join(
        line.text
        for page in read(sheet_of(MONDAY, ClassSettings(), kind="steps"))
        for line in page.lines
    )
    for each in tasks_by_round(whole, ClassSettings()):
        for task in each.tasks:
            for step in task.steps:
                for word in re.findall(r"[A-Za-z]+|\d+", step.say):
                    assert word in said


def test_the_script_is_one_page_with_every_answer_in_order():
    [page] = read(script_of(MONDAY, ClassSettings(count_aloud=5)))
    said = " ".join(line.text for line in page.lines)
    whole = settled(MONDAY, ClassSettings())
    number = 1
    for each in tasks_by_round(whole, ClassSettings()):
        assert f"{len(each.tasks)} tasks" in said
        assert each.tasks[0].say.split(".")[0] in said
        for task in each.tasks:
            assert re.search(rf"\b{number}\) .*?{re.escape(task.answer)}", said)
            number += 1
    assert "Count aloud together: 5, 10, 15, 20, 25, 30" in said


def test_the_script_of_a_full_day_is_one_page_and_has_what_the_class_answers():
    skills = (
        "counting.back_in_tens", "place_value.read_blocks", "addition.two_digit",
        "subtraction.two_digit", "shapes.count_sides", "money.count_mixed", "time.read_quarter",
        "subtraction.stories_take_from",
    )  # fmt: skip
    rounds = tuple(Round(skill, seed=seed, tasks=3) for seed, skill in enumerate(skills))
    lesson = Lesson("A full day", seed=1, rounds=rounds)
    [page] = read(script_of(lesson, ClassSettings()))
    said = " ".join(line.text for line in page.lines)
    assert "[" not in said
    kept = 0
    for each in tasks_by_round(settled(lesson, ClassSettings()), ClassSettings()):
        chants = [step.chant for step in each.tasks[0].steps if step.chant]
        words = re.findall(r"[a-z-]+|\d+", " ".join(chants))
        kept += all(word in said for word in words) and chants[-1].split()[-1] in said
    assert kept == len(rounds)
    assert said.count("Class ") == len(rounds) + 1  # and once where it is explained


@pytest.mark.parametrize("skill", ["addition.three_digit", "time.later", "place_value.order"])
def test_a_long_script_goes_on_but_loses_no_answer(skill):
    rounds = tuple(Round(skill, seed=seed, tasks=20) for seed in range(8))
    pages = read(script_of(Lesson("Long", seed=1, rounds=rounds), ClassSettings()))
    said = " ".join(line.text for page in pages for line in page.lines)
    assert [number for number in range(1, 161) if f"{number}) " not in said] == []


def test_an_unknown_kind_is_named():
    with pytest.raises(LessonProblem, match="kind: 'answers' is not allowed"):
        sheet_of(MONDAY, ClassSettings(), kind="answers")


def test_nothing_scales_what_is_cut_out():
    for content in (cutouts_of(MONDAY, ClassSettings()), script_of(MONDAY, ClassSettings())):
        wishes = PdfReader(io.BytesIO(content)).root_object["/ViewerPreferences"]
        assert wishes["/PrintScaling"] == "/None"
