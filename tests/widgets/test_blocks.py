"""Place value blocks as Python sees them, with no browser attached."""

from __future__ import annotations

import doctest
from xml.etree import ElementTree as ET

import pytest
import traitlets

import manipulatives.widgets.blocks.blocks
from manipulatives.maths.number.mats import mat_facts
from manipulatives.maths.number.place_value import check_blocks, fewest
from manipulatives.widgets.blocks import PlaceValueBlocks

ODD = [{"tens": 2, "ones": 15}]


def test_the_examples_in_its_reference_are_true():
    failed, tried = doctest.testmod(manipulatives.widgets.blocks.blocks)
    assert tried > 0
    assert failed == 0


def test_a_new_mat_is_empty_with_three_columns():
    blocks = PlaceValueBlocks()
    assert blocks.mat == [fewest(0)]
    assert blocks.number == 0
    assert blocks.places == 3
    assert blocks.compare is None


@pytest.mark.parametrize("number", [0, 7, 10, 345, 706, 1000, 9999])
def test_a_number_is_laid_with_the_fewest_blocks(number):
    blocks = PlaceValueBlocks(number)
    assert blocks.number == number
    assert blocks.mat == [fewest(number)]
    assert blocks.pieces == sum(map(int, str(number)))
    assert blocks.canonical


@pytest.mark.parametrize("numbers", [[345, 287], (345, 287)])
def test_two_numbers_lie_on_two_mats(numbers):
    blocks = PlaceValueBlocks(numbers)
    assert blocks.numbers == (345, 287)
    assert blocks.compare == ">"
    assert blocks.sum == 632
    assert blocks.number == 345


def test_readings_and_facts_are_those_of_the_mat():
    blocks = PlaceValueBlocks(mat=ODD)
    assert (blocks.number, blocks.pieces, blocks.canonical) == (35, 17, False)
    assert blocks.mat == [check_blocks(ODD[0])]
    assert blocks.facts == mat_facts(ODD)


def test_a_number_can_be_set_and_leaves_the_second_mat_alone():
    blocks = PlaceValueBlocks(mat=[*ODD, {"tens": 4}])
    blocks.number = 345
    assert blocks.numbers == (345, 40)
    assert blocks.canonical


def test_trades_change_the_pieces_and_not_the_number():
    blocks = PlaceValueBlocks(mat=ODD)
    blocks.trade_up("ones")
    assert (blocks.number, blocks.pieces) == (35, 8)
    blocks.trade_down("tens")
    assert (blocks.number, blocks.pieces) == (35, 17)


def test_a_trade_is_made_on_the_mat_that_is_named():
    blocks = PlaceValueBlocks([35, 35])
    blocks.trade_down("tens", mat=1)
    assert [sum(each.values()) for each in blocks.mat] == [8, 17]


@pytest.mark.parametrize(
    ("step", "why"),
    [
        (lambda blocks: blocks.trade_up("tens"), "Ten tens become 1 hundred; there are 2"),
        (lambda blocks: blocks.trade_down("hundreds"), "There are no hundreds to break"),
        (lambda blocks: blocks.trade_up("ten"), "A place is"),
        (lambda blocks: blocks.trade_up("ones", mat=1), "There is no mat 1; there are 1"),
        (lambda blocks: blocks.trade_up("ones", mat="A"), "There is no mat 'A'"),
        (lambda blocks: blocks.put_together(), "There is one mat alone"),
        (lambda blocks: setattr(blocks, "number", 10_000), "from 0 to 9999, not 10000"),
    ],
)
def test_what_cannot_be_done_says_why_and_leaves_the_blocks_as_they_were(step, why):
    blocks = PlaceValueBlocks(mat=ODD)
    with pytest.raises(ValueError, match=why):
        step(blocks)
    assert blocks.mat == [check_blocks(ODD[0])]


def test_more_than_a_mat_holds_is_not_put_together():
    blocks = PlaceValueBlocks([9999, 1], pair="add")
    with pytest.raises(traitlets.TraitError, match="at most 9999"):
        blocks.mat = [{"thousands": 9, "ones": 1000}]
    with pytest.raises(ValueError, match="at most 9999"):
        blocks.put_together()
    assert blocks.numbers == (9999, 1)


@pytest.mark.parametrize(
    ("name", "value", "allowed"),
    [
        ("mat", [], "a list of one or two blocks"),
        ("mat", [{}, {}, {}], "a list of one or two blocks"),
        ("mat", [{"ones": -1}], "whole numbers from 0"),
        ("mat", [{"ones": 1.5}], "whole numbers from 0"),
        ("mat", [{"ten": 1}], "Blocks are counts such as"),
        ("mat", [{"ones": 10_000}], "at most 9999"),
        ("places", 0, "1 to 4 places"),
        ("places", 5, "1 to 4 places"),
        ("places", True, "1 to 4 places"),
        ("pair", "subtract", r"\['compare', 'add', 'take'\]"),
        ("trades", "lasso", r"\['any', 'ring', 'button', 'none'\]"),
        ("vocabulary", "fr", "'us'.*'uk'"),
        ("numeral", "yes", "boolean"),
        ("panel", None, "boolean"),
    ],
)
def test_a_wrong_value_is_refused_with_what_is_allowed_and_leaves_the_blocks_as_they_were(
    name, value, allowed
):
    blocks = PlaceValueBlocks(345)
    before = blocks.get_state()
    with pytest.raises(traitlets.TraitError, match=allowed) as error:
        setattr(blocks, name, value)
    given = value[0] if isinstance(value, list) and len(value) == 1 else value
    assert str(given) in str(error.value)
    assert blocks.get_state() == before
    with pytest.raises(traitlets.TraitError, match=allowed):
        PlaceValueBlocks(**{name: value})


def test_a_trait_that_does_not_exist_is_refused_by_name():
    with pytest.raises(TypeError, match=r"no .digit.*digits"):
        PlaceValueBlocks(digit=False)


def test_number_and_mat_together_are_refused():
    with pytest.raises(TypeError, match="not both"):
        PlaceValueBlocks(35, mat=ODD)


@pytest.mark.parametrize("wrong", [-1, 10_000, 3.5, "35", True, [1, 2, 3], []])
def test_a_number_that_blocks_cannot_show_is_refused(wrong):
    with pytest.raises(ValueError, match=r"whole number from 0 to 9999|one or two blocks"):
        PlaceValueBlocks(wrong)


def test_the_mat_that_was_given_is_not_kept_itself():
    given = [{"ones": 5}]
    blocks = PlaceValueBlocks(mat=given)
    given[0]["ones"] = 6
    assert blocks.number == 5


def test_whoever_wants_to_hears_of_each_change_until_it_is_stopped():
    blocks, heard = PlaceValueBlocks(35), []
    stop = blocks.on_change(lambda each: heard.append(each.number))
    blocks.number = 36
    blocks.numeral = True
    blocks.trade_down("tens")
    assert heard == [36, 36]
    stop()
    stop()
    blocks.number = 1
    assert heard == [36, 36]


def test_a_picture_travels_with_the_blocks_and_says_no_number():
    blocks = PlaceValueBlocks(345, numeral=True, digits=False)
    made, _ = blocks._repr_mimebundle_()
    picture = made["image/svg+xml"]
    assert ET.fromstring(picture).tag.endswith("svg")  # noqa: S314 - our own drawing
    assert "3 hundreds, 4 tens, 5 ones." in picture
    assert ">345<" not in picture


def test_the_picture_has_the_columns_and_digits_that_the_mat_has():
    with_digits = PlaceValueBlocks(45, places=4).still()
    assert "Thousands" in with_digits
    assert ">4</text>" in with_digits
    assert ">4</text>" not in PlaceValueBlocks(45, digits=False).still()
    assert "Thousands" not in PlaceValueBlocks(45, places=2).still()


def test_plain_values_make_it_as_a_lesson_writes_them():
    blocks = PlaceValueBlocks([52, 0], pair="take", places=2, numeral=True, equation=True)
    assert blocks.facts["sum"] == 52
