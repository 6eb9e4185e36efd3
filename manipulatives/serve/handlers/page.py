"""What all pages of the shelf have in common: their template, their policy, and their errors."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any
from urllib.parse import quote

from jupyter_server.base.handlers import JupyterHandler
from tornado.web import HTTPError

from manipulatives.lessons.problem import LessonProblem
from manipulatives.serve.assets import shelf_script, shelf_style
from manipulatives.serve.handlers.sentences import (
    LOCKED,
    SENTENCES,
    UNKNOWN_FAULT,
    write_error_sentence,
)
from manipulatives.serve.lab import LabProblem
from manipulatives.serve.wording import by_folder, can_make, cells, length

if TYPE_CHECKING:
    from manipulatives.serve.server_state import ServerState
    from manipulatives.shelf.items import ShelfItem

UNREADABLE = 422
"""The request was understood, but nothing can be made of the file."""

REFUSED = 403

_TEMPLATES = Path(__file__).parent.parent / "pages"

_POLICY = (
    "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; font-src data:; "
    "img-src data:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)


class ShelfHandler(JupyterHandler):
    """Answers with a page of the shelf, or with one sentence when that is not possible."""

    @property
    def state(self) -> ServerState:
        """What the handlers share."""
        return self.settings["state"]

    @property
    def content_security_policy(self) -> str:
        """Nothing is loaded from anywhere; the forms are sent to this server."""
        return _POLICY

    def get_template_path(self) -> str:
        """Where the templates are."""
        return str(_TEMPLATES)

    def get_login_url(self) -> str:
        """There is no page to log in; the request is refused.

        Raises:
            HTTPError: always.
        """
        raise HTTPError(REFUSED, reason="Locked")

    def at(self, *parts: str) -> str:
        """Return an address on this server."""
        return self.base_url + "/".join(quote(part) for part in parts)

    def get_template_namespace(self) -> dict[str, Any]:
        """Names that every template knows."""
        names = super().get_template_namespace()
        functions = (by_folder, can_make, cells, length, shelf_script, shelf_style)
        return names | {each.__name__: each for each in functions} | {"at": self.at}

    def show(self, page: str, **names: Any) -> None:
        """Answer with a page."""
        self.set_page_headers()
        self.finish(self.render_string(page, **names))

    def set_page_headers(self) -> None:
        """Set the headers of a page that no browser caches."""
        self.set_header("Content-Type", "text/html; charset=UTF-8")
        self.set_header("Cache-Control", "no-store")

    def say(self, status: int, sentence: str) -> None:
        """Answer with a sentence."""
        self.set_status(status)
        self.show("sentence.html", sentence=sentence)

    def write_error(self, status_code: int, **kwargs: Any) -> None:
        """Answer with a sentence on what went wrong."""
        problem = kwargs.get("exc_info", (None, None, None))[1]
        if not hasattr(self, "_jupyter_current_user"):
            self.current_user = None  # refused before the user was looked up
        if isinstance(problem, LessonProblem):
            self.say(UNREADABLE, str(problem))
        elif isinstance(problem, LabProblem):
            self.say(503, str(problem))
        elif self._could_not_write(problem):
            self.say(409, f"{write_error_sentence(problem)} Nothing was changed.")
        elif status_code == REFUSED and self._reason == "Locked":
            self.say(REFUSED, LOCKED)
        else:
            self.say(status_code, SENTENCES.get(status_code, UNKNOWN_FAULT))

    def log_exception(self, *given: Any) -> None:
        """Log nothing that the page has already said."""
        shown = isinstance(given[1], LessonProblem | LabProblem) or self._could_not_write(given[1])
        if not shown:
            super().log_exception(*given)

    def _could_not_write(self, problem: object) -> bool:
        return isinstance(problem, OSError) and self.request.method == "POST"

    def item(self, name: str) -> ShelfItem:
        """Return the lesson of that name, as its file is now; 404 when it is not on the shelf."""
        found = self.state.shelf.find(name)
        if found is None:
            raise HTTPError(404)
        return found
