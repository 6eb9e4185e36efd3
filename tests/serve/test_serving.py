"""A shelf in a process of its own, asked over HTTP as a browser or an attacker would."""

from __future__ import annotations

import json
import os
import re
import resource
import shutil
import signal
import socket
import struct
import time
from urllib.parse import quote
from uuid import uuid4

import nbformat
import pytest
import websocket
from jupyter_client.restarter import KernelRestarter
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson, Round
from manipulatives.serve.kernels import CLOSED_PAGE_TIMEOUT_S
from support.server import listening, serving, until

MARKET = Lesson(
    "Market day",
    seed=3,
    rounds=(
        Round("time.read_hour", seed=8, tasks=2, seconds=60),
        Round("time.read_hour", seed=8, tasks=2, seconds=60),
    ),
)
POLL_S = 0.5
KERNEL = re.compile(r'"kernelId": "([0-9a-f-]{36})"')


def write_program(path, *sources):
    nbformat.write(
        new_notebook(cells=[new_markdown_cell("# Tides"), *map(new_code_cell, sources)]), path
    )


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    folder = tmp_path_factory.mktemp("Penny Cross")
    write_lesson(MARKET, folder / "market.toml")
    (folder / "guide").mkdir()
    # A name that every part of an address has to spell out.
    shutil.copy(folder / "market.toml", folder / "guide" / "50 % & more?.toml")
    write_program(folder / "tides.ipynb", "print('high', 'tide')", "1 / 0", "print('low tide')")
    (folder / "torn.toml").write_text("title = \n")
    (folder / "secret.txt").write_text("the key is under the mat")
    (folder / "notes.html").write_text("<p>my notes</p>")
    return folder


@pytest.fixture(scope="module")
def server(folder):
    with serving(folder) as server:
        yield server


@pytest.fixture
def teacher(server):
    return server.visitor()


def run_board(teacher, name):
    """The board of a notebook with code of others, which the teacher agrees to."""
    stamp = re.search(r'name="stamp" value="([0-9a-f]+)"', teacher.get(f"/board/{name}").text)[1]
    teacher.post(f"/run/{name}", stamp=stamp, then="board")
    return teacher.get(f"/board/{name}").text


def files_in(folder):
    return {
        path.relative_to(folder): path.read_bytes() for path in folder.rglob("*") if path.is_file()
    }


def test_the_shelf_shows_every_lesson_with_what_can_be_made_of_it(teacher):
    answer = teacher.get("/")
    assert answer.status == 200
    for words in ("Market day", "2 min · 2 rounds · time", "Tides", "guide"):
        assert words in answer.text
    assert "torn.toml, line 1: the file is no TOML" in answer.text
    assert "It holds code of its own, in cells 2, 3 and 4." in answer.text
    assert "Round 2 asks the same as round 1." in answer.text
    for action in ("board/market", "make/sheet/market", "make/key/market", "notebook/market"):
        assert f"/{action}" in answer.text
    assert "make/sheet/tides" not in answer.text
    assert "board/torn" not in answer.text


def test_the_key_leaves_the_address_once_it_was_used(server):
    path = server.address.removeprefix(f"http://{server.host}")
    answer = server.visitor(with_key=False).get(path)
    assert answer.status == 303
    assert answer.headers["Location"] == "/"


def test_a_page_that_was_made_is_shown_but_may_not_act_as_the_shelf(teacher, folder):
    answer = teacher.post("/make/page/market")
    assert (answer.status, answer.headers["Location"]) == (303, "/made/page/market")
    page = teacher.get("/made/page/market")
    assert page.body == (folder / "market.html").read_bytes()
    assert page.headers["Content-Type"] == "text/html; charset=UTF-8"
    assert "sandbox" in page.headers["Content-Security-Policy"]
    assert "allow-same-origin" not in page.headers["Content-Security-Policy"]


@pytest.mark.parametrize("form", ["sheet", "key"])
def test_paper_is_made_and_shown(teacher, folder, form):
    assert teacher.post(f"/make/{form}/market").status == 303
    answer = teacher.get(f"/made/{form}/market")
    assert answer.body[:5] == b"%PDF-"
    assert answer.body == (folder / f"market.{form}.pdf").read_bytes()


def test_a_name_with_signs_in_it_works_everywhere(teacher, folder):
    name = quote("guide/50 % & more?")
    assert name in teacher.get("/").text.replace("&amp;", "&")
    assert teacher.post(f"/make/key/{name}").status == 303
    assert teacher.get(f"/made/key/{name}").body[:5] == b"%PDF-"
    assert (folder / "guide" / "50 % & more?.key.pdf").is_file()
    assert "Market day" in teacher.get(f"/board/{name}").text


FORM = {"Content_Type": "application/x-www-form-urlencoded"}
OTHER_PATHS = [
    # What the folder holds beside lessons, and what lies outside.
    *("/secret.txt", "/market.toml", "/tides.ipynb", "/notes.html", "/market.html", "/guide/"),
    *("/files/secret.txt", "/voila/files/secret.txt", "/voila/files/notes.html", "/static/x"),
    *("/made/page/notes", "/made/sheet/tides", "/made/page/secret", "/made/page/torn"),
    *("/made/notebook/market", "/made/page/market.html", "/made/page/../market"),
    *("/board/", "/board/nothing", "/board/market.toml", "/board/market/", "/board//market"),
    *("/board/./market", "/board/guide/../market", "/board/..%2fmarket", "/board/MARKET"),
    *("/maker/", "/maker/nothing", "/maker/secret", "/maker/market.toml", "/maker/../market"),
    *("/board/market%00", "/board/%2e%2e/%2e%2e/etc/passwd", "/board/../../etc/passwd"),
    *("/made/page/..%2f..%2fetc%2fpasswd", "/made/page//etc/passwd", "/made/page/%2fetc%2fpasswd"),
    # What a notebook server or Voila would answer.
    *("/api", "/api/kernels", "/api/contents", "/api/sessions", "/api/terminals", "/tree", "/lab"),
    *("/voila", "/voila/tree", "/voila/render/tides.ipynb", "/voila/api/contents", "/login"),
    *("/voila/templates/lab/static/index.css", "/voila/static/../../../etc/passwd"),
    *("/voila/static/%2e%2e/%2e%2e/%2e%2e/etc/passwd", "/voila/labextensions/../../etc/passwd"),
    *("/voila/query/12345678-1234-1234-1234-123456789abc", "/metrics", "/.env", "//market"),
    "/api/kernels/12345678-1234-1234-1234-123456789abc",
    "/voila/api/shutdown/not-a-kernel",
]
OTHER_METHODS = [
    *(("GET", path) for path in ("/make/page/market", "/run/tides", "/notebook/market")),
    *(("GET", path) for path in ("/renumber/market", "/make/sheet/market", "/make/key/market")),
    *(
        (method, "/")
        for method in ("POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "CONNECT")
    ),
    *((method, "/board/market") for method in ("POST", "PUT", "DELETE", "PATCH", "OPTIONS")),
    *((method, "/maker") for method in ("POST", "PUT", "DELETE", "PATCH")),
    *((method, "/maker/market") for method in ("POST", "PUT", "DELETE")),
    *((method, "/made/page/market") for method in ("POST", "PUT", "DELETE", "PATCH")),
    *((method, "/make/page/market") for method in ("PUT", "DELETE", "PATCH", "HEAD")),
    *((method, "/notebook/market") for method in ("PUT", "DELETE", "HEAD")),
    ("POST", "/make/board/market"),
    ("POST", "/make/page/secret"),
    ("POST", "/make/page/../secret"),
    ("POST", "/make/page/nothing"),
    ("POST", "/run/secret"),
    ("POST", "/notebook/secret.txt"),
    ("POST", "/notebook/../market"),
    ("POST", "/renumber/torn"),
    ("POST", "/api/kernels"),
    ("POST", "/api/contents"),
    ("DELETE", "/api/kernels/12345678-1234-1234-1234-123456789abc"),
    ("FETCH", "/"),
]


def test_the_list_of_what_is_refused_is_long_enough():
    assert len(OTHER_PATHS) >= 50
    assert len(OTHER_METHODS) >= 30


@pytest.mark.parametrize("path", OTHER_PATHS)
def test_nothing_is_shown_but_what_is_on_the_shelf(teacher, folder, path):
    before = files_in(folder)
    answer = teacher.get(path)
    assert answer.status in (403, 404)
    assert "under the mat" not in answer.text
    assert "root:" not in answer.text
    assert str(folder) not in answer.text
    assert files_in(folder) == before


@pytest.mark.parametrize(("method", "path"), OTHER_METHODS)
def test_nothing_is_done_but_what_the_shelf_offers(teacher, server, folder, method, path):
    before, kernels = files_in(folder), set(server.kernels())
    token = re.search(r'name="_xsrf" value="([^"]+)"', teacher.get("/").text)[1]
    answer = teacher.ask(method, path, f"_xsrf={quote(token)}", **FORM)
    assert 400 <= answer.status < 500 or answer.status == 501
    assert "Traceback" not in answer.text
    assert files_in(folder) == before
    # A warm kernel may come of itself meanwhile, but only one at a time.
    assert len(set(server.kernels()) - kernels) <= 1


def test_whoever_has_not_got_the_key_sees_nothing(server, folder):
    visitor_without_key = server.visitor(with_key=False)
    before = files_in(folder)
    for path in ("/", "/board/market", "/board/nothing", "/made/page/market", "/?token=guess"):
        answer = visitor_without_key.get(path)
        assert answer.status == 403
        assert "The shelf is locked." in answer.text
        assert "Market" not in answer.text
    for path in ("/make/page/market", "/run/tides", "/notebook/market", "/renumber/market"):
        assert visitor_without_key.ask("POST", path, "x=1").status == 403
    kernel = next(iter(until(server.kernels, 30, "a warm kernel")))
    for path in (f"/kernel/{kernel}", f"/api/kernels/{kernel}", f"/api/kernels/{kernel}/channels"):
        assert visitor_without_key.get(path).status == 403
    assert files_in(folder) == before


@pytest.mark.parametrize(
    "path", ["/make/sheet/market", "/run/tides", "/renumber/market", "/notebook/market"]
)
@pytest.mark.parametrize(
    "token", [None, "", "2|00000000|0123456789abcdef0123456789abcdef|1700000000"]
)
def test_a_press_that_does_not_come_from_the_shelf_does_nothing(teacher, folder, path, token):
    before = files_in(folder)
    body = "round=2" if token is None else f"round=2&_xsrf={quote(token)}"
    answer = teacher.ask("POST", path, body, **FORM)
    assert answer.status == 403
    assert "refused" in answer.text
    assert files_in(folder) == before


def test_a_press_from_another_site_does_nothing_even_with_the_right_word(teacher, folder):
    before = files_in(folder)
    token = re.search(r'name="_xsrf" value="([^"]+)"', teacher.get("/").text)[1]
    body = f"_xsrf={quote(token)}"
    answer = teacher.ask(
        "POST", "/make/sheet/market", body, Origin="http://elsewhere.example", **FORM
    )
    assert answer.status in (403, 404)
    assert files_in(folder) == before


def test_a_page_that_calls_itself_this_machine_by_a_trick_is_refused(teacher):
    assert teacher.get("/", Host="shelf.elsewhere.example").status == 403
    assert teacher.get("/", Host=f"localhost:{teacher.host.partition(':')[2]}").status != 404


def test_the_server_and_its_kernels_listen_on_this_machine_only(server):
    until(server.kernels, 30, "a warm kernel")
    places = listening({server.process.pid, *server.family()})
    assert ("127.0.0.1", int(server.host.partition(":")[2])) in places
    assert {address for address, _ in places} == {"127.0.0.1"}


def test_foreign_code_runs_only_after_the_teacher_allowed_it(teacher, folder):
    mark = folder / "ran"
    write_program(folder / "trick.ipynb", f"open({str(mark)!r}, 'w').close()")
    answer = teacher.get("/board/trick")
    assert "whatever you can" in answer.text
    assert "KERNEL" not in answer.text
    assert "whatever you can" in teacher.post("/make/page/trick").text
    assert not mark.exists()

    stamp = re.search(r'name="stamp" value="([0-9a-f]+)"', answer.text)[1]
    assert "whatever you can" in teacher.post("/run/trick", stamp="0" * 64, then="board").text
    assert not mark.exists()
    assert teacher.post("/run/trick", stamp=stamp, then="board").status == 303
    assert not mark.exists()
    assert teacher.get("/board/trick").status == 200
    assert mark.exists()

    # It is another program now.
    write_program(folder / "trick.ipynb", f"open({str(mark)!r}, 'a').close()")
    assert "whatever you can" in teacher.get("/board/trick").text
    (folder / "trick.ipynb").unlink()


def test_the_page_of_a_program_is_made_once_the_teacher_agreed(teacher, folder):
    write_program(folder / "count.ipynb", "print(6 * 7)")
    stamp = re.search(r'name="stamp" value="([0-9a-f]+)"', teacher.post("/make/page/count").text)[1]
    answer = teacher.post("/run/count", stamp=stamp, then="page")
    assert (answer.status, answer.headers["Location"]) == (303, "/made/page/count")
    assert ">42<" in teacher.get("/made/page/count").text
    for path in folder.glob("count.*"):
        path.unlink()


def test_a_lesson_opens_in_the_maker_and_code_of_others_is_not_run_for_it(teacher, folder):
    write_program(folder / "mill.ipynb", f"open({str(folder / 'ground')!r}, 'w').close()")
    for path in ("/maker", "/maker/market", "/maker/mill"):
        form = teacher.get(path).text
        assert "application/vnd.jupyter.widget-view+json" in form
        assert 'kit-cell-error"' not in form.split("<main")[1].split("</main")[0]
    assert not (folder / "ground").exists()
    assert 'href="/maker/market"' in teacher.get("/").text


def test_a_failing_cell_says_which_and_why_and_the_next_cells_run(teacher):
    board = run_board(teacher, "tides")
    assert "high tide" in board
    assert "Cell 3 of 4 stopped: ZeroDivisionError: division by zero." in board
    assert "low tide" in board
    assert "Cell 3 stopped; the reason stands in its place." in board


def test_a_cell_that_ends_python_is_distinguished_from_those_that_could_not_run(teacher, folder):
    write_program(folder / "tides.ipynb", "print('high')", "import os; os._exit(1)", "print('low')")
    board = run_board(teacher, "tides")
    assert "high" in board
    assert "Cell 3 of 4 ended Python, so the cells after it did not run." in board
    assert "Cell 4 of 4 did not run, because Python has stopped." in board
    assert "Cell 3 ended Python; what came before it works." in board


def test_a_notebook_in_another_language_is_refused_in_one_sentence(teacher, folder):
    notebook = new_notebook(cells=[new_code_cell("x <- 3")])
    notebook.metadata["kernelspec"] = {"name": "ir", "display_name": "R", "language": "R"}
    nbformat.write(notebook, folder / "tides.ipynb")
    board = run_board(teacher, "tides")
    assert "tides.ipynb: it is written in R, and boards run Python only" in board


def test_a_board_is_warm_before_it_is_asked_for_and_fresh_when_the_file_changed(folder):
    alone = folder / "alone"
    alone.mkdir()
    write_lesson(MARKET, alone / "market.toml")
    with serving(alone) as server:
        teacher = server.visitor()
        warm = until(lambda: set(server.kernels()), 30, "a warm kernel")
        # Ready a little later, when its cells have run.
        until(lambda: teacher.get("/").text.count('data-warm="yes"') == 1, 30, "a warm board")
        board = teacher.get("/board/market").text
        assert {KERNEL.search(board)[1]} == warm
        assert "Market day" in board

        again = until(lambda: set(server.kernels()) - warm, 30, "another warm kernel")
        until(lambda: teacher.get("/").text.count('data-warm="yes"') == 1, 30, "a warm board")
        edited = Lesson("Market day, edited", seed=3, rounds=MARKET.rounds)
        write_lesson(edited, alone / "market.toml")
        board = teacher.get("/board/market").text
        assert "Market day, edited" in board
        assert KERNEL.search(board)[1] not in again | warm
        until(lambda: not again & set(server.kernels()), 5, "the stale kernel to go")


def cookie_of(teacher):
    return "; ".join(f"{name}={word}" for name, word in teacher.cookies.items())


def connect(server, teacher, kernel):
    """Speak with a kernel as a board does."""
    return websocket.create_connection(
        f"ws://{server.host}/api/kernels/{kernel}/channels?session_id={uuid4()}",
        cookie=cookie_of(teacher),
        origin=f"http://{server.host}",
    )


def test_the_kernel_of_a_closed_page_is_ended_in_time_and_a_killed_one_stays_ended(server, teacher):
    loading, asking, opened, closed = (
        KERNEL.search(teacher.get("/board/market").text)[1] for _ in range(4)
    )
    killed = killed_kernel(server, teacher)
    # One whose browser has asked, and then has too much to do to ask again.
    assert json.loads(teacher.get(f"/kernel/{asking}").text) == {"alive": True}
    for kernel in (opened, closed):
        connect(server, teacher, kernel).close()
    begun = time.monotonic()
    while closed in server.kernels():
        assert json.loads(teacher.get(f"/kernel/{opened}").text) == {"alive": True}
        assert time.monotonic() - begun < CLOSED_PAGE_TIMEOUT_S
        time.sleep(POLL_S)
    until(
        lambda: json.loads(teacher.get(f"/kernel/{closed}").text) == {"alive": False},
        2,
        "the answer that the kernel has ended",
    )
    assert {opened, asking, loading} <= set(server.kernels())
    # Jupyter would have started a dead kernel again meanwhile.
    assert time.monotonic() - begun > 2 * KernelRestarter.time_to_dead.default_value
    assert json.loads(teacher.get(f"/kernel/{killed}").text) == {"alive": False}
    # A board that connects to it again does not have to wait either.
    assert teacher.get(f"/api/kernels/{killed}/channels").status == 404


def killed_kernel(server, teacher):
    """Return the kernel of a board whose process was killed, which the server says at once."""
    kernel = KERNEL.search(teacher.get("/board/market").text)[1]
    os.kill(server.kernels()[kernel], signal.SIGKILL)
    until(
        lambda: json.loads(teacher.get(f"/kernel/{kernel}").text) == {"alive": False},
        1,
        "word of the lost kernel",
    )
    return kernel


def question_to_kernel():
    """Return a message that asks a kernel what it is."""
    header = {
        "msg_type": "kernel_info_request",
        "session": "",
        "username": "",
        "msg_id": uuid4().hex,
    }
    rest = {"parent_header": {}, "metadata": {}, "content": {}, "channel": "shell"}
    return json.dumps({"header": header, **rest})


def wait_for_message(server, teacher, kernel):
    """Connect once more and wait until the server hands a message of the kernel on."""
    browser = connect(server, teacher, kernel)
    browser.send(question_to_kernel())
    browser.recv()
    browser.close()


def test_browsers_that_leave_while_they_are_written_to_are_no_complaint(server, teacher):
    kernel = KERNEL.search(teacher.get("/board/market").text)[1]
    for _ in range(30):
        browser = connect(server, teacher, kernel)
        for _ in range(200):
            browser.send(question_to_kernel())
        browser.recv()
        # Without a goodbye, as a tab that is closed while its answers are under way.
        at_once = struct.pack("ii", 1, 0)
        browser.sock.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, at_once)
        browser.sock.close()
    wait_for_message(server, teacher, kernel)
    assert not server.said, "".join(server.said)


def test_browsers_that_leave_before_they_are_connected_are_no_complaint(server, teacher):
    kernel = KERNEL.search(teacher.get("/board/market").text)[1]
    for turn in range(80):
        lines = (
            f"GET /api/kernels/{kernel}/channels?session_id={uuid4()} HTTP/1.1",
            f"Host: {server.host}",
            f"Origin: http://{server.host}",
            f"Cookie: {cookie_of(teacher)}",
            "Upgrade: websocket",
            "Connection: Upgrade",
            "Sec-WebSocket-Version: 13",
            "Sec-WebSocket-Key: dGlkZXMgb2YgdGhlIGJheQ==",
        )
        with socket.create_connection(server.host.split(":")) as browser:
            browser.sendall("".join(f"{line}\r\n" for line in (*lines, "")).encode())
            # From at once to some time after the answer.
            time.sleep(turn / 1000)
    wait_for_message(server, teacher, kernel)
    assert not server.said, "".join(server.said)


def test_files_in_the_folder_do_not_stand_in_for_modules(tmp_path):
    write_lesson(MARKET, tmp_path / "market.toml")
    for name in ("manipulatives", "ipykernel_launcher", "anywidget", "traitlets", "numpy"):
        (tmp_path / f"{name}.py").write_text(f"open({str(tmp_path / 'ran')!r}, 'w').close()")
    with serving(tmp_path) as server:
        board = server.visitor().get("/board/market").text
        assert "application/vnd.jupyter.widget-view+json" in board
        assert 'kit-cell-error"' not in board.split("<main")[1].split("</main")[0]
    assert not (tmp_path / "ran").exists()


def test_what_cannot_be_written_is_not_begun(tmp_path):
    write_lesson(MARKET, tmp_path / "market.toml")

    def small_disk():
        # No file can grow beyond this, as on a disk that is nearly full.
        resource.setrlimit(resource.RLIMIT_FSIZE, (30_000, 30_000))

    with serving(tmp_path, preexec_fn=small_disk) as server:
        teacher = server.visitor()
        for form in ("page", "sheet", "key"):
            answer = teacher.post(f"/make/{form}/market")
            assert answer.status == 409
            assert "cannot be written" in answer.text
    assert [path.name for path in tmp_path.iterdir()] == ["market.toml"]
