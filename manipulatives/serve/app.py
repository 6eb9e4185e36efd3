"""The server: Voila in one process, with the shelf's own handlers instead of its pages."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import secrets
import shutil
import signal
from pathlib import Path
from typing import TYPE_CHECKING, Any

from jupyter_core.paths import jupyter_path
from jupyter_core.utils import run_sync
from tornado.httpserver import HTTPServer
from tornado.ioloop import IOLoop, PeriodicCallback
from tornado.netutil import bind_sockets
from traitlets.config import Config
from voila.app import Voila
from voila.paths import collect_static_paths, collect_template_paths
from voila.voila_identity_provider import VoilaIdentityProvider

from manipulatives.serve.board.rendering import CELL_TIMEOUT_S
from manipulatives.serve.board.warm import Boards
from manipulatives.serve.disconnects import ignore_disconnects
from manipulatives.serve.handlers.not_found import NotFound
from manipulatives.serve.handlers.routes import routes
from manipulatives.serve.kernels import BoardKernels, OwnPython, kernel_settings
from manipulatives.serve.server_state import ServerState

if TYPE_CHECKING:
    from collections.abc import Callable

HOST = "127.0.0.1"
"""The only address that the server listens on: this machine."""

TEMPLATE = "kit"

WARM_INTERVAL_S = 2.0
"""Seconds between two checks of which boards should be warm."""

SHUTDOWN_TIMEOUT_S = 10.0
"""Seconds that kernels have to end; after that they notice themselves that the server has ended."""

_log = logging.getLogger(__name__)

# Laid out as Jupyter's own data folders are, for Voila to find the template in.
_JUPYTER = Path(__file__).parent / "jupyter"


class ShelfApp(Voila):
    """Voila with a shelf of lessons, for this machine only.

    Args:
        state: what is open while the server runs.
        port: where it listens; 0 for any that is free.
        base: where its addresses begin, "/" unless there is a proxy in front.
        on_listening: called with the whole address once the server listens.
    """

    name = "manipulatives"

    def __init__(
        self,
        state: ServerState,
        *,
        port: int,
        base: str,
        on_listening: Callable[[str], None],
        **kwargs: Any,
    ) -> None:
        super().__init__(**kwargs)
        self.state = state
        self._on_listening = on_listening
        self._base = base
        # Before anything else: a port that is taken is the most frequent error.
        self._sockets = bind_sockets(port, HOST)
        self._port = self._sockets[0].getsockname()[1]
        # Behind a proxy, the proxy decides about access.
        self._token = "" if base != "/" else secrets.token_urlsafe(24)

    def _config_file_paths_default(self) -> list[str]:
        # Voila would run a configuration file in the folder of lessons, which may be anyone's.
        return []

    def _log_level_default(self) -> int:
        return logging.CRITICAL

    def initialize(self, argv: list[str] | None = None) -> None:
        """Set Voila up for this shelf."""
        # A refused request is answered; only faults of the kit are logged on the terminal.
        for refusals in ("tornado.access", "tornado.general"):
            logging.getLogger(refusals).setLevel(logging.ERROR)
        self.update_config(self._settings())
        super().initialize(argv or [])

    def setup_template_dirs(self) -> None:
        """Find the board's template in the kit itself, and Voila's own behind it."""
        names = ["voila", "nbconvert"]
        roots = [str(_JUPYTER), *jupyter_path()]
        self.template_paths = collect_template_paths(names, TEMPLATE, prune=True, root_dirs=roots)
        self.static_paths = collect_static_paths(names, TEMPLATE, root_dirs=roots)

    def init_settings(self) -> dict[str, Any]:
        """Voila's settings, and those that protect the shelf from other sites."""
        settings: dict[str, Any] = super().init_settings()
        self.state.boards = Boards(self, self.kernel_manager)
        local = {
            # A page of another site whose name resolves to 127.0.0.1 (DNS rebinding) is refused.
            "allow_remote_access": self._base != "/",
            "xsrf_cookie_name": f"shelf-{self._port}-xsrf",
            "xsrf_cookie_kwargs": {"httponly": True, "samesite": "Strict", "path": self._base},
            "default_handler_class": NotFound,
            # As long as the time between two pings, which the web server insists on.
            "ws_ping_timeout": 30_000,
            "state": self.state,
        }
        return settings | local

    def init_handlers(self) -> list[Any]:
        """What a board and the shelf need, and nothing else of Voila's."""
        return routes(self)

    def listen(self) -> None:
        """Serve until it is stopped."""
        server = HTTPServer(self.app)
        server.add_sockets(self._sockets)
        self.ioloop = IOLoop.current()
        self.ioloop.asyncio_loop.set_exception_handler(ignore_disconnects)
        warming = PeriodicCallback(self._update_warm_boards, WARM_INTERVAL_S * 1000)
        warming.start()
        address = f"http://{HOST}:{self._port}{self._base}"
        if self._token:
            address += f"?token={self._token}"
        self.ioloop.add_callback(self._on_listening, address)
        # Ctrl+C stops the loop: an exception could be raised where exceptions are dropped.
        before = signal.signal(signal.SIGINT, self._stop_loop)
        try:
            self.ioloop.start()
        finally:
            warming.stop()
            server.stop()
            self.stop()
            signal.signal(signal.SIGINT, before)

    def stop(self) -> None:
        """End everything that was started: JupyterLab, kernels, temporary files."""
        self.state.lab.stop()
        with contextlib.suppress(Exception):  # a kernel that does not end is killed by the system
            run_sync(self._end_kernels)()
        shutil.rmtree(self.connection_dir, ignore_errors=True)

    def _stop_loop(self, *_: object) -> None:
        # Pressed again, it would interrupt the shutdown of the kernels.
        signal.signal(signal.SIGINT, signal.SIG_IGN)
        self.ioloop.asyncio_loop.call_soon_threadsafe(self.ioloop.stop)

    async def _end_kernels(self) -> None:
        await asyncio.wait_for(self.kernel_manager.shutdown_all(now=True), SHUTDOWN_TIMEOUT_S)

    async def _update_warm_boards(self) -> None:
        try:
            await self.state.update_warm_boards()
        except Exception:  # noqa: BLE001 - whatever it is, the shelf goes on without warm boards
            _log.exception("Boards could not be warmed.")

    def _settings(self) -> Config:
        config = kernel_settings()
        config.Voila.root_dir = str(self.state.shelf.folder)
        config.Voila.base_url = self._base
        config.Voila.port = self._port
        config.Voila.ip = HOST
        config.Voila.token = self._token
        config.Voila.open_browser = False
        # With this one the token is enough: no password, and no token behind a proxy.
        config.Voila.identity_provider_class = VoilaIdentityProvider
        # Another Jupyter server on this machine has a cookie of another name.
        config.IdentityProvider.cookie_name = f"shelf-{self._port}"
        config.IdentityProvider.cookie_options = {"samesite": "Strict"}
        config.VoilaConfiguration.template = TEMPLATE
        config.VoilaConfiguration.allow_template_override = "NO"
        config.VoilaConfiguration.allow_theme_override = "NO"
        config.VoilaConfiguration.multi_kernel_manager_class = BoardKernels
        config.VoilaConfiguration.kernel_spec_manager_class = OwnPython
        # After a cell that fails or takes too long, the next one runs.
        config.VoilaConfiguration.show_tracebacks = True
        config.VoilaExecutor.allow_errors = True
        config.VoilaExecutor.timeout = CELL_TIMEOUT_S
        config.VoilaExecutor.interrupt_on_timeout = True
        return config
