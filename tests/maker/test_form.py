"""The form without a browser: pressing its buttons, and what it shows."""

from __future__ import annotations

import re

import pytest

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.files import read_lesson, write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.settings import class_settings
from manipulatives.lessons.tasks.make import GENERATORS
from manipulatives.maker.lesson_maker import lesson_maker


@pytest.fixture
def maker(tmp_path):
    return lesson_maker(tmp_path)


def add(maker, skill):
    maker.catalogue.search.value = SKILLS[skill].title
    maker.catalogue.list.value = skill
    maker.catalogue.add.click()


def shown(maker):
    return maker.preview.stage.children[0]


def task_lines(maker):
    return [re.sub(r"<[^>]+>", "", row.words.value) for row in maker.round.list.rows]


def labels(widget):
    """Every widget that something is typed or chosen in, with its label."""
    found = []
    for child in getattr(widget, "children", ()):
        if hasattr(child, "value") and hasattr(child, "description"):
            found.append((type(child).__name__, child.description))
        found += labels(child)
    return found


def test_the_preview_is_the_round_that_is_chosen_and_follows_every_change(maker):
    add(maker, "time.read_hour")
    assert shown(maker).setup["skill"] == "time.read_hour"
    assert len(shown(maker).tasks) == 6
    maker.round.tasks.value = 3
    assert len(shown(maker).tasks) == 3
    before = [task["answer"] for task in shown(maker).tasks]
    maker.round.again.click()
    assert [task["answer"] for task in shown(maker).tasks] != before
    maker.round.list.rows[1].typed.value = "4:00"
    assert shown(maker).tasks[1]["answer"] == "4:00"
    assert task_lines(maker)[1].endswith("4:00")
    maker.lesson.settings["vocabulary"].value = "uk"
    assert shown(maker).setup["vocabulary"] == "uk"


@pytest.mark.parametrize("skill", sorted(SKILLS))
def test_every_skill_can_be_added_and_shown(maker, skill):
    add(maker, skill)
    assert maker.state.message == ""
    assert shown(maker).setup["skill"] == skill
    can = maker.round.list.rows[0].typed.layout.display is None
    assert can == (GENERATORS[skill].read is not None)


def test_an_invalid_value_is_reported_and_changes_nothing(maker):
    add(maker, "time.read_half")
    before = maker.state.draft
    maker.round.list.rows[0].typed.value = "9:17"
    assert maker.notice.tone == "error"
    assert "'9:17'" in maker.notice.lines[0]
    assert maker.state.draft == before
    assert maker.round.list.rows[0].typed.value == ""
    maker.lesson.title.value = ""
    assert maker.notice.tone == "error"
    assert maker.lesson.title.value == before.lesson.title


def test_a_pattern_sets_a_value_for_every_task(maker):
    add(maker, "time.later")
    maker.round.tasks.value = 3
    _, main, _ = maker.round.choices["by"]
    main.value = main.options[-1][1]
    assert maker.state.round.options == {"by": [5, 5, 5]}
    _, _, singles = maker.round.choices["by"]
    singles[1].value = 20
    assert maker.state.round.options == {"by": [5, 20, 5]}
    assert "20 minutes" in task_lines(maker)[1]
    _, main, _ = maker.round.choices["by"]
    main.value = 10
    assert maker.state.round.options == {"by": 10}


def test_rows_and_options_stay_where_they_are_while_values_change(maker):
    add(maker, "time.later")
    row, options = maker.round.list.rows[0].box, maker.round.options.children
    maker.round.list.rows[0].again.click()
    maker.round.seconds.value = 100
    assert maker.round.list.box.children[0] is row
    assert maker.round.options.children == options


def test_everything_that_is_typed_or_chosen_has_a_label(maker):
    add(maker, "time.later")
    found = [pair for pair in labels(maker) if pair[0] not in ("HTML", "Notice", "BoardRound")]
    assert len(found) > 20
    assert [pair for pair in found if not pair[1]] == []


def test_the_length_is_shown_beside_that_of_the_session(maker):
    add(maker, "time.read_hour")
    maker.lesson.minutes.value = 1
    assert "1 round, 2 min; the session has 1 min." in maker.rounds.length.value
    assert any("1 min more" in line for line in maker.remarks.notice.lines)


def test_class_settings_are_changed_and_hold_at_once(maker, tmp_path):
    add(maker, "time.read_five_minutes")
    maker.settings.choices["vocabulary"].value = "uk"
    maker.settings.count.value = 5
    maker.settings.save.click()
    assert class_settings(tmp_path).vocabulary == "uk"
    assert class_settings(tmp_path).count_aloud == 5
    assert shown(maker).setup["vocabulary"] == "uk"
    assert shown(maker).setup["wipe"] == {"by": 5}


def test_a_round_counts_aloud_in_steps_of_its_own_or_as_the_class(maker):
    add(maker, "time.read_hour")
    assert maker.round.count.label == "as the class (not at all)"
    assert shown(maker).setup["wipe"] is None
    maker.round.count.value = 10
    assert maker.state.round.count_aloud == 10
    assert shown(maker).setup["wipe"] == {"by": 10}
    maker.settings.count.value = 4
    maker.settings.save.click()
    assert maker.round.count.options[0] == ("as the class (in 4s)", "")
    maker.round.count.value = ""
    assert shown(maker).setup["wipe"] == {"by": 4}
    maker.round.count.value = 0
    assert shown(maker).setup["wipe"] is None


def test_a_broken_lesson_is_reported_and_the_open_one_stays(maker, tmp_path):
    add(maker, "time.read_hour")
    (tmp_path / "torn.toml").write_text("title = \n")
    maker.state.notify()
    maker.file.lessons.value = "torn"
    maker.file.open.click()
    assert maker.notice.tone == "error"
    assert "torn.toml" in maker.notice.lines[0]
    assert len(maker.state.draft.lesson.rounds) == 1


def test_text_is_never_shown_as_html(tmp_path):
    bad = "<img src=x onerror=alert(1)>"
    write_lesson(
        Lesson(bad, seed=1, rounds=(Round("time.read_hour", seed=1, title=bad),)),
        tmp_path / "bad.toml",
    )
    maker = lesson_maker(tmp_path)
    maker.file.lessons.value = "bad"
    maker.file.open.click()
    assert maker.state.draft.lesson.title == bad

    def texts(widget):
        for child in getattr(widget, "children", ()):
            if type(child).__name__ == "HTML":
                yield child.value
            yield from texts(child)

    assert not any("<img" in text for text in texts(maker))


def test_another_lesson_is_replaced_only_after_a_question(maker, tmp_path):
    add(maker, "time.read_hour")
    maker.file.name.value = "monday"
    maker.file.save.click()
    first = read_lesson(tmp_path / "monday.toml")
    maker.file.new.click()
    add(maker, "time.read_half")
    maker.file.name.value = "monday"
    maker.file.save.click()
    assert maker.file.asking.layout.display is None
    assert read_lesson(tmp_path / "monday.toml") == first
    maker.file.replace.click()
    assert maker.file.asking.layout.display == "none"
    assert read_lesson(tmp_path / "monday.toml").rounds[0].skill == "time.read_half"


def test_a_folder_that_is_not_there_is_refused(tmp_path):
    with pytest.raises(NotADirectoryError, match="There is no folder"):
        lesson_maker(tmp_path / "nowhere")
