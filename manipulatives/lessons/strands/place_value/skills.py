"""The skills of the place value strand, in the order in which they are learnt."""

from __future__ import annotations

from manipulatives.lessons.catalogue.skill import Option, Skill

Options = dict[str, tuple[Option, ...]]

TO: Options = {"to": (100, 20, 1000)}
# Which places of the number are empty, exactly.
ZEROS: Options = {"zeros": ("any", "none", "ones", "tens", "both")}
ZEROS_OF_PARTS: Options = {"zeros": ("any", "none", "ones", "tens")}

TEN_AND_ONES = ("CCSS K.NBT.A.1", "CCSS 1.NBT.B.2a", "CCSS 1.NBT.B.2b")
PLACES = ("CCSS 1.NBT.B.2a", "CCSS 1.NBT.B.2c", "CCSS 2.NBT.A.1a", "CCSS 2.NBT.A.1b")
TO_1000 = "CCSS 2.NBT.A.3"
PLACE_YEAR_2 = "England Y2 number 2"

SKILLS = (
    Skill(
        id="place_value.teens",
        name="Ten and some",
        title="Make and take apart 11 to 19",
        standards=TEN_AND_ONES,
        limits="11 to 19 as ten and some ones.",
        builds_on=("counting.on_in_ones",),
        manipulative="PlaceValueBlocks",
        tasks=6,
        seconds=120,
        words=("ten", "ones"),
        options={"which": ("any", "compose", "decompose")},
    ),
    Skill(
        id="place_value.read_blocks",
        name="Read blocks",
        title="Read a number from blocks",
        standards=(
            *PLACES,
            "CCSS 1.NBT.A.1",
            "England Y1 number 4",
            PLACE_YEAR_2,
            "England Y2 number 3",
        ),
        limits="Numbers from 1 to 20, 10 to 100 or 100 to 1000.",
        builds_on=("place_value.teens", "counting.on_in_tens"),
        manipulative="PlaceValueBlocks",
        tasks=6,
        seconds=150,
        words=("digit", "tens", "hundreds"),
        options={**TO, **ZEROS, "pieces": ("fewest", "more")},
    ),
    Skill(
        id="place_value.build_number",
        name="Build it",
        title="Show a number with blocks",
        standards=(*PLACES, "England Y1 number 4", "England Y2 number 3"),
        limits="Numbers from 1 to 20, 10 to 100 or 100 to 1000.",
        builds_on=("place_value.read_blocks",),
        manipulative="PlaceValueBlocks",
        tasks=5,
        seconds=180,
        options={**TO, **ZEROS, "given": ("digits", "words", "expanded")},
    ),
    Skill(
        id="place_value.read_words",
        name="Words to digits",
        title="Write a number in digits from its words",
        standards=(TO_1000, "England Y1 number 5", "England Y2 number 5"),
        limits="Numbers from 1 to 20, 10 to 100 or 100 to 1000.",
        builds_on=("place_value.read_blocks",),
        manipulative="PlaceValueBlocks",
        tasks=6,
        seconds=150,
        words=("digits",),
        options={**TO, **ZEROS},
        together=3,
    ),
    Skill(
        id="place_value.choose_words",
        name="Digits to words",
        title="Find the words for a number",
        standards=(TO_1000, "England Y1 number 5", "England Y2 number 5"),
        limits="Numbers from 1 to 20, 10 to 100 or 100 to 1000.",
        builds_on=("place_value.read_words",),
        manipulative="PlaceValueBlocks",
        tasks=6,
        seconds=150,
        options={**TO, **ZEROS},
    ),
    Skill(
        id="place_value.digit_worth",
        name="What is it worth?",
        title="Say what a digit is worth",
        standards=("CCSS 1.NBT.B.2a", "CCSS 2.NBT.A.1a", PLACE_YEAR_2),
        limits="Digits other than 0 of numbers from 10 to 99 or 100 to 999.",
        builds_on=("place_value.read_blocks",),
        manipulative="PlaceValueBlocks",
        tasks=6,
        seconds=150,
        words=("place", "worth"),
        options={"to": (100, 1000), "place": ("any", "ones", "tens", "hundreds")},
    ),
    Skill(
        id="place_value.expanded_form",
        name="Expanded form",
        title="Write a number in expanded form",
        standards=(TO_1000, PLACE_YEAR_2),
        limits="Numbers of two parts or three, from 11 to 20, 99 or 999.",
        builds_on=("place_value.digit_worth",),
        manipulative="PlaceValueBlocks",
        tasks=6,
        seconds=180,
        words=("expanded form", "parts"),
        options={**TO, **ZEROS_OF_PARTS},
        together=3,
    ),
    Skill(
        id="place_value.from_expanded",
        name="Join the parts",
        title="Write a number from its expanded form",
        standards=(TO_1000, PLACE_YEAR_2),
        limits="Numbers of two parts or three, from 11 to 20, 99 or 999.",
        builds_on=("place_value.expanded_form",),
        manipulative="PlaceValueBlocks",
        tasks=6,
        seconds=150,
        options={**TO, **ZEROS_OF_PARTS, "parts": ("in order", "mixed")},
        together=3,
    ),
    Skill(
        id="place_value.compare",
        name="Which sign?",
        title="Compare two numbers with <, = and >",
        standards=(
            "CCSS K.CC.C.7",
            "CCSS 1.NBT.B.3",
            "CCSS 2.NBT.A.4",
            "England Y1 number 4",
            "England Y2 number 4",
        ),
        limits="Pairs of numbers from 1 to 10, 20, 100 or 1000.",
        builds_on=("place_value.read_blocks",),
        manipulative="PlaceValueBlocks",
        tasks=6,
        seconds=150,
        words=("greater than", "less than", "equal to"),
        options={
            "to": (100, 10, 20, 1000),
            "decides": ("any", "hundreds", "tens", "ones", "equal"),
        },
    ),
    Skill(
        id="place_value.order",
        name="Greatest, smallest",
        title="Find the greatest or smallest of three",
        standards=(
            "CCSS 1.NBT.B.3",
            "CCSS 2.NBT.A.4",
            "England Y1 number 4",
            "England Y2 number 4",
        ),
        limits="Three different numbers from 1 to 20, 10 to 100 or 100 to 1000.",
        builds_on=("place_value.compare",),
        manipulative="PlaceValueBlocks",
        tasks=6,
        seconds=180,
        words=("greatest", "smallest"),
        options={
            **TO,
            "which": ("any", "greatest", "smallest"),
            "like": ("any", "hundreds", "tens", "digits"),
        },
    ),
)
