"""The command `serve`: its start, its errors, and its end."""

from __future__ import annotations

import ctypes
import os
import re
import signal
import socket
import subprocess
import sys
import time
from urllib.parse import urlsplit

import pytest

from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from support.server import SERVE, Visitor, descendants, listening, serving, until

BELL = Lesson("The bell tower", seed=3, rounds=(Round("time.read_hour", seed=8, tasks=2),))


@pytest.fixture
def folder(tmp_path):
    write_lesson(BELL, tmp_path / "bell.toml")
    return tmp_path


def refused(*typed):
    """The error of a command that fails."""
    done = subprocess.run(
        [*SERVE, "--no-browser", *map(str, typed)],
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.returncode == 2
    assert done.stdout == ""
    (sentence,) = done.stderr.splitlines()
    return sentence


def test_a_missing_folder_is_reported_in_one_sentence(tmp_path):
    assert refused(tmp_path / "no").endswith("no: there is no such folder; give one that is there.")


def test_a_file_in_place_of_a_folder_is_reported_in_one_sentence(folder):
    assert "that is no folder; give the folder that it is in." in refused(folder / "bell.toml")


def test_a_port_in_use_is_reported_in_one_sentence_and_no_other_is_tried(folder):
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        sentence = refused(folder, "--port", port)
    assert f"port {port} is taken" in sentence
    assert "--port" in sentence


@pytest.mark.parametrize("port", ["-1", "70000"])
def test_an_impossible_port_is_reported_in_one_sentence(folder, port):
    assert f"there is no port {port}; give another, such as --port" in refused(
        folder, f"--port={port}"
    )


def test_an_empty_folder_opens_and_says_what_to_put_into_it(tmp_path):
    with serving(tmp_path) as server:
        answer = server.visitor().get("/")
        assert answer.status == 200
        assert "There are no lessons here yet." in answer.text
        write_lesson(BELL, tmp_path / "bell.toml")
        assert "The bell tower" in server.visitor().get("/").text


def as_anyone():
    """Drop the capability by which root writes everywhere; for other users this changes nothing."""
    drop_for_good, write_everywhere = 24, 1  # PR_CAPBSET_DROP and CAP_DAC_OVERRIDE of Linux
    ctypes.CDLL(None).prctl(drop_for_good, write_everywhere, 0, 0, 0)


def test_a_folder_that_is_read_only_shows_boards_and_says_what_it_cannot_do(folder):
    folder.chmod(0o555)
    try:
        with serving(folder, preexec_fn=as_anyone) as server:
            teacher = server.visitor()
            assert "This folder is read-only." in teacher.get("/").text
            for action, name in (
                ("make/page", "bell.html"),
                ("make/sheet", "bell.sheet.pdf"),
                ("make/key", "bell.key.pdf"),
                ("notebook", "bell.ipynb"),
            ):
                answer = teacher.post(f"/{action}/bell")
                assert answer.status == 409
                assert f">{name} cannot be written: the folder or the file is" in answer.text
            assert "application/vnd.jupyter.widget-view+json" in teacher.get("/board/bell").text
    finally:
        folder.chmod(0o755)


def test_the_shelf_opens_in_a_browser_with_the_whole_address(folder, tmp_path_factory):
    desk = tmp_path_factory.mktemp("desk")
    note = desk / "opened"
    browser = desk / "browser"
    browser.write_text(
        f'#!/bin/sh\nprintf "%s" "$1" > "{note}.part" && mv "{note}.part" "{note}"\n'
    )
    browser.chmod(0o755)
    environment = {**os.environ, "BROWSER": f"{browser} %s"}
    process = subprocess.Popen(
        [*SERVE, str(folder), "--port", "0"], stdout=subprocess.PIPE, text=True, env=environment
    )
    try:
        address = re.search(r"http://\S+", process.stdout.readline())[0]
        until(note.exists, 20, "the browser to be opened")
        assert note.read_text() == address
        teacher = Visitor(urlsplit(address).netloc)
        assert teacher.get(f"/?{urlsplit(address).query}").status == 303
        assert "The bell tower" in teacher.get("/").text
    finally:
        process.send_signal(signal.SIGINT)
        process.wait(20)


@pytest.mark.parametrize("how", [signal.SIGINT, signal.SIGTERM, signal.SIGKILL])
def test_everything_that_was_begun_ends_with_the_shelf(folder, how):
    with serving(folder) as server:
        teacher = server.visitor()
        until(server.kernels, 30, "a warm kernel")
        answer = teacher.post("/notebook/bell")
        lab = re.search(
            r'url=(http://127\.0\.0\.1:\d+/lab/tree/bell\.ipynb\?token=[\w-]+)"', answer.text
        )
        assert lab, answer.text
        assert visited(lab[1]).status == 200
        family = server.family()
        assert any("serve.lab" in line for line in family.values())
        status = server.stop(how)
        assert status == (-signal.SIGKILL if how == signal.SIGKILL else 0)
        # A process whose parent has ended gets another parent, but its id stays.
        alive = lambda: set(family) & set(descendants(1)) & running(family)  # noqa: E731
        until(lambda: not alive(), 15, "the children to end")


def test_ctrl_c_pressed_three_times_ends_all_that_was_begun_as_well(folder):
    with serving(folder) as server:
        until(server.kernels, 30, "a warm kernel")
        family = server.family()
        for _ in range(3):
            server.process.send_signal(signal.SIGINT)
            time.sleep(0.01)
        assert server.process.wait(20) == 0
        until(lambda: not running(family), 15, "the children to end")


def visited(address):
    """The answer to a request without the key."""
    host, path = re.fullmatch(r"http://([^/]+)(/.*)", address).groups()
    return Visitor(host).get(path)


def running(family):
    """Those of a family whose numbers still stand for the same commands."""
    found = set()
    for pid, line in family.items():
        try:
            with open(f"/proc/{pid}/cmdline", "rb") as file:  # noqa: PTH123 - a process, not a path
                now = file.read().replace(b"\0", b" ").decode("utf-8", "replace")
        except OSError:
            continue
        if now == line:
            found.add(pid)
    return found


def test_jupyterlab_starts_when_asked_for_on_this_machine_and_behind_a_key(folder):
    with serving(folder) as server:
        teacher = server.visitor()
        assert not any("serve.lab" in line for line in server.family().values())
        answer = teacher.post("/notebook/bell")
        assert "The notebook was written just now." in answer.text
        assert (folder / "bell.ipynb").is_file()
        address = re.search(r"url=(http://[^\"]+)", answer.text)[1]
        bare = address.partition("/lab")[0]
        assert visited(f"{bare}/api/contents").status == 403
        (pid,) = (pid for pid, line in server.family().items() if "serve.lab" in line)
        assert {place for place, _ in listening({pid})} == {"127.0.0.1"}
        # The same one serves the next lesson.
        assert bare in teacher.post("/notebook/bell").text
        assert "made from the notebook" in teacher.get("/").text.lower()


def test_the_command_line_loads_no_server_until_one_is_asked_for():
    code = (
        "import sys, manipulatives.commands.serve; "
        "print(*(name for name in sys.modules if name.split('.')[0] in ('voila', 'tornado')))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == []
