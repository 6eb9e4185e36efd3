from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest
import traitlets

from manipulatives.widgets.chart import CountingChart


def test_a_chart_is_known_without_a_browser():
    chart = CountingChart(1, 120, step=10, start=7)
    assert [chart.count() for _ in range(3)] == [7, 17, 27]
    assert chart.counted == [7, 17, 27]
    assert chart.next_number == 37
    assert chart.finished is False
    assert chart.facts["total"] == 12


def test_counting_goes_to_the_end_and_no_further():
    chart = CountingChart(1, 20, step=5)
    assert [chart.count() for _ in range(5)] == [5, 10, 15, 20, None]
    assert chart.finished is True


def test_a_tap_on_the_last_number_takes_it_back():
    chart = CountingChart(step=5)
    chart.count()
    chart.tap(6)
    assert chart.facts["tapped"] == 6
    chart.tap(5)
    assert chart.counted == []
    assert chart.facts["tapped"] is None


def test_hidden_cells_are_written():
    chart = CountingChart(hidden=[35, 36], mode="write")
    chart.write(35, "53")
    assert (chart.written, chart.facts["wrong"]) == ({35: "53"}, 1)
    chart.write(35, "")
    assert chart.written == {}
    chart.write(35, "35")
    chart.write(36, "36")
    assert chart.finished is True


@pytest.mark.parametrize(
    ("traits", "said"),
    [
        ({"width": 1}, "A chart is 2 to 20 numbers wide, not 1; 10 is usual."),
        ({"step": 0}, "A step is a whole number from 1 to 1000, not 0"),
        ({"start": 101}, "The start is a number from 1 to 100 or None, not 101."),
        ({"last": 1}, "The last number is 1 to 1000 more than the first"),
        ({"first": -1}, "The first number is whole, from 0 to 10000, not -1."),
        ({"hidden": "holes"}, "Hidden is one of none, thirds, cross, patch, counts, all"),
        ({"hidden": [101]}, r"or a list of numbers from 1 to 100, not \[101\]"),
        ({"beat": 121}, "A beat is 0 to 120 counts a minute, not 121; 0 is no beat."),
        ({"mode": "erase"}, "erase"),
        ({"direction": "down"}, "down"),
        ({"vocabulary": "fr"}, "fr"),
        ({"chart": {"counted": [101]}}, "The chart goes from 1 to 100, not 101."),
    ],
)
def test_what_a_chart_cannot_be_is_told_and_changes_nothing(traits, said):
    with pytest.raises(traitlets.TraitError, match=said):
        CountingChart(**traits)
    chart = CountingChart()
    before = chart.get_state()
    ((name, value),) = traits.items()
    with pytest.raises(traitlets.TraitError, match=said):
        setattr(chart, name, value)
    assert chart.get_state() == before


def test_an_unknown_trait_is_told_with_the_known_ones():
    with pytest.raises(TypeError, match=r"has no 'steps'\. It takes .*\bstep\b"):
        CountingChart(steps=5)


def test_settings_that_need_each_other_come_in_any_order():
    chart = CountingChart(start=950, last=1000, first=901, hidden=[905], chart={"counted": [950]})
    assert chart.counted == [950]
    assert chart.settings.blanks == [905]


def test_other_numbers_keep_what_is_on_them():
    chart = CountingChart(start=95, hidden=[5, 99], chart={"counted": [95, 96]})
    chart.show_range(96, 195)
    assert chart.start is None
    assert chart.hidden == [99]
    assert chart.counted == [96]
    chart.last = 120
    assert chart.facts["total"] == 25


def test_what_comes_from_the_browser_in_one_message_is_taken():
    chart = CountingChart()
    chart.set_state({"first": 901, "last": 1000, "chart": {"counted": [901, 902]}})
    assert chart.counted == [901, 902]


def test_who_listens_hears_of_each_count_until_it_stops():
    chart = CountingChart(step=10)
    heard = []
    stop = chart.on_change(lambda chart: heard.append(chart.facts["at"]))
    chart.count()
    chart.count()
    stop()
    stop()
    chart.count()
    assert heard == [10, 20]


def test_each_trait_says_what_it_is():
    own = {
        name: trait for name, trait in CountingChart.class_own_traits().items() if name[0] != "_"
    }
    assert set(own) >= {"chart", "first", "last", "width", "step", "start", "direction", "hidden"}
    for name, trait in own.items():
        assert trait.help.endswith("."), name
        assert trait.metadata["sync"], name


def test_a_still_picture_goes_with_the_widget():
    chart = CountingChart(1, 20, step=5, line=True)
    chart.count()
    picture = ET.fromstring(chart.still())  # noqa: S314 - our own
    texts = [text.text for text in picture.iter() if text.tag.endswith("text")]
    assert {"1", "20"} <= set(texts)
    data, _ = chart._repr_mimebundle_()
    assert data["image/svg+xml"] == chart.still()


def test_the_text_a_host_loads_is_small():
    assert len(CountingChart._esm.encode()) < 36_000  # noqa: SLF001 - it is what hosts are sent
