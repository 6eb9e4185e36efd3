# ruff: noqa: D102 - each method is named after the sentence that it understands
"""Reads worked hops and blocks as a pupil would who checks every word: an opinion of its own.

The reader knows nothing but what it is shown and told; it uses nothing of the kit. Where a step
says or shows what is not so, or says it in a form that it does not know, it raises AssertionError.
"""

from __future__ import annotations

import re

from num2words import num2words

MINUS = "\u2212"
WORTH = {"thousand": 1000, "hundred": 100, "ten": 10, "one": 1}
SIGNS = {"+": 1, MINUS: -1}


def in_words(number, vocabulary="us"):
    words = num2words(number).replace(",", "")
    return words if vocabulary == "uk" else words.replace(" and ", " ")


def value(text):
    """Work out a row of sums and differences from the left."""
    first, *rest = text.split(" ")
    total = int(first)
    for sign, number in zip(rest[::2], rest[1::2], strict=True):
        total += SIGNS[sign] * int(number)
    return total


def is_equation(text):
    left, right = text.split(" = ")
    return value(left) == int(right)


def amount(text):
    """Read so many of a place: "3 tens" is 30, and it is said as it should be."""
    count, noun = text.split(" ")
    assert noun.endswith("s") == (count != "1"), text
    return int(count) * WORTH[noun.removesuffix("s")]


def mat_value(blocks):
    return sum(count * WORTH[place.removesuffix("s")] for place, count in blocks.items())


class Reader:
    """Follows the steps of one task.

    After the last step `answer` is what was written down, and `equation` what was said with it.
    """

    def __init__(self, vocabulary="us"):
        self.vocabulary = vocabulary
        self.here = self.start = self.answer = self.equation = self.split = None
        self.parts = []
        # What a story says is to be done: an equation with a gap, or a sum.
        self.plan = None
        self.mats = None

    def follow_all(self, steps):
        for step in steps:
            self.follow(step)

    def follow(self, step):
        show, say = step.show, step.say
        for sentence in re.split(r"(?<=[.?]) ", say):
            assert len(sentence.split()) <= 10, sentence
        before = self.here
        for pattern, act in FORMS:
            found = re.fullmatch(pattern, say)
            if found:
                act(self, *(int(g) if g.isdigit() else g for g in found.groups()), step.chant)
                break
        else:
            raise AssertionError(f"What does {say!r} mean?")
        if "chart" in show:
            been = show["chart"]["counted"]
            assert len(set(been)) == len(been)
            if self.start is not None:
                assert been[0] == self.start or self.start == "double"
                assert been[-1] == self.here
        else:
            assert before == self.here or self.mats or self.start is None, say
        if "mat" in show:
            self.mats = [mat_value(one) for one in show["mat"]]
        if step.answer is not None:
            self.answer = step.answer

    def hop(self, to, said, chant):
        assert chant == ", ".join(map(str, said)), (chant, said)
        assert list(said)[-1] == to
        self.here = to

    # On the line

    def begin(self, number, chant):
        assert chant == str(number)
        self.start = self.here = number
        self.parts = []

    def on(self, by, chant):
        self.hop(self.here + by, range(self.here + 1, self.here + by + 1), chant)

    def back(self, by, chant):
        self.hop(self.here - by, range(self.here - 1, self.here - by - 1, -1), chant)

    def stay(self, chant):
        assert chant == str(self.here)

    def tens_on(self, by, chant):
        assert by % 10 == 0
        self.hop(self.here + by, range(self.here + 10, self.here + by + 1, 10), chant)

    def tens_back(self, by, chant):
        assert by % 10 == 0
        self.hop(self.here - by, range(self.here - 10, self.here - by - 1, -10), chant)

    def needs(self, number, need, ten, chant):
        assert number == self.here
        assert number + need == ten
        assert ten % 10 == 0
        assert need < 10
        assert chant == f"{number} + {need} = {ten}"
        self.here, self.split = ten, (need, 1)

    def take_to_ten(self, by, ten, chant):
        assert self.here - by == ten
        assert ten % 10 == 0
        assert by < 10
        assert chant == f"{self.here} {MINUS} {by} = {ten}"
        self.here, self.split = ten, (by, -1)

    def rest(self, whole, first, rest, again, chant):
        need, way = self.split
        assert (first, rest, whole) == (need, again, need + rest)
        end = self.here + way * rest
        assert chant == f"{self.here} {'+' if way > 0 else MINUS} {rest} = {end}"
        self.here = end

    def up_to(self, to, chant):
        self.parts.append(to - self.here)
        self.hop(to, range(self.here + 1, to + 1), chant)

    def tens_up_to(self, to, chant):
        self.parts.append(to - self.here)
        assert self.here % 10 == to % 10 == 0
        self.hop(to, range(self.here + 10, to + 1, 10), chant)

    def far(self, steps, plural, chant):
        assert steps == self.here - self.start
        assert plural == ("step" if steps == 1 else "steps")
        assert chant == str(steps)

    def there(self, chant):
        assert self.here == self.start
        assert chant == "0"

    def double(self, number, one, other, chant):
        assert number == one == other
        assert chant == str(2 * number)
        self.start, self.here = "double", 2 * number

    def more(self, more, double, again, chant):
        assert more == again
        assert double == self.here
        assert chant == str(double + more)
        self.here = double + more

    def two_first(self, why, one, other, chant):
        assert chant == str(one + other)
        assert why != "Look for ten" or one + other == 10
        assert why != "Look for doubles" or one == other
        assert why != "Start large" or one >= other
        self.start, self.here = one, one + other

    def then(self, so_far, number, chant):
        assert so_far == self.here
        self.here += number
        assert chant == str(self.here)

    # With blocks

    def named(self, number, count, place, chant):
        assert chant == f"{count} {place}"
        assert amount(chant) == number

    def places(self, one, sign, other, chant):
        assert amount(chant) == amount(one) + SIGNS[sign] * amount(other)

    def traded(self, ten, one, chant):
        assert amount(ten) == amount(one)
        assert ten.startswith("10 ")
        places = chant.split(" and ")
        assert places[0].split(" ")[1].rstrip("s") == one.split(" ")[1]
        assert all(amount(part) for part in places[:1])

    def put(self, number, chant):
        assert chant == str(number)
        self.parts = [number]

    def put_others(self, number, chant):
        assert chant == str(number)
        self.parts.append(number)

    # What a story says

    def come_to(self, more, start, chant):
        self.plans(chant, f"{start} + {more}")

    def how_many_more(self, start, end, chant):
        self.plans(chant, f"{start} + ? = {end}")

    def came(self, change, end, chant):
        self.plans(chant, f"? + {change} = {end}")

    def go_from(self, change, start, chant):
        self.plans(chant, f"{start} {MINUS} {change}")

    def went(self, start, left, chant):
        self.plans(chant, f"{start} {MINUS} ? = {left}")

    def left(self, left, change, chant):
        self.plans(chant, f"? {MINUS} {change} = {left}")

    def together(self, one, other, chant):
        self.plans(chant, f"{one} + {other}")

    def others(self, one, total, chant):
        self.plans(chant, f"{one} + ? = {total}")

    def compared(self, smaller, bigger, wording, chant):
        assert wording in ("more", "fewer")
        assert smaller < bigger
        self.plans(chant, f"{smaller} + ? = {bigger}")

    def more_than(self, more, smaller, chant):
        self.plans(chant, f"{smaller} + {more}")

    def turned_more(self, fewer, more, chant):
        assert fewer == more
        self.plans(chant)
        assert chant.endswith(f" + {more}")

    def fewer_than(self, fewer, bigger, chant):
        self.plans(chant, f"{bigger} {MINUS} {fewer}")

    def turned_fewer(self, more, fewer, chant):
        assert more == fewer
        self.plans(chant)
        assert chant.endswith(f" {MINUS} {fewer}")

    def make_first(self, left, part, chant):
        self.plans(chant, f"{left} + {part}")

    def plans(self, chant, text=None):
        assert text is None or chant == text
        self.plan = chant

    # Sides of an equal sign

    def smaller(self, one, other, chant):
        assert one < other
        assert chant == f"{one}, then {other}"

    def other_side(self, number, chant):
        assert chant == str(number)

    def judged(self, one, word, other, verdict, chant):
        assert word == (
            "as much as" if one == other else "more than" if one > other else "less than"
        )
        assert verdict == chant == ("true" if one == other else "false")
        assert self.mats in (None, [one, other])

    def not_turned(self, chant):
        assert chant == "false"

    # The end

    def said(self, text, chant):
        assert is_equation(text), text
        right = int(text.split(" = ")[1])
        if chant == str(right):
            if " + " in text and self.parts:
                assert text == f"{' + '.join(map(str, self.parts))} = {right}"
                assert right == self.here - self.start
            return
        self.equation = text
        assert chant in {in_words(int(each), self.vocabulary) for each in re.findall(r"\d+", text)}
        if self.plan and "?" in self.plan:
            gapped = re.escape(self.plan).replace(r"\?", r"(\d+)")
            same = re.fullmatch(gapped, text)
            turned = re.findall(r"\d+", text)
            numbers = re.findall(r"\d+", self.plan)
            # A difference may be said as a subtraction though it was found by counting up.
            assert same or sorted(numbers) == sorted(set(turned) & set(numbers)), (self.plan, text)


N = r"(\d+)"
SOME = r"(\d+ (?:thousand|hundred|ten|one)s?)"
FORMS = [
    (rf"Start at {N}\.", Reader.begin),
    (rf"Start at the larger number, {N}\.", Reader.begin),
    (r"Count on 0: stay there\.", Reader.stay),
    (r"Count back 0: stay there\.", Reader.stay),
    (rf"Count on {N}\.", Reader.on),
    (rf"Count back {N}\.", Reader.back),
    (rf"Count on {N} in tens\.", Reader.tens_on),
    (rf"Count back {N} in tens\.", Reader.tens_back),
    (rf"{N} needs {N} to make {N}\.", Reader.needs),
    (rf"Take {N} to come to {N}\.", Reader.take_to_ten),
    (rf"{N} is {N} and {N}: hop {N} more\.", Reader.rest),
    (rf"Count on to {N}\.", Reader.up_to),
    (rf"Count on in tens to {N}\.", Reader.tens_up_to),
    (rf"That is {N} (steps?)\.", Reader.far),
    (r"It is there already: 0 hops\.", Reader.there),
    (rf"Double {N}: {N} \+ {N}\.", Reader.double),
    (rf"{N} more: {N} \+ {N}\.", Reader.more),
    (rf"(Look for ten|Look for doubles|Start large): {N} \+ {N}\.", Reader.two_first),
    (rf"Then {N} \+ {N}\.", Reader.then),
    (rf"{N} is {N} ((?:ten|hundred)s?)\.", Reader.named),
    (rf"{SOME} ([+{MINUS}]) {SOME}\.", Reader.places),
    (rf"{SOME} are {SOME}\.", Reader.traded),
    (rf"Put {N} on one mat\.", Reader.put),
    (rf"The other {N} go(?:es)? here\.", Reader.put_others),
    (rf"{N} more comes? to {N}: add\.", Reader.come_to),
    (rf"From {N} to {N}: how many more\?", Reader.how_many_more),
    (rf"{N} came, now {N}: what was before\?", Reader.came),
    (rf"{N} go(?:es)? from {N}: take away\.", Reader.go_from),
    (rf"From {N} down to {N}: how many went\?", Reader.went),
    (rf"{N} left and {N} gone: add\.", Reader.left),
    (rf"{N} and {N} together: add\.", Reader.together),
    (rf"{N} and the others make {N}\.", Reader.others),
    (rf"From {N} up to {N}: how many (more|fewer)\?", Reader.compared),
    (rf"{N} more than {N}: add\.", Reader.more_than),
    (rf"{N} fewer here, so {N} more there: add\.", Reader.turned_more),
    (rf"{N} fewer than {N}: take away\.", Reader.fewer_than),
    (rf"{N} more here, so {N} fewer there: take away\.", Reader.turned_fewer),
    (rf"{N} and {N} make the first number\.", Reader.make_first),
    (rf"{N} is smaller than {N}\.", Reader.smaller),
    (rf"The other side is {N}\.", Reader.other_side),
    (rf"{N} is (as much as|more than|less than) {N}\. It is (true|false)\.", Reader.judged),
    (r"A subtraction cannot be turned round\. It is false\.", Reader.not_turned),
    (rf"((?:\d+ [+{MINUS}] )+\d+ = \d+)\.", Reader.said),
]
