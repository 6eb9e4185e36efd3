"""What is printed, read from drawings: where each shape is, and what stands in what."""

from __future__ import annotations

import math
import random

from manipulatives.drawings.shapes import Arc, Box, Circle, Line, Polygon, Text
from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.lesson import CURRENCIES, Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.tasks.make import check_count
from manipulatives.outputs.sheet.pdf.letters import text_width

SKILL_IDS = tuple(SKILLS)


def box_of(shape):
    """Left, top, right and bottom in millimetres, with the outline."""
    if isinstance(shape, Text):
        width = text_width(shape.text, shape.size)
        left = shape.at[0] - {"start": 0, "middle": 0.5, "end": 1}[shape.anchor] * width
        below = 0.0 if shape.text.isdigit() else 0.24 * shape.size
        return left, shape.at[1] - 0.73 * shape.size, left + width, shape.at[1] + below
    points = _points(shape)
    xs, ys = zip(*points, strict=True)
    edge = shape.paint.width / 2 if shape.paint.stroke else 0.0
    return min(xs) - edge, min(ys) - edge, max(xs) + edge, max(ys) + edge


def _points(shape):
    match shape:
        case Line():
            return shape.start, shape.end
        case Polygon():
            return shape.points
        case Circle():
            (x, y), r = shape.centre, shape.radius
            return (x - r, y - r), (x + r, y + r)
        case Box():
            x, y = shape.corner
            return (x, y), (x + shape.width, y + shape.height)
        case Arc():
            x, y = shape.centre
            turns = [math.radians(shape.start + shape.sweep * step / 24) for step in range(25)]
            return [(x + shape.radius * math.sin(t), y - shape.radius * math.cos(t)) for t in turns]


def crossing(one, other, by=0.0):
    """Whether two boxes overlap by more than a length in both directions."""
    across = min(one[2], other[2]) - max(one[0], other[0])
    down = min(one[3], other[3]) - max(one[1], other[1])
    return across > by and down > by


def inside(inner, outer, by=0.01):
    """Whether a box lies in another."""
    return (
        outer[0] - by <= inner[0]
        and outer[1] - by <= inner[1]
        and inner[2] <= outer[2] + by
        and inner[3] <= outer[3] + by
    )


def with_role(drawing, *roles):
    """Its shapes of these roles."""
    return [shape for shape in drawing.shapes if shape.role in roles]


def texts(drawing, *roles):
    """Its text of these roles, or all of it, from left to right in each line."""
    found = [shape for shape in drawing.shapes if isinstance(shape, Text)]
    found = [shape for shape in found if not roles or shape.role in roles]
    return sorted(found, key=lambda text: (round(text.at[1], 1), box_of(text)[0]))


def text_in(drawing, box):
    """What stands in a box, its lines joined."""
    return " ".join(text.text for text in texts(drawing) if inside(box_of(text), box_of(box)))


def some_round(chance: random.Random, currency="usd", most=4):
    """A round of any skill with any options."""
    while True:
        skill = SKILLS[chance.choice(SKILL_IDS)]
        options = {name: chance.choice(values) for name, values in skill.options.items()}
        tasks = chance.randint(1, most)
        try:
            check_count(skill.id, tasks, options, currency=currency)
            return Round(skill.id, seed=chance.randrange(10**9), tasks=tasks, options=options)
        except LessonProblem:
            continue  # there are not so many different tasks


def some_lessons(count, seed=1):
    """Lessons of any rounds."""
    chance = random.Random(seed)  # noqa: S311 - which lessons are tried is no secret
    for number in range(count):
        money = chance.choice(CURRENCIES)
        rounds = tuple(some_round(chance, money) for _ in range(chance.randint(1, 4)))
        words = chance.choice(("us", "uk"))
        yield Lesson(
            f"Day {number} at Penny Cross", seed=chance.randrange(10**9), rounds=rounds,
            currency=money, vocabulary=words,
        )  # fmt: skip
