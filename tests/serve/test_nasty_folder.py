"""A folder full of files that break readers, as a browser sees its shelf."""

from __future__ import annotations

import os

from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from support.nasty import LESSONS, NAMES, NOTEBOOKS
from support.server import serving

GOOD = Lesson("The good one", seed=7, rounds=(Round("time.read_hour", seed=8, tasks=2),))


def test_every_file_is_a_card_and_the_good_lesson_can_be_taught_from(tmp_path):
    write_lesson(GOOD, tmp_path / "good.toml")
    texts = [(text, ".toml") for text in LESSONS.values()]
    texts += [(text, ".ipynb") for text in NOTEBOOKS.values()]
    for number, (text, ending) in enumerate(texts):
        content = text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass")
        (tmp_path / f"file {number}{ending}").write_bytes(content)
    for name in NAMES.values():
        (tmp_path / os.fsdecode(name)).write_bytes(b"")
    with serving(tmp_path) as server:
        teacher = server.visitor()
        shelf = teacher.get("/")
        assert shelf.status == 200
        assert shelf.text.count('<li class="book') == 1 + len(texts) + len(NAMES)
        assert "The good one" in shelf.text
        assert shelf.text.count("rename the file.") == len(NAMES)
        assert "Traceback" not in shelf.text
        page = teacher.post("/make/page/good")
        assert page.status in (200, 303)
        for number in range(len(texts)):
            answer = teacher.get(f"/board/file%20{number}")
            assert answer.status != 500, answer.text
            answer = teacher.post(f"/make/page/file%20{number}")
            assert answer.status != 500, answer.text
