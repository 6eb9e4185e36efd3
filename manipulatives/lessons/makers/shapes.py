"""Tasks of the shapes strand: names, sides, vertices, right angles, folds and shares."""

from __future__ import annotations

from manipulatives.lessons.makers import (
    shapes_angles,
    shapes_counting,
    shapes_drawing,
    shapes_folding,
    shapes_naming,
    shapes_round,
    shapes_sharing,
    shapes_squares,
)
from manipulatives.lessons.makers.maker import Maker

MAKERS = {
    "shapes.name_shapes": Maker(
        items=shapes_naming.to_name,
        task=shapes_naming.name_shape,
        kind=shapes_naming.kind_of_name,
    ),
    "shapes.count_sides": Maker(
        items=shapes_counting.to_count,
        task=shapes_counting.count_sides,
        kind=shapes_counting.kind_of_count,
        ease=shapes_counting.ease_of_count,
    ),
    "shapes.count_vertices": Maker(
        items=shapes_counting.to_count,
        task=shapes_counting.count_vertices,
        kind=shapes_counting.kind_of_count,
        ease=shapes_counting.ease_of_count,
    ),
    "shapes.draw_shape": Maker(
        items=shapes_drawing.to_draw,
        task=shapes_drawing.draw,
        kind=shapes_drawing.kind_of_drawing,
        ease=shapes_drawing.ease_of_drawing,
    ),
    "shapes.right_angles": Maker(
        items=shapes_angles.with_right_angles,
        task=shapes_angles.count_right_angles,
        kind=shapes_angles.kind_of_angles,
        ease=shapes_angles.ease_of_angles,
    ),
    "shapes.mirror_lines": Maker(
        items=shapes_folding.to_fold,
        task=shapes_folding.fold,
        kind=shapes_folding.kind_of_fold,
        ease=shapes_folding.lines_of,
    ),
    "shapes.equal_shares": Maker(
        items=shapes_sharing.to_share,
        task=shapes_sharing.share,
        kind=shapes_sharing.kind_of_share,
        ease=shapes_sharing.ease_of_share,
    ),
    "shapes.curved": Maker(
        items=shapes_round.curved,
        task=shapes_round.about_curve,
        kind=shapes_round.kind_of_curve,
    ),
    "shapes.rows_columns": Maker(
        items=shapes_squares.in_rows,
        task=shapes_squares.count_squares,
        ease=shapes_squares.ease_of_rows,
    ),
}
