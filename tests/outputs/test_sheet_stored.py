"""What was printed is stored in the PDF, and read back without drawing anything again."""

from __future__ import annotations

import json
import random
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from manipulatives.data import kit
from manipulatives.drawings.shapes import Drawing
from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.lessons.problem import LessonProblem
from manipulatives.lessons.settings import ClassSettings, settled
from manipulatives.outputs.sheet import code as codes
from manipulatives.outputs.sheet import cutouts_of, printed_of, sheet_of, sheet_of_file
from manipulatives.outputs.sheet import printed_sheet as stored
from manipulatives.outputs.sheet.pdf.document import pdf_of
from manipulatives.outputs.sheet.rounds import tasks_by_round
from support.paper import some_lessons
from support.pdf import pages_of
from support.seeds import THOROUGH

MONDAY = Lesson(
    "Monday at Penny Cross",
    seed=90213,
    rounds=(
        Round("time.later", seed=4, tasks=3, options={"by": [5, 20, 35]}),
        Round("addition.two_digit", seed=2, tasks=2),
    ),
)


@pytest.fixture(scope="module")
def printed() -> bytes:
    return sheet_of(MONDAY, ClassSettings())


@pytest.fixture(scope="module")
def file(printed, tmp_path_factory):
    path = tmp_path_factory.mktemp("sheet") / "monday.sheet.pdf"
    path.write_bytes(printed)
    return path


@pytest.mark.parametrize("part", range(60 if THOROUGH else 6))
def test_what_is_read_back_is_what_was_asked(part, tmp_path):
    [lesson] = some_lessons(1, seed=900 + part)
    settings = ClassSettings()
    version, kind = "ABC"[part % 3], stored.KINDS[part // 2 % 3]
    content = sheet_of(lesson, settings, version=version, kind=kind)
    (tmp_path / "day.pdf").write_bytes(content)
    sheet = printed_of(tmp_path / "day.pdf")
    rounds = tasks_by_round(settled(lesson, settings), settings, version)
    asked = [
        (place, task.skill, " ".join((task.prompt, *task.parts)), task.answer)
        for place, each in enumerate(rounds, start=1)
        for task in each.tasks
    ]
    found = [(one.round, one.skill, one.prompt, one.answer) for one in sheet.tasks]
    assert found == asked
    assert [one.number for one in sheet.tasks] == list(range(1, len(asked) + 1))
    assert (sheet.title, sheet.kind, sheet.kit) == (lesson.title, kind, kit.kit_version())
    for one in sheet.tasks:
        assert set(one.options) == set(SKILLS[one.skill].options) - {"order"}
    foot = [line.text for line in pages_of(content)[-1].lines][-2]
    assert foot.split()[1] == sheet.code


def test_of_a_list_of_options_each_task_has_its_own(file):
    later = [one for one in printed_of(file).tasks if one.skill == "time.later"]
    assert [one.options["by"] for one in later] == [5, 20, 35]
    # The prompt says it too.
    assert [int(re.search(r"(\d+) minutes", one.prompt)[1]) for one in later] == [5, 20, 35]


def test_the_answers_that_are_stored_are_those_that_the_key_prints(file):
    key = pages_of(sheet_of(MONDAY, ClassSettings(), key=True))
    said = [line.text for page in key for line in page.lines]
    clocks = [one.answer for one in printed_of(file).tasks if one.skill == "time.later"]
    assert clocks
    assert [text for text in said if re.fullmatch(r"\d+:\d\d", text)] == clocks


def test_reading_draws_nothing_again(file, monkeypatch):
    before = printed_of(file)

    def refuse(*_, **__):
        raise AssertionError

    monkeypatch.setattr("manipulatives.lessons.tasks.make.make_tasks", refuse)
    monkeypatch.setattr("manipulatives.outputs.sheet.rounds.tasks_for", refuse)
    monkeypatch.setattr(kit, "kit_version", lambda: "9.0.0")
    assert printed_of(file) == before


# Codes of other versions of the kit


@pytest.fixture
def monday(tmp_path):
    path = tmp_path / "monday.toml"
    write_lesson(MONDAY, path)
    return path


def test_the_code_says_which_version_of_the_kit_made_the_sheet(file):
    assert printed_of(file).code.endswith(f"-{kit.kit_version()}")


def test_a_code_of_another_version_of_the_kit_is_refused_by_its_name(monday, file):
    code = printed_of(file).code.replace(kit.kit_version(), "7.8.9")
    with pytest.raises(LessonProblem) as problem:
        sheet_of_file(monday, code=code.lower())
    assert str(problem.value) == (
        f"{monday}, code: version 7.8.9 of the kit made sheet {code}, and this is version "
        f"{kit.kit_version()}, which may draw other numbers; "
        "use version 7.8.9, or the key that was printed with the sheet."
    )


def test_a_code_without_a_version_is_of_the_first_version(monday, file, monkeypatch):
    code = printed_of(file).code
    without = code.rsplit("-", 1)[0]
    monkeypatch.setattr(codes, "kit_version", lambda: "0.1.0")
    assert sheet_of_file(monday, code=without) == sheet_of_file(monday, code=f"{without}-0.1.0")
    monkeypatch.setattr(codes, "kit_version", lambda: "0.2.0")
    with pytest.raises(LessonProblem, match=r"version 0\.1\.0 of the kit made sheet"):
        sheet_of_file(monday, code=without)


@pytest.mark.parametrize("version", ["0.2.0", "1.0.0rc1", "0.2.0.dev3", "1.0+local.1"])
def test_any_version_of_the_kit_can_be_read_from_a_code(version, monkeypatch):
    monkeypatch.setattr(codes, "kit_version", lambda: version)
    code = codes.code_of(settled(MONDAY, ClassSettings()), "B")
    assert codes.read_code(str(code)) == code
    assert codes.read_code(f" {str(code).lower()} ") == code


# What is damaged


def with_attachment(content: bytes) -> bytes:
    attachments = {stored.ATTACHMENT: content}
    return pdf_of([Drawing(50, 50)], title="Any", language="en-GB", attachments=attachments)


def problem_of(content: bytes, folder) -> str:
    path = folder / "any.pdf"
    path.write_bytes(content)
    with pytest.raises(LessonProblem) as problem:
        printed_of(path)
    said = str(problem.value)
    assert said.startswith(str(path))
    return said.removeprefix(str(path))


DAMAGED = {
    "no JSON": (b"{", "what it says was printed is damaged"),
    "no text": (b"\xff\xfe{}", "what it says was printed is damaged"),
    "nested too deep": (b"[" * 100_000, "what it says was printed is damaged"),
    "a number without end": (b"1" * 5000, "what it says was printed is damaged"),
    "a list": (b"[1]", "is no table of fields"),
    "another format": (b'{"format": "x"}', "format: 'x' is not allowed"),
    "too long": (b" " * 2_000_001, "is too long"),
    "no checksum": (
        b'{"format": "manipulatives printed sheet", "version": 1, "tasks": []}',
        "what it says was printed is damaged",
    ),
}


@pytest.mark.parametrize("case", DAMAGED)
def test_a_damaged_attachment_is_named_in_a_sentence(case, tmp_path):
    content, said = DAMAGED[case]
    assert said in problem_of(with_attachment(content), tmp_path)


def changed(file, **fields) -> bytes:
    data = json.loads(printed_of(file).to_json())
    del data["sha256"]
    return stored.with_checksum({**data, **fields})


WRONG = {
    "a later version": ({"version": 2}, "version: 2 is not allowed"),
    "no version": ({"version": None}, "version: None is not allowed"),
    "a code": ({"code": "<b>"}, "code: '<b>' is no code"),
    "a kind": ({"kind": "poster"}, "kind: 'poster' is not allowed"),
    "a title": ({"title": "two\nlines"}, "title: "),
    "tasks": ({"tasks": 7}, "tasks: 7 is no list of tasks"),
    "a task": ({"tasks": [7]}, "task 1: 7 is no table of fields"),
    "a task's fields": ({"tasks": [{"number": 1}]}, "task 1: the field 'round' is missing"),
    "a field more": ({"children": ["Ada"]}, "there is no field 'children'"),
}


@pytest.mark.parametrize("case", WRONG)
def test_a_field_that_cannot_be_is_named_with_its_place(case, file, tmp_path):
    fields, said = WRONG[case]
    assert said in problem_of(with_attachment(changed(file, **fields)), tmp_path)


@pytest.mark.parametrize(
    ("field", "value"),
    [("number", 0), ("round", "1"), ("skill", ""), ("options", []), ("prompt", "x" * 1001)],
)
def test_a_task_is_read_with_the_same_care(field, value, file, tmp_path):
    [first, *_] = json.loads(printed_of(file).to_json())["tasks"]
    content = with_attachment(changed(file, tasks=[{**first, field: value}]))
    assert f"task 1, {field}: " in problem_of(content, tmp_path)


def test_a_pdf_that_says_nothing_of_it_is_refused(tmp_path):
    content = cutouts_of(MONDAY, ClassSettings())
    assert "does not say what was printed" in problem_of(content, tmp_path)


@pytest.mark.parametrize("content", [b"", b"hello", b"%PDF-1.4", b"%PDF-1.4\n%%EOF"])
def test_what_is_no_pdf_is_refused(content, tmp_path):
    assert "this is no PDF that can be read" in problem_of(content, tmp_path)


@pytest.mark.parametrize("name", ["nowhere.pdf", ".", "a\0b.pdf"])
def test_a_file_that_is_not_there_is_refused(name, tmp_path):
    with pytest.raises(LessonProblem, match="it cannot be read"):
        printed_of(tmp_path / name)


def test_an_answer_that_was_changed_on_the_way_is_noticed(file, tmp_path):
    whole = printed_of(file).to_json()
    assert b'"answer": "' in whole
    at = whole.index(b'"answer": "') + 11
    changed_digit = whole[:at] + bytes([whole[at] ^ 1]) + whole[at + 1 :]
    assert "is damaged" in problem_of(with_attachment(changed_digit), tmp_path)


@given(st.integers(0, 10**9))
def test_a_sheet_with_damaged_bytes_is_read_as_it_was_or_refused(printed, file, seed):
    chance = random.Random(seed)  # noqa: S311 - which bytes are damaged is no secret
    damaged = bytearray(printed)
    for _ in range(chance.randint(1, 30)):
        damaged[chance.randrange(len(damaged))] = chance.randrange(256)
    if chance.random() < 0.3:
        del damaged[chance.randrange(len(damaged)) :]
    path = file.with_name("damaged.pdf")
    path.write_bytes(damaged)
    try:
        read = printed_of(path)
    except LessonProblem as problem:
        assert str(path) in str(problem)  # noqa: PT017 - either may happen
    else:
        assert read == printed_of(file)
