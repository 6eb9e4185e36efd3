"""The answer at every address that the server does not have."""

from __future__ import annotations

from tornado.web import HTTPError

from manipulatives.serve.handlers.page import ShelfHandler


class NotFound(ShelfHandler):
    """Every other address."""

    def prepare(self) -> None:
        """Refuse every method."""
        raise HTTPError(404)
