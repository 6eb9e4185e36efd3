# ruff: noqa: ARG001 - each check is given prompt, task and key, and reads what it needs of them
"""What the keys say, worked out again from what is printed, for every skill with every option.

This reads the drawings of single tasks, which the pages are put together from.
"""

from __future__ import annotations

import re
from functools import cache

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.strands.sums.columns.methods import METHODS
from manipulatives.lessons.tasks.make import make_tasks
from manipulatives.outputs.sheet.layout.paper import STANDARD
from manipulatives.outputs.sheet.tasks.cells import cells_of, drawing_of
from support.paper import text_in, texts, with_role
from support.sheet_oracle import (
    alike,
    angles,
    blocks_on,
    boxed,
    cells,
    chosen,
    coins_on,
    corners,
    is_called,
    line_of,
    mirror_lines,
    number_said,
    shares,
    sides,
    story_answer,
    straight_sides,
    sum_on_squares,
    value,
    worth_of,
)

ROOM = 177.0
SEEDS = (1, 2)
N = r"(\d+)"
SHARES = {"halves": 2, "thirds": 3, "fourths": 4, "quarters": 4}
ORDINAL = {"one": 1, "ten": 10, "one hundred": 100}


@cache
def printed(skill, method="counting on", currency="usd"):
    """Every task of a skill with each of its options in turn: prompt, as asked, as answered."""
    found = []
    options = [{}, *({n: v} for n, values in SKILLS[skill].options.items() for v in values[1:])]
    for chosen_options in options:
        for seed in SEEDS:
            try:
                tasks = make_tasks(
                    skill, seed=seed, count=3, options=chosen_options, twins=0, method=method,
                    currency=currency,
                )  # fmt: skip
            except LessonProblem:
                continue  # not so many different ones
            numbered = list(enumerate(tasks, start=1))
            asked, key = (
                cells_of(numbered, STANDARD, ROOM, key=key, vocabulary="us")
                for key in (False, True)
            )
            found += [
                (task.prompt, drawing_of(one, ROOM), drawing_of(other, ROOM))
                for task, one, other in zip(tasks, asked, key, strict=True)
            ]
    assert len(found) > 5
    return found


def of(*names):
    return [skill for skill in SKILLS if skill.startswith(names)]


COUNTS = of("counting.on_", "counting.back_", "counting.missing")
NEAR = [*of("counting.before"), *(s for s in SKILLS if s.endswith("_more_less"))]
STORIES = [s for s in SKILLS if ".stories_" in s]
COLUMNS = [s for s in SKILLS if SKILLS[s].manipulative == "ColumnBoard"]
SUMS = [
    skill for skill in of("addition.", "subtraction.")
    if skill not in (*STORIES, *COLUMNS, "addition.true_or_false")
]  # fmt: skip
CLOCKS = of("time.")
OTHERS = of("place_value.", "shapes.", "money.", "counting.odd", "counting.how", "counting.count")


@pytest.mark.parametrize("skill", COUNTS)
def test_a_row_of_numbers_goes_on_in_equal_steps(skill):
    rows = 0
    for prompt, asked, key in printed(skill):
        if not with_role(asked, "cell") or with_role(asked, "counted", "line"):
            continue
        if "missing numbers" in prompt:
            continue
        given, full = cells(asked), cells(key)
        rows += 1
        assert given.count(None) == 1
        assert None not in full
        step = full[1] - full[0]
        assert step
        assert full == [full[0] + step * at for at in range(len(full))]
        assert [one for one in given if one is not None] == [
            full[at] for at, one in enumerate(given) if one is not None
        ]
    assert rows


@pytest.mark.parametrize("skill", COUNTS)
def test_what_is_circled_or_hopped_or_filled_in_is_the_count(skill):
    for prompt, asked, key in printed(skill):
        found = re.search(rf"Count (on|back) in (\w+) from {N} to {N}", prompt)
        if found:
            step = {"ones": 1, "twos": 2, "threes": 3, "fives": 5, "tens": 10, "hundreds": 100}
            by = step[found[2]] * (1 if found[1] == "on" else -1)
            start, end = int(found[3]), int(found[4])
            count = list(range(start, end + (1 if by > 0 else -1), by))
            if with_role(key, "line"):
                assert hopped(key) == count
                assert hopped(asked) == count[:1]
            else:
                assert sorted(circled(key)) == sorted(count)
                assert circled(asked) == count[:1]
        elif "missing numbers" in prompt:
            chart = on_chart(key)
            assert all(number is not None for number in chart.values())
            first = min(chart)
            for place, number in chart.items():
                assert number == chart[first] + (place[0] - first[0]) * 10 + place[1]
            assert None in on_chart(asked).values()


def circled(drawing):
    return [int(text_in(drawing, one)) for one in with_role(drawing, "counted")]


def hopped(drawing):
    """The numbers at which hops begin and end, read by their places on the line."""
    marks = sorted((text.at[0], int(text.text)) for text in texts(drawing, "stop"))
    (x1, n1), *_, (x2, n2) = marks
    stops = [circle.centre[0] for circle in with_role(drawing, "at")]
    return [round(n1 + (x - x1) / (x2 - x1) * (n2 - n1)) for x in stops]


def on_chart(drawing):
    """What stands in each cell of a chart, by row and column."""
    found = with_role(drawing, "cell")
    lefts = sorted({round(cell.corner[0], 2) for cell in found})
    tops = sorted({round(cell.corner[1], 2) for cell in found})
    said = {}
    for cell in found:
        place = tops.index(round(cell.corner[1], 2)), lefts.index(round(cell.corner[0], 2))
        text = text_in(drawing, cell)
        said[place] = int(text) if text else None
    return said


@pytest.mark.parametrize("skill", NEAR)
def test_a_number_beside_another_is_right(skill):
    for prompt, asked, key in printed(skill):
        numbers = [int(one) for one in re.findall(r"\d+", prompt)]
        if "before" in prompt or "after" in prompt:
            right = numbers[0] + (1 if "after" in prompt else -1)
        elif "between" in prompt:
            right = sum(numbers) // 2
        else:
            by = ORDINAL[re.search(r"(one hundred|one|ten) (?:more|less)", prompt)[1]]
            right = numbers[0] + (by if "more" in prompt else -by)
        if with_role(key, "counted"):
            assert set(circled(key)) - set(circled(asked)) == {right}
        else:
            assert boxed(key) == str(right)


@pytest.mark.parametrize("skill", SUMS)
def test_both_sides_of_a_sum_are_equal_in_the_key(skill):
    for _, asked, key in printed(skill):
        left, right = line_of(key).split("=")
        assert value(left) == value(right), line_of(key)
        assert boxed(key)
        assert not boxed(asked)


@pytest.mark.parametrize("skill", STORIES)
def test_a_story_is_answered(skill):
    for prompt, _, key in printed(skill):
        answer = chosen(key)
        if "=" in answer:
            left, right = answer.split("=")
            assert value(left) == value(right) == story_answer(prompt)
        else:
            assert int(answer) == story_answer(prompt)


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("skill", COLUMNS)
def test_a_written_sum_comes_out(skill, method):
    for prompt, asked, key in printed(skill, method):
        if with_role(key, "line"):
            left, right = line_of(key).split("=")
            assert value(left) == value(right) == value(prompt)
            along = [int(text.text) for text in texts(key, "stop")]
            begin, end = (along[-1], along[0]) if "-" in prompt else (along[0], along[-1])
            assert end == value(prompt)
            jumps = [text.text for text in texts(key, "jump")]
            assert begin + sum(value(jump) for jump in jumps) == end
            assert not texts(asked, "jump")
            continue
        numbers, sign, answer = sum_on_squares(key)
        assert value(f" {sign} ".join(map(str, numbers))) == value(prompt) == answer
        assert not texts(asked, "answer", "mark", "parts")


@pytest.mark.parametrize("skill", OTHERS)
def test_the_key_says_what_is_seen(skill):
    for prompt, asked, key in printed(skill):
        check = next((check for form, check in CHECKS if re.search(form, prompt)), None)
        assert check, prompt
        check(prompt, asked, key)


def even_or_odd(prompt, asked, key):
    number = int(re.search(N, prompt)[1])
    assert chosen(key) == ("odd" if number % 2 else "even")


def next_even_or_odd(prompt, asked, key):
    number = int(re.search(N, prompt)[1])
    odd = "odd" in prompt
    after = next(n for n in range(number + 1, number + 3) if n % 2 == odd)
    before = next(n for n in range(number - 1, number - 3, -1) if n % 2 == odd)
    assert boxed(key) == str(after if "after" in prompt else before)


def counts_ones(prompt, asked, key):
    assert boxed(key) == str(blocks_on(asked)["ones"])


def draws_blocks(prompt, asked, key):
    said = re.search(r"(?:Show|Put out) (.+?)(?: with blocks| ones?)?\.", prompt)[1]
    number = value(said) if re.search(r"\d", said) else number_said(said)
    assert worth_of(blocks_on(key)) == number
    assert not blocks_on(asked)


def reads_blocks(prompt, asked, key):
    assert int(boxed(key)) == worth_of(blocks_on(asked))


def writes_digits(prompt, asked, key):
    assert int(boxed(key)) == number_said(re.search(r": (.+)\.", prompt)[1])


def chooses_words(prompt, asked, key):
    assert number_said(chosen(key)) == int(re.search(N, prompt)[1])


def expands(prompt, asked, key):
    number = int(re.search(N, prompt)[1])
    parts = re.findall(r"\d+", line_of(key) if boxed(key) else chosen(key))
    assert sum(map(int, parts)) == number
    assert all(len(part.rstrip("0")) == 1 for part in parts)


def joins(prompt, asked, key):
    assert int(boxed(key)) == value(re.search(r"is ([\d +]+)\?", prompt)[1])


def adds_to_ten(prompt, asked, key):
    assert int(boxed(key)) == int(re.search(N, prompt)[1]) - 10


def tells_worth(prompt, asked, key):
    digit, number = re.search(rf"the {N} in {N}", prompt).groups()
    assert number.count(digit) == 1
    assert int(boxed(key)) == int(digit) * 10 ** (len(number) - 1 - number.index(digit))


def compares(prompt, asked, key):
    left, right = map(int, re.search(rf"{N} _ {N}", prompt).groups())
    sign = "<" if left < right else ">" if left > right else "="
    assert chosen(key) == sign == boxed(key)


def orders(prompt, asked, key):
    numbers = [int(one) for one in re.findall(r"\d+", prompt)]
    assert int(chosen(key)) == (max(numbers) if "greatest" in prompt else min(numbers))


def names(prompt, asked, key):
    name = chosen(key)
    others = {text_in(asked, one) for one in with_role(asked, "choice")} - {name}
    if "circle" in name:
        assert straight_sides(asked) == {"circle": 0, "half circle": 1, "quarter circle": 2}[name]
        return
    points = corners(asked)
    assert is_called(name, points)
    assert not [other for other in others if "circle" not in other and is_called(other, points)]


def says_whether_named(prompt, asked, key):
    [outline] = with_role(asked, "outline")
    name = re.search(r"this an? ([a-z ]+)\?", prompt)[1]
    if "circle" in name or len(outline.points) > 20:
        sides_of = {"circle": 0, "half circle": 1, "quarter circle": 2}
        right = len(outline.points) > 20 and straight_sides(asked) == sides_of.get(name)
    else:
        right = outline.closed and is_called(name, corners(asked))
    assert chosen(key) == ("yes" if right else "no")


def counts_corners(prompt, asked, key):
    assert int(boxed(key)) == len(corners(asked))


def counts_straight_sides(prompt, asked, key):
    assert int(boxed(key)) == straight_sides(asked)


def counts_right_angles(prompt, asked, key):
    assert int(boxed(key)) == sum(abs(turn - 90) < 0.1 for turn in angles(corners(asked)))


def counts_mirror_lines(prompt, asked, key):
    assert int(boxed(key)) == mirror_lines(corners(asked))[0]


def finds_upright_mirror(prompt, asked, key):
    assert chosen(key) == ("yes" if mirror_lines(corners(asked))[1] else "no")


def judges_shares(prompt, asked, key):
    areas = shares(asked)
    right = len(areas) == SHARES[re.search(r"into (\w+)", prompt)[1]]
    right = right and max(areas) < 1.02 * min(areas)
    assert chosen(key) == ("yes" if right else "no")


def counts_squares(prompt, asked, key):
    areas = shares(asked)
    assert max(areas) < 1.01 * min(areas)
    assert int(boxed(key)) == len(areas)


def cuts(prompt, asked, key):
    areas = shares(key)
    assert len(areas) == int(re.search(N, prompt)[1])
    assert max(areas) < 1.02 * min(areas)
    assert not with_role(asked, "cut")


def draws_shape(prompt, asked, key):
    points = corners(key)
    assert all(len(outline.points) <= 2 for outline in with_role(asked, "outline"))
    found = re.search(rf"{N} (?:sides|vertices)", prompt)
    if found:
        assert len(points) == int(found[1])
    name = re.search(r"(?:Draw|Finish) an? ([a-z]+)(?: with| on|\.)", prompt)
    if name and name[1] != "shape":
        assert is_called(name[1], points)
    right = re.search(rf"{N} right angle", prompt)
    if right:
        assert sum(abs(turn - 90) < 0.1 for turn in angles(points)) == int(right[1])


COIN_NAMES = {"quarter": 25, "dime": 10, "nickel": 5, "penny": 1}


def ringed(drawing):
    """The coin in the ring, by its place."""
    [*rings] = with_role(drawing, "ring")
    # The numbers of tasks have rings, too.
    [ring, *_] = [one for one in rings if one.paint.dashes]
    for shape in drawing.shapes:
        if shape.role.startswith("coin "):
            xs, ys = zip(*shape.points, strict=True)
            middle = (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2
            if abs(middle[0] - ring.centre[0]) + abs(middle[1] - ring.centre[1]) < 0.1:
                return int(shape.role.removeprefix("coin "))
    raise AssertionError(ring)


def names_coin(prompt, asked, key):
    assert COIN_NAMES[chosen(key)] == ringed(asked)


def tells_coin_worth(prompt, asked, key):
    assert chosen(key) == f"{ringed(asked)}¢"


def counts_coins(prompt, asked, key):
    assert int(boxed(key)) == sum(map(int, coins_on(asked)))


def lays_coins(prompt, asked, key):
    amount = int(re.search(rf"{N}¢", prompt)[1])
    laid = [int(coin) for coin in coins_on(key)[len(coins_on(asked)) :]]
    assert sum(laid) == amount
    if "other coins" in prompt:
        assert sorted(laid) != sorted(map(int, coins_on(asked)))
    if "fewest" in prompt:
        assert len(laid) == fewest(amount, (25, 10, 5, 1))


def fewest(amount, kinds):
    best = [0] + [amount + 1] * amount
    for made in range(1, amount + 1):
        best[made] = min(best[made - kind] + 1 for kind in kinds if kind <= made)
    return best[amount]


def gives_change(prompt, asked, key):
    cost, paid = map(int, re.findall(rf"{N}¢", prompt))
    assert int(chosen(key)) == paid - cost


CHECKS = [
    (r"even or odd|odd or even", even_or_odd),
    (r"Which (odd|even) number", next_even_or_odd),
    (r"How many ones", counts_ones),
    (r"^(Show|Put out)", draws_blocks),
    (r"Which number do the blocks", reads_blocks),
    (r"^Write in digits", writes_digits),
    (r"Which words say", chooses_words),
    (r"expanded form", expands),
    (r"is 10 and how many more", adds_to_ten),
    (r"(Which number|What) is [\d +]+\?", joins),
    (r"worth\?$", lambda *it: (tells_coin_worth if "coin" in it[0] else tells_worth)(*it)),
    (r"Which sign", compares),
    (r"greatest|smallest", orders),
    (r"What is this shape called", names),
    (r"Is this an? ", says_whether_named),
    (r"straight sides", counts_straight_sides),
    (r"How many (sides|vertices|corners)", counts_corners),
    (r"How many right angles", counts_right_angles),
    (r"How many mirror lines", counts_mirror_lines),
    (r"mirror line", finds_upright_mirror),
    (r"Is it cut into", judges_shares),
    (r"Cut it into", cuts),
    (r"How many squares", counts_squares),
    (r"^(Draw|Finish)", draws_shape),
    (r"coin in the ring called", names_coin),
    (r"How many (cents|dollars) come back", gives_change),
    (r"How many cents are there", counts_coins),
    (r"Pay|with other coins", lays_coins),
]


def test_a_true_statement_is_true_and_a_false_one_false():
    for prompt, _, key in printed("addition.true_or_false"):
        left, right = prompt.removeprefix("True or false? ").split("=")
        assert chosen(key) == ("true" if value(left) == value(right) else "false")


def test_every_skill_is_read_by_some_test():
    read = {*COUNTS, *NEAR, *SUMS, *STORIES, *COLUMNS, *OTHERS, *CLOCKS, "addition.true_or_false"}
    assert read == set(SKILLS)


def test_what_is_drawn_beside_a_question_does_not_answer_it():
    for skill in SKILLS:
        for _, asked, _ in printed(skill):
            assert not texts(asked, "answer", "mark", "parts", "count", "jump")
            assert not [s for s in with_role(asked, "choice") if s.paint.stroke == "move"]
    assert alike(sides([(0, 0), (1, 0), (1, 1), (0, 1)]))
