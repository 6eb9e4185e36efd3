"""Tasks of the shapes strand: names, sides, vertices, right angles, folds and shares."""

from __future__ import annotations

from manipulatives.lessons.strands.shapes.tasks import (
    angles as shapes_angles,
)
from manipulatives.lessons.strands.shapes.tasks import (
    counting as shapes_counting,
)
from manipulatives.lessons.strands.shapes.tasks import (
    curved as shapes_round,
)
from manipulatives.lessons.strands.shapes.tasks import (
    drawing as shapes_drawing,
)
from manipulatives.lessons.strands.shapes.tasks import (
    folding as shapes_folding,
)
from manipulatives.lessons.strands.shapes.tasks import (
    naming as shapes_naming,
)
from manipulatives.lessons.strands.shapes.tasks import (
    sharing as shapes_sharing,
)
from manipulatives.lessons.strands.shapes.tasks import (
    squares as shapes_squares,
)
from manipulatives.lessons.tasks.generator import TaskGenerator

GENERATORS = {
    "shapes.name_shapes": TaskGenerator(
        items=shapes_naming.to_name,
        task=shapes_naming.name_shape,
        kind=shapes_naming.kind_of_name,
    ),
    "shapes.count_sides": TaskGenerator(
        items=shapes_counting.to_count,
        task=shapes_counting.count_sides,
        kind=shapes_counting.kind_of_count,
        ease=shapes_counting.ease_of_count,
    ),
    "shapes.count_vertices": TaskGenerator(
        items=shapes_counting.to_count,
        task=shapes_counting.count_vertices,
        kind=shapes_counting.kind_of_count,
        ease=shapes_counting.ease_of_count,
    ),
    "shapes.draw_shape": TaskGenerator(
        items=shapes_drawing.to_draw,
        task=shapes_drawing.draw,
        kind=shapes_drawing.kind_of_drawing,
        ease=shapes_drawing.ease_of_drawing,
    ),
    "shapes.right_angles": TaskGenerator(
        items=shapes_angles.with_right_angles,
        task=shapes_angles.count_right_angles,
        kind=shapes_angles.kind_of_angles,
        ease=shapes_angles.ease_of_angles,
    ),
    "shapes.mirror_lines": TaskGenerator(
        items=shapes_folding.to_fold,
        task=shapes_folding.fold,
        kind=shapes_folding.kind_of_fold,
        ease=shapes_folding.lines_of,
    ),
    "shapes.equal_shares": TaskGenerator(
        items=shapes_sharing.to_share,
        task=shapes_sharing.share,
        kind=shapes_sharing.kind_of_share,
        ease=shapes_sharing.ease_of_share,
    ),
    "shapes.curved": TaskGenerator(
        items=shapes_round.curved,
        task=shapes_round.about_curve,
        kind=shapes_round.kind_of_curve,
    ),
    "shapes.rows_columns": TaskGenerator(
        items=shapes_squares.in_rows,
        task=shapes_squares.count_squares,
        ease=shapes_squares.ease_of_rows,
    ),
}
