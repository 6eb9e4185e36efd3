"""The coin tray as Python sees it, with no browser attached."""

from __future__ import annotations

import base64
import doctest
import re
from xml.etree import ElementTree as ET

import pytest
import traitlets

import manipulatives.widgets.coins.coins
from manipulatives.maths.money.coins import CURRENCIES
from manipulatives.maths.money.places import next_place
from manipulatives.maths.money.tray import tray_facts, tray_of
from manipulatives.widgets.coins import CoinTray
from manipulatives.widgets.coins.photographs import LARGEST

TOKENS = {
    "name": "market tokens",
    "minor": {"sign": "t", "one": "token", "many": "tokens"},
    "coins": [
        {"worth": 1, "diameter": 20, "metal": "copper"},
        {"worth": 12, "name": "dozen", "many": "dozens", "diameter": 28.5, "metal": "gold"},
    ],
}
PICTURE = base64.b64decode(
    "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=="
)


def test_the_examples_in_its_reference_are_true():
    failed, tried = doctest.testmod(manipulatives.widgets.coins.coins)
    assert tried > 0
    assert failed == 0


def test_a_new_tray_is_empty_and_has_the_usual_purse():
    tray = CoinTray()
    assert tray.tray == []
    assert tray.total == 0
    assert tray.purse == ["25", "10", "5", "1"]
    assert CoinTray(currency="gbp").purse == list(CURRENCIES["gbp"].usual)


@pytest.mark.parametrize("given", ["1 25 10", ["25", 10, "1"], ("10", "1", "25")])
def test_coins_are_given_as_people_write_them_and_lined_up(given):
    tray = CoinTray(given)
    assert tray.coins == ["25", "10", "1"]
    assert tray.tray == tray_of("25 10 1")
    tray.coins = "5 5"
    assert tray.facts["kinds"] == "5 5"


def test_readings_are_those_of_the_tray():
    tray = CoinTray("25 10 5 1", purse={"25": 3, "10": 1})
    assert tray.total == 41
    assert tray.fewest
    assert tray.left == {"25": 2, "10": 0}
    assert tray.facts == tray_facts(tray.tray, "usd", {"25": 3, "10": 1})
    assert not CoinTray("5 5").fewest


def test_coins_come_and_go():
    tray = CoinTray(purse={"10": 2, "5": 1})
    tray.add("10")
    tray.add(10)
    assert tray.facts["kinds"] == "10 10"
    with pytest.raises(ValueError, match="There is no coin 10 in the purse"):
        tray.add("10")
    with pytest.raises(ValueError, match="There is no coin 25 in the purse"):
        tray.add("25")
    tray.take("10")
    assert tray.facts["kinds"] == "10"
    with pytest.raises(ValueError, match="There is no coin 5 on the tray"):
        tray.take("5")
    tray.sweep()
    assert tray.total == 0


def test_the_coin_that_was_laid_last_is_taken():
    tray = CoinTray("10 10")
    first = tray.tray[0]
    tray.take("10")
    assert tray.tray == [first]


def test_a_full_tray_takes_no_more():
    tray = CoinTray(["25"] * 49)
    assert next_place("25", tray.tray, CURRENCIES["usd"]) is None
    with pytest.raises(ValueError, match="The tray is full"):
        tray.add("25")
    assert tray.total == 49 * 25


def test_coins_are_lined_up():
    tray = CoinTray()
    for coin in "1 25 10".split():  # noqa: SIM905 - as a notebook says it
        tray.add(coin)
    tray.line_up()
    assert tray.tray == tray_of("25 10 1")


def test_coins_are_exchanged_for_coins_worth_as_much():
    tray = CoinTray("10 10 5 1")
    tray.exchange("10 10 5", "25")
    assert tray.facts["kinds"] == "25 1"
    tray.exchange("25", "10 10 5")
    assert tray.facts["kinds"] == "10 10 5 1"
    with pytest.raises(ValueError, match="10 5 cannot be traded for 10 here"):
        tray.exchange("10 5", "10")
    with pytest.raises(ValueError, match="There are not so many coins 5 on the tray"):
        tray.exchange("5 5", "10")
    with pytest.raises(ValueError, match="cannot be traded"):
        CoinTray("5 5", purse={"10": 0}).exchange("5 5", "10")


@pytest.mark.parametrize(
    ("name", "value", "said"),
    [
        ("tray", [{"coin": "25", "x": 0, "y": 0}], "122 to 1278"),
        ("tray", [{"coin": "20", "x": 700, "y": 700}], "US dollars have no coin '20'"),
        ("tray", None, "list"),
        ("currency", "dem", '"usd", "gbp"'),
        ("currency", {"name": "x"}, 'needs the field "minor"'),
        ("purse", ["20"], "US dollars have no coin '20'"),
        ("purse", {"25": -1}, "0 to 100"),
        ("purse", 7, "list of at most 100"),
        ("writing", "long", r"\['mixed', 'small', 'decimal'\]"),
        ("counts", -1, "True, False or a number of coins"),
        ("counts", "yes", "True, False or a number of coins"),
        ("photographs", {"10": "no.jpg"}, "There is no file no.jpg"),
        ("photographs", {"11": "no.jpg"}, "US dollars have no coin '11'"),
        ("photographs", {"10": 5}, "path of a file"),
        ("ring", "20", "US dollars have no coin '20'"),
        ("worths", "yes", "boolean"),
        ("trade", None, "boolean"),
    ],
)
def test_a_wrong_value_is_refused_with_what_is_allowed_and_leaves_the_tray_as_it_was(
    name, value, said
):
    tray = CoinTray("25 10")
    before = tray.get_state()
    with pytest.raises(traitlets.TraitError, match=said):
        setattr(tray, name, value)
    assert tray.get_state() == before
    with pytest.raises(traitlets.TraitError, match=said):
        CoinTray(**{name: value})


def test_a_trait_that_does_not_exist_is_refused_by_name():
    with pytest.raises(TypeError, match=r"no .worth.*worths"):
        CoinTray(worth=False)


def test_coins_and_tray_together_are_refused():
    with pytest.raises(TypeError, match="not both"):
        CoinTray("25", tray=[])


@pytest.mark.parametrize("coins", ["3", ["25"] * 101, 25, ["50"] * 60])
def test_coins_that_are_none_are_refused(coins):
    with pytest.raises(ValueError, match=r"[Cc]oin"):
        CoinTray(coins)


def test_the_tray_that_was_given_is_not_kept_itself():
    given = tray_of("25")
    tray = CoinTray(tray=given)
    given[0]["x"] = 700
    assert tray.tray == tray_of("25")


def test_a_new_currency_keeps_the_coins_that_it_has():
    tray = CoinTray("10 5", purse=["10", "5"], ring="5")
    tray.currency = "gbp"
    assert tray.facts["kinds"] == "10 5"
    assert tray.purse == ["10", "5"]
    tray.currency = "nzd"
    assert tray.tray == []
    assert tray.purse == list(CURRENCIES["nzd"].usual)
    assert tray.ring == ""


def test_coins_of_a_teacher_are_counted_like_others():
    tray = CoinTray("12 1 1", currency=TOKENS)
    assert tray.total == 14
    assert tray.purse == ["12", "1"]
    assert tray.currency["coins"][1]["name"] == "one token"
    # What a browser is sent is complete.
    assert set(tray.currency["coins"][0]) == set(CURRENCIES["usd"].to_data()["coins"][0])
    assert CoinTray(currency=tray.currency).currency == tray.currency


def test_several_traits_from_a_browser_are_taken_together():
    tray = CoinTray("25")
    tray.set_state({"tray": tray_of("20", "gbp"), "purse": ["20"], "currency": "gbp"})
    assert (tray.total, tray.purse, tray.currency) == (20, ["20"], "gbp")
    with pytest.raises(traitlets.TraitError, match="cover each other"):
        tray.set_state({"tray": tray_of("20", "gbp") * 2})
    assert tray.total == 20


def test_a_photograph_becomes_text_that_travels(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "dime.png").write_bytes(PICTURE)
    tray = CoinTray("10 1", photographs={"10": "dime.png"})
    text = tray.photographs["10"]
    assert text == "data:image/png;base64," + base64.b64encode(PICTURE).decode()
    # Once it is text, the file is not needed.
    assert CoinTray(photographs=tray.photographs).photographs == tray.photographs


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"<svg onload='alert(1)'/>", "is no PNG, JPEG, GIF or WebP picture"),
        (PICTURE + bytes(LARGEST), "is larger than a megabyte"),
    ],
    ids=["drawing", "large"],
)
def test_a_photograph_is_a_picture_of_moderate_size(tmp_path, monkeypatch, content, said):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "dime.png").write_bytes(content)
    with pytest.raises(traitlets.TraitError, match=said):
        CoinTray(photographs={"10": "dime.png"})


def test_a_photograph_is_taken_from_the_folder_of_the_lesson_only(tmp_path, monkeypatch):
    (tmp_path / "secret.png").write_bytes(PICTURE)
    (tmp_path / "lesson").mkdir()
    monkeypatch.chdir(tmp_path / "lesson")
    for path in ("../secret.png", str(tmp_path / "secret.png")):
        with pytest.raises(traitlets.TraitError, match="outside this folder"):
            CoinTray(photographs={"10": path})
    (tmp_path / "lesson" / "link.png").symlink_to(tmp_path / "secret.png")
    with pytest.raises(traitlets.TraitError, match="outside this folder"):
        CoinTray(photographs={"10": "link.png"})


@pytest.mark.parametrize(
    "text",
    [
        "data:text/html;base64,PGI+",
        "data:image/svg+xml;base64,PHN2Zy8+",
        "data:image/png;base64,PHN2Zy8+",
        "data:image/png,abc",
    ],
)
def test_text_that_is_no_picture_is_refused(text):
    with pytest.raises(traitlets.TraitError, match="PNG, JPEG, GIF or WebP picture"):
        CoinTray(photographs={"10": text})


def test_a_change_is_told_until_it_is_stopped():
    tray = CoinTray()
    told = []
    stop = tray.on_change(lambda each: told.append((each is tray, each.total)))
    tray.add("25")
    tray.names = True
    tray.set_state({"tray": tray_of("10 10")})
    assert told == [(True, 25), (True, 20)]
    stop()
    tray.sweep()
    stop()
    assert len(told) == 2


def test_every_key_of_its_table_is_in_the_reference():
    for key in (
        "1 to 9",
        "Tab",
        "Enter or Space",
        "Right, Down",
        "Home; End",
        "Shift with an arrow",
    ):
        assert f"| {key}" in CoinTray.__doc__
    for key in ("Delete or Backspace", "Escape"):
        assert f"| {key}" in CoinTray.__doc__
    for name in CoinTray.class_own_traits():
        if not name.startswith("_"):
            assert CoinTray.class_traits()[name].help


def test_its_reference_says_that_real_coins_belong_beside_the_screen():
    assert "real coins belong beside the screen" in " ".join(CoinTray.__doc__.split())


def test_its_picture_is_a_drawing_of_the_same_coins():
    shown = ET.fromstring(CoinTray("25 10 5").still())  # noqa: S314 - it is our own text
    assert shown.tag.endswith("svg")
    assert "3 coins." in "".join(shown.itertext())
    assert re.findall(r">(\d+)</text>", CoinTray("25 10 5").still()) == ["25", "10", "5"]


def test_its_picture_leaves_out_what_is_not_shown():
    asked = CoinTray("25 10", worths=False, ring="10").still()
    assert re.findall(r"</text>", asked) == []
    assert ">quarter</text>" in CoinTray("25 10", names=True).still()
    assert ">35</text>" in CoinTray("25 10", counts=True).still()


def test_its_bundle_has_a_view_and_a_picture():
    data, _ = CoinTray("25 10")._repr_mimebundle_()
    assert "application/vnd.jupyter.widget-view+json" in data
    assert data["image/svg+xml"].startswith("<svg")
