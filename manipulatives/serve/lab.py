"""JupyterLab for changing a notebook: a child process, started when first asked for.

The child ends with the shelf, however the shelf ends: it reads from a pipe, which the system
closes when the shelf has ended, and stops at the end of the file.
"""

from __future__ import annotations

import asyncio
import contextlib
import json
import os
import secrets
import subprocess
import sys
import tempfile
import threading
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import quote

from manipulatives.notebook.fast_import import import_nbformat_fast

if TYPE_CHECKING:
    from collections.abc import Sequence

START_TIMEOUT_S = 60.0
"""Seconds that JupyterLab may take until it answers."""

STOP_TIMEOUT_S = 8.0
"""Seconds that it may take to stop its kernels and itself."""


class LabProblem(RuntimeError):
    """JupyterLab could not be started."""


class Lab:
    """The one JupyterLab of a shelf, open on the shelf's folder.

    Args:
        folder: the shelf's folder.
    """

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._token = secrets.token_urlsafe(24)
        self._process: subprocess.Popen[bytes] | None = None
        self._runtime: tempfile.TemporaryDirectory[str] | None = None
        self._starting = asyncio.Lock()
        self._url = ""

    @property
    def is_running(self) -> bool:
        """Whether the child process is there."""
        return self._process is not None and self._process.poll() is None

    async def address(self, file: str) -> str:
        """Return the address of a file in JupyterLab, which is started when it is not there.

        Args:
            file: path below the folder, with "/" between parts.

        Raises:
            LabProblem: it does not start.
        """
        async with self._starting:
            if not self.is_running:
                self.stop()
                self._start()
                self._url = await self._wait()
        return f"{self._url}lab/tree/{quote(file)}?token={self._token}"

    def stop(self) -> None:
        """End the child with all its kernels."""
        process, self._process = self._process, None
        if process is not None:
            with contextlib.suppress(OSError):
                process.stdin.close()  # type: ignore[union-attr] - it was asked for
            try:
                process.wait(STOP_TIMEOUT_S)
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()
        runtime, self._runtime = self._runtime, None
        if runtime is not None:
            runtime.cleanup()

    def _start(self) -> None:
        self._runtime = tempfile.TemporaryDirectory(prefix="manipulatives-lab-")
        environment = dict(os.environ)
        environment["JUPYTER_RUNTIME_DIR"] = self._runtime.name
        # Everyone on the machine can read the arguments of a process.
        environment["JUPYTER_TOKEN"] = self._token
        self._process = subprocess.Popen(  # noqa: S603 - our own module
            # -P: no file in the folder that the shelf was started from stands in for a module.
            [sys.executable, "-P", "-m", __spec__.name, str(self._folder)],
            env=environment,
            stdin=subprocess.PIPE,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            # Ctrl+C in the terminal goes to the shelf, which then stops the child.
            start_new_session=True,
        )

    async def _wait(self) -> str:
        """Return the address of the child once it listens; Jupyter writes it to a file."""
        info = Path(self._runtime.name) / f"jpserver-{self._process.pid}.json"  # type: ignore[union-attr]
        now = asyncio.get_running_loop().time
        end = now() + START_TIMEOUT_S
        while now() < end and self.is_running:
            if info.is_file():
                # The file may be half written, and is there a moment before the server listens.
                with contextlib.suppress(ValueError, OSError):
                    server = json.loads(info.read_text("utf-8"))
                    _, connection = await asyncio.open_connection("127.0.0.1", server["port"])
                    connection.close()
                    return str(server["url"])
            await asyncio.sleep(0.1)
        self.stop()
        raise LabProblem("JupyterLab did not start; try it by itself: jupyter lab")


class LabElsewhere:
    """A JupyterLab that is there already, as in a hosted trial.

    Args:
        address: where the shelf's folder is in it, such as "/user/ada/lab/tree/notebooks".
    """

    def __init__(self, address: str) -> None:
        self._address = address.rstrip("/")

    async def address(self, file: str) -> str:
        """Return the address of a file in it."""
        return f"{self._address}/{quote(file)}"

    def stop(self) -> None:
        """Do nothing: it is not ours."""


def arguments(folder: str) -> list[str]:
    """The arguments of JupyterLab: this machine only, and nothing fetched from the network."""
    return [
        "--no-browser",
        "--ServerApp.ip=127.0.0.1",
        "--ServerApp.port=0",
        f"--ServerApp.root_dir={folder}",
        "--ServerApp.password=",
        "--ServerApp.allow_root=True",
        "--ServerApp.terminals_enabled=False",
        "--LabApp.news_url=None",
        "--LabApp.check_for_updates_class=jupyterlab.handlers.announcements.NeverCheckForUpdate",
        "--LabApp.extension_manager=readonly",
    ]


def _stop_with_parent() -> None:
    import signal  # noqa: PLC0415 - only the child needs it

    sys.stdin.buffer.read()
    os.kill(os.getpid(), signal.SIGTERM)


def run(given: Sequence[str]) -> None:
    """Run JupyterLab in this process until the other end of its standard input is closed."""
    import_nbformat_fast()
    from jupyterlab.labapp import LabApp  # noqa: PLC0415 - slow, and only the child needs it

    threading.Thread(target=_stop_with_parent, daemon=True).start()
    LabApp.launch_instance(arguments(given[0]))


if __name__ == "__main__":
    run(sys.argv[1:])
