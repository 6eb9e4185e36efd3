"""The kernel of a board: whether it is running, and the connection to it."""

from __future__ import annotations

from jupyter_server.services.kernels.handlers import KernelHandler
from tornado.web import Finish, HTTPError
from voila.tornado.kernel_websocket_handler import VoilaKernelWebsocketHandler

from manipulatives.serve.handlers.files import StatusOnly
from manipulatives.serve.handlers.page import ShelfHandler


class KernelState(ShelfHandler):
    """Whether the kernel of a board is running; the board asks every second."""

    async def get(self, kernel_id: str) -> None:
        """Answer, and note that the kernel is in use."""
        kernels = self.kernel_manager
        alive = await kernels.is_running(kernel_id)
        if alive:
            kernels.note_use(kernel_id)
        self.set_header("Cache-Control", "no-store")
        self.finish({"alive": alive})


class KernelSocket(StatusOnly, VoilaKernelWebsocketHandler):
    """The web socket between a board and its kernel; no code is accepted on it.

    A browser may disconnect before the web socket is open; Jupyter would answer it all the same,
    and fail. For a kernel that has ended it would wait a minute, and fail as well.
    """

    connection = None
    _closed = False

    async def pre_get(self) -> None:
        """Connect to the kernel, and disconnect again if the browser has left meanwhile."""
        kernels = self.kernel_manager
        if not await kernels.is_running(self.kernel_id):
            raise HTTPError(404)
        kernels.note_use(self.kernel_id)
        try:
            await super().pre_get()
        except TimeoutError:  # it ended meanwhile
            raise HTTPError(404) from None
        if self._closed:
            self.on_close()
            raise Finish

    def on_close(self) -> None:
        """Disconnect from the kernel."""
        self._closed = True
        if self.connection is not None:
            super().on_close()


class KernelModel(KernelHandler):
    """What Voila's front end asks about its kernel before it connects."""

    SUPPORTED_METHODS = ("GET",)


class IgnoreShutdown(ShelfHandler):
    """What Voila's front end sends when a board is left; nothing is done about it.

    It comes without a token against forged requests, so it may not do anything. The kernel is
    ended as any that is no longer asked for.
    """

    def check_xsrf_cookie(self) -> None:
        """Let it pass: nothing is done."""

    def post(self, kernel_id: str) -> None:  # noqa: ARG002 - part of the address
        """Answer that it was received."""
        self.set_status(204)
