"""How long 10,000 tasks take on one processor, with their steps and foreseeable mistakes.

    python tests/benchmarks/tasks_made.py

Every skill has its share. With three twins a task takes about four times as long.
"""

from __future__ import annotations

import time

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.tasks.make import make_tasks

WANTED = 10_000


def make(twins: int) -> tuple[int, float]:
    """Make the tasks, and return how many and the seconds of processor time they took."""
    rounds = WANTED // sum(skill.tasks for skill in SKILLS.values()) + 1
    begin = time.process_time()
    made = sum(
        len(make_tasks(skill.id, seed=seed, count=skill.tasks, twins=twins))
        for seed in range(rounds)
        for skill in SKILLS.values()
    )
    return made, time.process_time() - begin


def main() -> None:
    """Print the seconds that 10,000 tasks take, without and with twins."""
    for skill in SKILLS.values():  # what is worked out once is no part of it
        make_tasks(skill.id, seed=1, count=skill.tasks)
    for twins in (0, 3):
        made, seconds = make(twins)
        print(f"{twins} twins: {seconds * WANTED / made:.2f} s for 10,000 tasks")


if __name__ == "__main__":
    main()
