"""Tasks of the shapes strand: names, sides, vertices, right angles, folds and shares."""

from __future__ import annotations

from manipulatives.lessons.strands.shapes.tasks import (
    angles,
    counting,
    curved,
    drawing,
    folding,
    naming,
    sharing,
    squares,
)
from manipulatives.lessons.tasks.generator import TaskGenerator

GENERATORS = {
    "shapes.name_shapes": TaskGenerator(
        items=naming.to_name,
        task=naming.name_shape,
        kind=naming.kind_of_name,
    ),
    "shapes.count_sides": TaskGenerator(
        items=counting.to_count,
        task=counting.count_sides,
        kind=counting.kind_of_count,
        difficulty=counting.difficulty_of_count,
    ),
    "shapes.count_vertices": TaskGenerator(
        items=counting.to_count,
        task=counting.count_vertices,
        kind=counting.kind_of_count,
        difficulty=counting.difficulty_of_count,
    ),
    "shapes.draw_shape": TaskGenerator(
        items=drawing.to_draw,
        task=drawing.draw,
        kind=drawing.kind_of_drawing,
        difficulty=drawing.difficulty_of_drawing,
    ),
    "shapes.right_angles": TaskGenerator(
        items=angles.with_right_angles,
        task=angles.count_right_angles,
        kind=angles.kind_of_angles,
        difficulty=angles.difficulty_of_angles,
    ),
    "shapes.mirror_lines": TaskGenerator(
        items=folding.to_fold,
        task=folding.fold,
        kind=folding.kind_of_fold,
        difficulty=folding.lines_of,
    ),
    "shapes.equal_shares": TaskGenerator(
        items=sharing.to_share,
        task=sharing.share,
        kind=sharing.kind_of_share,
        difficulty=sharing.difficulty_of_share,
    ),
    "shapes.curved": TaskGenerator(
        items=curved.curved,
        task=curved.about_curve,
        kind=curved.kind_of_curve,
    ),
    "shapes.rows_columns": TaskGenerator(
        items=squares.in_rows,
        task=squares.count_squares,
        difficulty=squares.difficulty_of_rows,
    ),
}
