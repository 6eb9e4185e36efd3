"""The hosted trial: its install list and its start command in an environment made for it."""

from __future__ import annotations

import os
import re
import shutil
import socket
import subprocess
import venv

import pytest

from manipulatives.serve.lab import LabElsewhere
from support.files import ROOT, files
from support.loops import run
from support.server import Visitor, until

# It installs everything once more, which takes minutes.
pytestmark = pytest.mark.skipif(
    "SLOW_TESTS" not in os.environ, reason="set SLOW_TESTS=1 to try the hosted trial"
)

KEY = "a-key-for-the-trial"


@pytest.fixture(scope="module")
def clone(tmp_path_factory):
    """The project as a clone has it, in a folder of its own."""
    clone = tmp_path_factory.mktemp("clone")
    for path in files():
        target = clone / path.relative_to(ROOT)
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(path, target)
    return clone


@pytest.fixture(scope="module")
def environment(clone, tmp_path_factory):
    """A fresh environment with nothing in it but what the install list says."""
    place = tmp_path_factory.mktemp("environment")
    venv.create(place, with_pip=True)
    done = subprocess.run(
        [place / "bin" / "pip", "install", "--quiet", "-r", "binder/requirements.txt"],
        cwd=clone,
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode and "Could not find a version" in done.stderr + done.stdout:
        reason = f"the packages cannot be fetched: {done.stderr[-300:]}"
        if os.environ.get("CI", "") not in ("", "0", "false"):
            pytest.fail(reason)
        pytest.skip(reason)
    assert done.returncode == 0, done.stderr
    variables = {name: word for name, word in os.environ.items() if not name.startswith("PYTHON")}
    return {
        **variables,
        "PATH": f"{place / 'bin'}{os.pathsep}{os.environ['PATH']}",
        "VIRTUAL_ENV": str(place),
        # Nothing of the machine's own Jupyter has a say.
        "JUPYTER_CONFIG_DIR": str(place / "config"),
        "HOME": str(place),
    }


@pytest.fixture(scope="module")
def trial(clone, environment):
    """Somebody who came to the trial, and the base of its addresses."""
    with socket.create_server(("127.0.0.1", 0)) as free:
        port = free.getsockname()[1]
    process = subprocess.Popen(
        [
            *(clone / "binder" / "start", "jupyter", "lab", "--no-browser", "--allow-root"),
            *("--ip=127.0.0.1", f"--port={port}", "--ServerApp.base_url=/user/ada/"),
            *(f"--IdentityProvider.token={KEY}", "--ServerApp.port_retries=0"),
        ],
        cwd=clone,
        env=environment,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        start_new_session=True,
    )
    try:
        visitor = Visitor(f"127.0.0.1:{port}")

        def answers():
            assert process.poll() is None, "the start command ended"
            try:
                return visitor.get(f"/user/ada/api?token={KEY}").status == 200
            except OSError:
                return False

        until(answers, 90, "the trial's server to answer")
        visitor.get(f"/user/ada/lab?token={KEY}")
        yield visitor
    finally:
        process.terminate()
        process.wait(20)


def test_the_trial_opens_on_the_shelf(trial):
    first = trial.get("/user/ada/")
    assert first.status == 302
    assert first.headers["Location"].rstrip("?") == "/user/ada/shelf/"
    shelf = trial.get("/user/ada/shelf/")
    assert shelf.status == 200
    assert "Market clock" in shelf.text
    assert 'href="/user/ada/shelf/board/market-clock"' in shelf.text


def test_the_trial_shows_a_board_with_a_kernel_behind_it(trial):
    board = trial.get("/user/ada/shelf/board/market-clock").text
    assert "application/vnd.jupyter.widget-view+json" in board
    assert 'class="kit-cell-error"' not in board
    kernel = re.search(r'"kernelId": "([^"]+)"', board)[1]
    assert trial.get(f"/user/ada/shelf/kernel/{kernel}").text == '{"alive": true}'
    script = re.search(r'src="(/user/ada/shelf/voila/static/voila\.js)"', board)[1]
    assert trial.get(script).status == 200


def test_the_trial_makes_paper_and_opens_notebooks_in_its_own_jupyterlab(trial):
    found = re.search(r'name="_xsrf" value="([^"]+)"', trial.get("/user/ada/shelf/").text)
    body = f"_xsrf={found[1]}".replace("|", "%7C")
    made = trial.ask("POST", "/user/ada/shelf/make/sheet/market-clock", body)
    assert made.status == 303
    assert trial.get(made.headers["Location"]).body[:5] == b"%PDF-"
    answer = trial.ask("POST", "/user/ada/shelf/notebook/market-clock", body)
    assert "url=/user/ada/lab/tree/notebooks/market-clock.ipynb" in answer.text
    assert trial.get("/user/ada/lab/tree/notebooks/market-clock.ipynb").status == 200


def test_the_trial_refuses_requests_without_its_key(trial):
    visitor_without_key = Visitor(trial.host)
    assert visitor_without_key.get("/user/ada/shelf/").status in (302, 403)
    assert "Market clock" not in visitor_without_key.get("/user/ada/shelf/").text


def test_the_trial_names_a_python_that_the_kit_runs_on():
    named = (ROOT / "binder" / "runtime.txt").read_text("utf-8").strip()
    assert re.fullmatch(r"python-3\.(1[1-9])", named)


def test_a_jupyterlab_elsewhere_is_only_pointed_to():
    lab = LabElsewhere("/user/ada/lab/tree/notebooks/")
    address = run(lab.address("guide/a b.ipynb"))
    assert address == "/user/ada/lab/tree/notebooks/guide/a%20b.ipynb"
