"""How a round chooses what it asks about, with families made up for the purpose."""

from __future__ import annotations

from itertools import pairwise

import pytest

from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.choosing import RoundRequest, choose_items, twins_of
from manipulatives.lessons.tasks.generator import TaskGenerator
from manipulatives.lessons.tasks.make import GENERATORS, make_tasks, make_typed
from manipulatives.words.clock_digits import in_digits

SEEDS = range(200)


class Asks:
    """As much of a task as choosing looks at."""

    def __init__(self, item, place):
        self.asks = f"item {item}"
        self.place = place


def request(
    items, count, *, order="any", asked=(), seed=1, kind=lambda item: item % 3, options=None
):
    generator = TaskGenerator(
        items=lambda options: items if not options.get("upper") else items[len(items) // 2 :],
        task=None,
        kind=kind,
        difficulty=lambda item: item,
    )
    return RoundRequest(
        "time.read_hour", f"{seed}", generator, options or [{}] * count, order, asked
    )


def test_items_differ_and_are_all_reached():
    for seed in SEEDS:
        found = choose_items(request(range(40), 7, seed=seed), Asks)
        assert len(set(found)) == 7
        assert set(found) <= set(range(40))
    assert sorted(choose_items(request(range(40), 40), Asks)) == list(range(40))


def test_what_was_asked_already_is_not_asked_again():
    asked = {f"item {item}" for item in range(0, 40, 2)}
    for seed in SEEDS:
        assert all(
            item % 2 for item in choose_items(request(range(40), 20, asked=asked, seed=seed), Asks)
        )
    says = "has only 20 different tasks with these options that were not asked already, not 21"
    with pytest.raises(LessonProblem, match=says):
        choose_items(request(range(40), 21, asked=asked), Asks)


def test_each_task_has_the_options_of_its_place_and_none_repeats_another():
    upper, whole = {"upper": True}, {}
    options = [upper, whole, upper, whole, whole]
    for seed in SEEDS:
        found = choose_items(request(range(10), 5, options=options, seed=seed), Asks)
        assert len(set(found)) == 5
        assert found[0] >= 5
        assert found[2] >= 5


def test_families_that_overlap_may_be_used_up():
    """Of six items the first five tasks leave one, and at most one is of the upper half."""
    with pytest.raises(LessonProblem, match="that were not asked already, not 3"):
        choose_items(request(range(6), 8, options=[*[{}] * 5, *[{"upper": True}] * 3]), Asks)


def test_easy_ones_come_first():
    firsts = set()
    for seed in SEEDS:
        found = choose_items(request(range(1000), 5, order="easy first", seed=seed), Asks)
        assert found == sorted(found)
        firsts.add(found[0])
    # One of the easiest, but not always the same one.
    assert max(firsts) < 600
    assert sum(firsts) / len(firsts) < 200
    assert len(firsts) > 50


def test_no_two_neighbours_are_of_one_kind_in_a_mixed_order():
    for seed in SEEDS:
        found = choose_items(request(range(40), 9, order="mixed", seed=seed), Asks)
        assert len(set(found)) == 9
        assert all(one % 3 != other % 3 for one, other in pairwise(found))


def test_a_kind_that_is_nearly_everything_is_mixed_as_long_as_it_can_be():
    few = [0, 1, 3, 6, 9, 12]  # of one kind all but the second
    assert {item % 3 for item in choose_items(request(few, 3, order="mixed"), Asks)[::2]} == {0}
    with pytest.raises(LessonProblem, match=r"cannot be mixed: too many of them are of one kind"):
        choose_items(request(few, 4, order="mixed"), Asks)


def test_a_list_of_options_is_an_order_already():
    with pytest.raises(
        LessonProblem, match=r"^order: an option with a list says the order already"
    ):
        choose_items(request(range(9), 2, order="mixed", options=[{}, {"upper": True}]), Asks)


def test_twins_are_as_hard_and_not_asked_in_the_round():
    for seed in SEEDS:
        wanted = request(range(60), 6, seed=seed)
        items = choose_items(wanted, Asks)
        for place, item in enumerate(items):
            twins = twins_of(wanted, items, place, 3)
            assert len(set(twins)) == 3
            assert not set(twins) & set(items)
            assert all(twin % 3 == item % 3 for twin in twins)


def test_a_small_family_repeats_the_round_but_never_the_task_itself():
    wanted = request(range(4), 4, kind=lambda _: "")
    items = choose_items(wanted, Asks)
    for place, item in enumerate(items):
        assert sorted([item, *twins_of(wanted, items, place, 3)]) == [0, 1, 2, 3]
    assert len(twins_of(request(range(2), 1, kind=lambda _: ""), [0], 0, 3)) == 1


def test_every_task_has_three_twins_that_are_like_it():
    for seed in range(20):
        for task in make_tasks("time.read_half", seed=seed, count=4):
            assert len({twin.answer for twin in task.twins} - {task.answer}) == 3
            assert all(twin.answer.endswith(":30") and twin.twins == () for twin in task.twins)
    assert make_tasks("time.read_half", seed=1, count=1, twins=0)[0].twins == ()


def test_asking_says_which_tasks_are_not_wanted():
    first = make_tasks("time.read_hour", seed=3, count=8)
    # The same clock under another prompt is another question, so all prompts are told.
    asked = {f"{task.prompt} {in_digits(hour * 60)}" for task in first for hour in range(11)}
    again = make_tasks("time.read_hour", seed=3, count=1, asked=asked)
    assert again[0].answer == "11:00"


def test_numbers_that_cannot_be_typed_are_refused(monkeypatch):
    without = TaskGenerator(
        items=GENERATORS["time.read_hour"].items, task=GENERATORS["time.read_hour"].task
    )
    monkeypatch.setitem(GENERATORS, "time.read_hour", without)
    with pytest.raises(LessonProblem, match=r"numbers cannot be typed for time.read_hour"):
        make_typed("time.read_hour", "4:00")


@pytest.mark.parametrize(
    ("text", "says"),
    [("noonish", "'noonish' is no time"), ("4:37", "'4:37' is no time that is asked here")],
)
def test_a_typed_time_is_one_that_the_skill_asks_about(text, says):
    with pytest.raises(LessonProblem, match=says):
        make_typed("time.read_five_minutes", text)
    task = make_typed("time.read_five_minutes", "16:35", vocabulary="uk")
    assert (task.answer, task.spoken) == ("4:35", "twenty-five to five")
