"""Browsers that disconnect while the server is still writing to them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from tornado.iostream import StreamClosedError
from tornado.websocket import WebSocketClosedError

if TYPE_CHECKING:
    import asyncio


def ignore_disconnects(loop: asyncio.AbstractEventLoop, context: dict[str, Any]) -> None:
    """Handle an exception that no task waited for: log it, unless a browser disconnected.

    Tornado answers a message to a browser with a task that fails when the browser closes the
    connection first, and Jupyter's handlers do not wait for it. A tab that is closed, or a board
    that is reloaded, is no fault, and a traceback would alarm a teacher.

    Example:
        >>> import asyncio
        >>> asyncio.new_event_loop().set_exception_handler(ignore_disconnects)
    """
    if not isinstance(context.get("exception"), (WebSocketClosedError, StreamClosedError)):
        loop.default_exception_handler(context)
