"""The server: Voila by itself in one process, with the shelf's own handlers around it."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import os
import secrets
import shutil
import signal
from pathlib import Path
from typing import TYPE_CHECKING, Any

from jupyter_core.utils import run_sync
from tornado.httpserver import HTTPServer
from tornado.ioloop import IOLoop, PeriodicCallback
from tornado.netutil import bind_sockets
from traitlets.config import Config
from voila.app import Voila
from voila.paths import collect_static_paths, collect_template_paths
from voila.voila_identity_provider import VoilaIdentityProvider

from manipulatives.serve.boards import CELL_TIMEOUT_S, Boards
from manipulatives.serve.disconnects import complain
from manipulatives.serve.handlers import NotThere, handlers
from manipulatives.serve.kernels import BoardKernels, OwnPython, kernel_settings
from manipulatives.serve.server_state import ServerState

if TYPE_CHECKING:
    from collections.abc import Callable

HOST = "127.0.0.1"
"""The only address that the server listens on: this machine."""

TEMPLATE = "kit"

TEND = 2.0
"""Seconds between two looks at which boards should be warm."""

ENDING = 10.0
"""Seconds that kernels have to end; after that they notice themselves that nobody is there."""

_log = logging.getLogger(__name__)

# Laid out as Jupyter's own data folders are, for Voila to find the template in.
_JUPYTER = Path(__file__).parent / "jupyter"


class ShelfApp(Voila):
    """Voila with a shelf of lessons in front, for this machine only.

    Args:
        state: what is open while the server runs.
        port: where it listens; 0 for any that is free.
        base: where its addresses begin, "/" unless there is a proxy in front.
        opened: called with the whole address once the server listens.
    """

    name = "manipulatives"

    def __init__(
        self,
        state: ServerState,
        *,
        port: int,
        base: str,
        opened: Callable[[str], None],
        **kwargs: Any,
    ) -> None:
        super().__init__(**kwargs)
        self.state = state
        self._opened = opened
        self._base = base
        # First of all, for a port that is taken is the likeliest thing to go wrong.
        self._sockets = bind_sockets(port, HOST)
        self._port = self._sockets[0].getsockname()[1]
        # Behind a proxy, whoever runs it decides who may come in.
        self._key = "" if base != "/" else secrets.token_urlsafe(24)

    def _config_file_paths_default(self) -> list[str]:
        # Voila would run settings that lie in the folder of lessons, which may be anyone's.
        return []

    def _log_level_default(self) -> int:
        return logging.CRITICAL

    def initialize(self, argv: list[str] | None = None) -> None:
        """Set Voila up for this shelf."""
        # What was refused is said to whoever asked; the terminal hears of our own faults only.
        for refusals in ("tornado.access", "tornado.general"):
            logging.getLogger(refusals).setLevel(logging.ERROR)
        self.update_config(self._settings())
        super().initialize(argv or [])

    def setup_template_dirs(self) -> None:
        """Find the board's template in the kit itself, and Voila's own behind it."""
        found = os.environ.get("JUPYTER_PATH")
        # Voila asks Jupyter for its data folders in more than one place.
        os.environ["JUPYTER_PATH"] = os.pathsep.join([str(_JUPYTER), *([found] if found else [])])
        try:
            names = ["voila", "nbconvert"]
            self.template_paths = collect_template_paths(names, TEMPLATE, prune=True)
            self.static_paths = collect_static_paths(names, TEMPLATE)
        finally:
            if found is None:
                del os.environ["JUPYTER_PATH"]
            else:
                os.environ["JUPYTER_PATH"] = found

    def init_settings(self) -> dict[str, Any]:
        """Voila's settings, with what is its own to protect."""
        settings: dict[str, Any] = super().init_settings()
        self.state.boards = Boards(self, self.kernel_manager)
        local = {
            # A page from elsewhere that calls itself 127.0.0.1 by a trick of names is refused.
            "allow_remote_access": self._base != "/",
            "xsrf_cookie_name": f"shelf-{self._port}-xsrf",
            "xsrf_cookie_kwargs": {"httponly": True, "samesite": "Strict", "path": self._base},
            "default_handler_class": NotThere,
            # As long as the time between two pings, which the web server insists on.
            "ws_ping_timeout": 30_000,
            "state": self.state,
        }
        return settings | local

    def init_handlers(self) -> list[Any]:
        """What a board and the shelf need; everything else of Voila's stays away."""
        return handlers(self)

    def listen(self) -> None:
        """Serve until told to stop."""
        server = HTTPServer(self.app)
        server.add_sockets(self._sockets)
        self.ioloop = IOLoop.current()
        self.ioloop.asyncio_loop.set_exception_handler(complain)
        tending = PeriodicCallback(self._tend, TEND * 1000)
        tending.start()
        address = f"http://{HOST}:{self._port}{self._base}"
        self.ioloop.add_callback(self._opened, address + (self._key and f"?token={self._key}"))
        # Ctrl+C is kept for the loop: as an exception it could come where exceptions are dropped.
        before = signal.signal(signal.SIGINT, self._leave)
        try:
            self.ioloop.start()
        finally:
            tending.stop()
            server.stop()
            self.stop()
            signal.signal(signal.SIGINT, before)

    def stop(self) -> None:
        """End everything that was begun: JupyterLab, kernels, files for the time being."""
        self.state.lab.stop()
        with contextlib.suppress(Exception):  # a kernel that will not go is ended by the system
            run_sync(self._end_kernels)()
        shutil.rmtree(self.connection_dir, ignore_errors=True)

    def _leave(self, *_: object) -> None:
        # Once is enough: pressed again, it would keep the kernels from being ended.
        signal.signal(signal.SIGINT, signal.SIG_IGN)
        self.ioloop.asyncio_loop.call_soon_threadsafe(self.ioloop.stop)

    async def _end_kernels(self) -> None:
        await asyncio.wait_for(self.kernel_manager.shutdown_all(now=True), ENDING)

    async def _tend(self) -> None:
        try:
            await self.state.tend()
        except Exception:  # noqa: BLE001 - whatever it is, the shelf goes on without warm boards
            _log.exception("Boards could not be warmed.")

    def _settings(self) -> Config:
        config = kernel_settings()
        config.Voila.root_dir = str(self.state.shelf.folder)
        config.Voila.base_url = self._base
        config.Voila.port = self._port
        config.Voila.ip = HOST
        config.Voila.token = self._key
        config.Voila.open_browser = False
        # The one whose key is enough: no password, and no key at all behind a proxy.
        config.Voila.identity_provider_class = VoilaIdentityProvider
        # Not the name that another Jupyter server on the same machine goes by.
        config.IdentityProvider.cookie_name = f"shelf-{self._port}"
        config.IdentityProvider.cookie_options = {"samesite": "Strict"}
        config.VoilaConfiguration.template = TEMPLATE
        config.VoilaConfiguration.allow_template_override = "NO"
        config.VoilaConfiguration.allow_theme_override = "NO"
        config.VoilaConfiguration.multi_kernel_manager_class = BoardKernels
        config.VoilaConfiguration.kernel_spec_manager_class = OwnPython
        # A cell that fails keeps its reason and lets the next one run; so does one that hangs.
        config.VoilaConfiguration.show_tracebacks = True
        config.VoilaExecutor.allow_errors = True
        config.VoilaExecutor.timeout = CELL_TIMEOUT_S
        config.VoilaExecutor.interrupt_on_timeout = True
        return config
