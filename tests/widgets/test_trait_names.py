"""What a manipulative takes: its own traits, and none of the machinery that carries them."""

from __future__ import annotations

import pytest

from manipulatives import Clock
from manipulatives.widgets.round.children import MANIPULATIVES


@pytest.mark.parametrize("kind", MANIPULATIVES.values(), ids=lambda kind: kind.__name__)
def test_no_name_of_the_machinery_is_taken(kind):
    own = set(kind.class_own_traits()) - {"keys", "comm"}
    machinery = set(kind.class_traits()) - {name for name in own if name[0] != "_"} - {"layout"}
    assert {"comm", "keys", "_model_module"} <= machinery
    for name in machinery:
        with pytest.raises(TypeError, match=rf"^{kind.__name__} has no '{name}'\. It takes \w"):
            kind(**{name: 1})


def test_a_long_name_is_cut():
    with pytest.raises(TypeError) as problem:
        Clock(**{"x" * 5000: 1})
    assert len(str(problem.value)) < 300
