"""The skills of the addition strand, in the order in which they are learnt.

Within 10, within 20, tens, two digits, three digits: the order of the Common Core State Standards
(2010). Columns are a written method beside strategies: neither these standards up to grade 2 nor
England's programmes of study for years 1 and 2 demand them.
"""

from __future__ import annotations

from manipulatives.lessons.catalogue.skill import Option, Skill

Options = dict[str, tuple[Option, ...]]

LINE, BLOCKS, BOARD = "CountingChart", "PlaceValueBlocks", "ColumnBoard"

ZERO: Options = {"zero": (True, False)}
FACTS_10: Options = {"to": (10, 5), **ZERO}
FACTS_20: Options = {"regroup": ("any", "none", "ones"), "teens": (False, True), **ZERO}
MISSING: Options = {"to": (20, 10, 100), "unknown": ("any", "second", "first")}
EVERYWHERE = ("any", "none", "ones", "tens", "both", "zero")
STORIES: Options = {"to": (20, 10, 100)}
RESULTS: Options = {"unknown": ("any", "result", "change", "start"), **STORIES}

WITHIN_10 = ("CCSS K.OA.A.1", "CCSS K.OA.A.5", "CCSS 1.OA.C.6")
WITHIN_20 = ("CCSS 1.OA.C.6", "CCSS 2.OA.B.2")
STORIES_TO_100 = ("CCSS K.OA.A.2", "CCSS 1.OA.A.1", "CCSS 2.OA.A.1")
SIGNS, BONDS, TO_20, PROBLEMS = (
    f"England Y1 addition and subtraction {number}" for number in (1, 2, 3, 4)
)
SOLVE, RELATED, TWO_DIGITS, ORDER, INVERSE = (
    f"England Y2 addition and subtraction {number}" for number in (1, 2, 3, 4, 5)
)

SKILLS = (
    Skill(
        id="addition.facts_10",
        name="Add to 10",
        title="Add within 10",
        standards=(*WITHIN_10, "CCSS 1.OA.C.5", SIGNS, BONDS),
        limits="Numbers from 0 with sums to 5 or 10.",
        builds_on=("counting.on_in_ones",),
        manipulative=LINE,
        tasks=8,
        seconds=120,
        words=("add", "plus", "equals", "sum"),
        options=FACTS_10,
        together=3,
    ),
    Skill(
        id="addition.make_ten",
        name="Make ten",
        title="Find the partner that makes ten",
        standards=("CCSS K.OA.A.4", "CCSS 1.OA.C.6", BONDS, RELATED),
        limits="Partners from 1 to 9 for 10, to 19 for 20, whole tens for 100.",
        builds_on=("addition.facts_10",),
        manipulative=LINE,
        tasks=8,
        seconds=120,
        words=("make ten", "partner"),
        options={"to": (10, 20, 100), "unknown": ("any", "second", "first")},
        together=3,
    ),
    Skill(
        id="addition.doubles",
        name="Doubles",
        title="Doubles and near doubles",
        standards=(*WITHIN_20, BONDS, RELATED),
        limits="Doubles or near doubles, of numbers from 1 to 10 or of whole tens to 100.",
        builds_on=("addition.facts_10",),
        manipulative=LINE,
        tasks=5,
        seconds=90,
        words=("double", "near double"),
        options={"to": (20, 10, 100), "near": (False, True), "over": (0, 10, 18)},
        together=3,
    ),
    Skill(
        id="addition.stories_put_together",
        name="How many together?",
        title="Stories: put together, take apart",
        standards=(*STORIES_TO_100, "CCSS K.OA.A.3", PROBLEMS, SOLVE),
        limits="Parts from 1 with totals to 10, 20 or 100; total, one part or both unknown.",
        builds_on=("addition.facts_10",),
        manipulative=BLOCKS,
        tasks=4,
        seconds=300,
        words=("altogether", "part", "whole"),
        options={"unknown": ("any", "total", "addend", "both"), **STORIES},
    ),
    Skill(
        id="addition.stories_add_to",
        name="Some more come",
        title="Stories: add to",
        standards=(*STORIES_TO_100, PROBLEMS, SOLVE),
        limits="Numbers from 1 with results to 10, 20 or 100; result, change or start unknown.",
        builds_on=("addition.facts_10",),
        manipulative=LINE,
        tasks=4,
        seconds=300,
        words=("more", "now", "at first"),
        options=RESULTS,
    ),
    Skill(
        id="addition.facts_20",
        name="Add to 20",
        title="Add within 20",
        standards=(*WITHIN_20, BONDS, TO_20, RELATED),
        limits="Two numbers from 0 to 9, or one from 10 to 20 with sums to 20.",
        builds_on=("addition.make_ten", "addition.doubles"),
        manipulative=LINE,
        tasks=8,
        seconds=120,
        words=("make ten", "count on"),
        options=FACTS_20,
        together=3,
    ),
    Skill(
        id="addition.missing_addend",
        name="What is missing?",
        title="Find the missing addend",
        standards=("CCSS 1.OA.D.8", "CCSS 1.OA.B.4", PROBLEMS, INVERSE),
        limits="Numbers from 1 with sums to 10, 20 or 100.",
        builds_on=("addition.facts_20",),
        manipulative=LINE,
        tasks=6,
        seconds=180,
        words=("addend", "missing number"),
        options=MISSING,
        together=3,
    ),
    Skill(
        id="addition.true_or_false",
        name="True or false?",
        title="Judge statements with an equal sign",
        standards=("CCSS 1.OA.D.7", "CCSS 1.OA.B.3", SIGNS, ORDER),
        limits="Numbers from 1 with first sums to 10 or 20, as many true as false.",
        builds_on=("addition.facts_10",),
        manipulative=BLOCKS,
        tasks=6,
        seconds=180,
        words=("equal sign", "true", "false"),
        options={
            "form": ("any", "sum first", "sum last", "both sides", "turned"),
            "to": (10, 20),
        },
    ),
    Skill(
        id="addition.three_numbers",
        name="Add three numbers",
        title="Add three one-digit numbers",
        standards=("CCSS 1.OA.A.2", "CCSS 1.OA.B.3", TWO_DIGITS, ORDER),
        limits="Three numbers from 1 to 9 with sums to 20 or 27.",
        builds_on=("addition.facts_20",),
        manipulative=LINE,
        tasks=6,
        seconds=180,
        words=("make ten", "double"),
        options={"to": (20, 27), "ten": ("any", "yes", "no")},
        together=3,
    ),
    Skill(
        id="addition.tens",
        name="Add tens",
        title="Add multiples of ten",
        standards=("CCSS 1.NBT.C.4", "England Y2 number 6", RELATED, TWO_DIGITS),
        limits="Multiples of 10 with sums to 100, or of 100 with sums to 1000.",
        builds_on=("addition.facts_10", "place_value.read_blocks"),
        manipulative=BLOCKS,
        tasks=6,
        seconds=120,
        words=("tens", "hundred"),
        options={"of": (10, 100)},
    ),
    Skill(
        id="addition.two_digit_tens",
        name="Add some tens",
        title="Add tens to two digits",
        standards=("CCSS 1.NBT.C.4", "CCSS 2.NBT.B.5", TWO_DIGITS),
        limits="Numbers from 11 with sums to 99.",
        builds_on=("addition.tens", "counting.on_in_tens"),
        manipulative=LINE,
        tasks=6,
        seconds=150,
        words=("tens", "count on"),
        together=3,
    ),
    Skill(
        id="addition.two_digit_one_digit",
        name="Add some ones",
        title="Add two digits and one",
        standards=("CCSS 1.NBT.C.4", "CCSS 2.NBT.B.5", TWO_DIGITS),
        limits="10 to 99 and 1 to 9 with sums to 99, 100 or 200.",
        builds_on=("addition.facts_20", "place_value.read_blocks"),
        manipulative=BOARD,
        tasks=5,
        seconds=240,
        words=("ones", "tens", "regroup"),
        options={"regroup": ("any", "none", "ones", "both", "zero"), "to": (100, 99, 200)},
        together=3,
    ),
    Skill(
        id="addition.two_digit",
        name="Add tens and ones",
        title="Add two two-digit numbers",
        standards=("CCSS 2.NBT.B.5", TWO_DIGITS),
        limits="Two numbers from 10 to 99 with sums to 99, 100 or 200.",
        builds_on=("addition.two_digit_one_digit", "addition.tens"),
        manipulative=BOARD,
        tasks=4,
        seconds=300,
        words=("column", "regroup"),
        options={"regroup": EVERYWHERE, "to": (200, 99, 100)},
        together=3,
    ),
    Skill(
        id="addition.several",
        name="Add many numbers",
        title="Add up to four two-digit numbers",
        standards=("CCSS 2.NBT.B.6",),
        limits="Three or four numbers from 10 to 99.",
        builds_on=("addition.two_digit", "addition.three_numbers"),
        manipulative=BOARD,
        tasks=3,
        seconds=300,
        words=("column", "regroup"),
        options={"count": (3, 4), "regroup": ("any", "none", "ones", "tens", "both")},
    ),
    Skill(
        id="addition.three_digit",
        name="Add hundreds too",
        title="Add three-digit numbers",
        standards=("CCSS 2.NBT.B.7",),
        limits="100 to 999 and one to three digits with sums to 999, 1000 or 2000.",
        builds_on=("addition.two_digit", "place_value.expanded_form"),
        manipulative=BOARD,
        tasks=3,
        seconds=300,
        words=("hundreds", "regroup"),
        options={"regroup": EVERYWHERE, "second": (3, 2, 1), "to": (1000, 999, 2000)},
        together=3,
    ),
)
