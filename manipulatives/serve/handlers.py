"""What the server answers: GET shows, POST makes, and only what is on the shelf."""

from __future__ import annotations

import errno
import re
from pathlib import Path
from typing import TYPE_CHECKING, Any
from urllib.parse import quote, urlencode

from jupyter_server.base.handlers import FileFindHandler, JupyterHandler
from jupyter_server.services.kernels.handlers import KernelHandler
from tornado.escape import xhtml_escape
from tornado.iostream import StreamClosedError
from tornado.web import Finish, HTTPError
from voila.static_file_handler import MultiStaticFileHandler
from voila.tornado.kernel_websocket_handler import VoilaKernelWebsocketHandler

from manipulatives.lessons.problem import LessonProblem, in_file
from manipulatives.serve.assets import shelf_script, shelf_style
from manipulatives.serve.boards import Board
from manipulatives.serve.lab import LabProblem
from manipulatives.serve.maker_board import maker_board
from manipulatives.serve.wording import by_folder, can_make, cells, length
from manipulatives.shelf.copies import renumber
from manipulatives.shelf.made import made, notebook_for, target
from manipulatives.shelf.outputs import ON_THE_SHELF, OUTPUTS

if TYPE_CHECKING:
    from voila.app import Voila

    from manipulatives.serve.server_state import ServerState
    from manipulatives.shelf.items import ShelfItem

PAGES = Path(__file__).parent / "pages"

_OWN_PAGE = (
    "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; font-src data:; "
    "img-src data:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
# A board's scripts and kernel are this server's. Nothing else is asked for anything.
_BOARD = (
    "default-src 'self' data: blob:; script-src 'self' 'unsafe-inline' blob:; "
    "style-src 'self' 'unsafe-inline'; form-action 'none'; base-uri 'none'; "
    # Not every browser counts a web socket to the same server as its own.
    "frame-ancestors 'none'; connect-src 'self' ws://{host} wss://{host}"
)
# Widgets of others may bring anything along, which the teacher agreed to.
_BOARD_OF_OTHERS = "base-uri 'none'; frame-ancestors 'none'"
_PAPER = "frame-ancestors 'none'"
# A page made from a lesson is sandboxed: it may run, but not act as the shelf.
_MADE = "sandbox allow-scripts allow-modals allow-popups allow-downloads"

UNREADABLE = 422  # understood, but there is nothing that can be made of it
REFUSED = 403

_SENTENCES = {
    400: "The shelf did not understand that.",
    403: "That was refused. Go back to the shelf and try again.",
    404: "There is nothing of that name on the shelf.",
    405: "That cannot be done here. Go back to the shelf.",
}
_LOCKED = "The shelf is locked. Open it with the whole address that the terminal shows."


class _Page(JupyterHandler):
    """A page of the shelf's own, or a sentence instead of it."""

    csp = _OWN_PAGE

    @property
    def state(self) -> ServerState:
        return self.settings["state"]

    @property
    def content_security_policy(self) -> str:
        return self.csp

    def get_template_path(self) -> str:
        return str(PAGES)

    def get_login_url(self) -> str:
        raise HTTPError(REFUSED, reason="Locked")

    def at(self, *parts: str) -> str:
        """The address of something on this server."""
        return self.base_url + "/".join(quote(part) for part in parts)

    def get_template_namespace(self) -> dict[str, Any]:
        names = super().get_template_namespace()
        words = (by_folder, can_make, cells, length, shelf_script, shelf_style)
        return names | {word.__name__: word for word in words} | {"at": self.at}

    def show(self, page: str, **names: Any) -> None:
        """Finish with a page."""
        self.begin()
        self.finish(self.render_string(page, **names))

    def begin(self) -> None:
        """Say that a page comes which is to be asked for anew each time."""
        self.set_header("Content-Type", "text/html; charset=UTF-8")
        self.set_header("Cache-Control", "no-store")

    def say(self, status: int, sentence: str) -> None:
        """Finish with a sentence."""
        self.set_status(status)
        self.show("sentence.html", sentence=sentence)

    def write_error(self, status_code: int, **kwargs: Any) -> None:
        problem = kwargs.get("exc_info", (None, None, None))[1]
        if not hasattr(self, "_jupyter_current_user"):
            self.current_user = None  # refused before anyone asked who it is
        if isinstance(problem, LessonProblem):
            self.say(UNREADABLE, str(problem))
        elif isinstance(problem, LabProblem):
            self.say(503, str(problem))
        elif self._could_not_write(problem):
            self.say(409, f"{_of_the_system(problem)} Nothing was changed.")
        elif status_code == REFUSED and self._reason == "Locked":
            self.say(REFUSED, _LOCKED)
        else:
            self.say(
                status_code,
                _SENTENCES.get(status_code, "Something went wrong in the kit itself."),
            )

    def log_exception(self, *given: Any) -> None:
        """Leave out of the log what the page has already said."""
        said = isinstance(given[1], LessonProblem | LabProblem) or self._could_not_write(given[1])
        if not said:
            super().log_exception(*given)

    def _could_not_write(self, problem: object) -> bool:
        return isinstance(problem, OSError) and self.request.method == "POST"

    def item(self, name: str) -> ShelfItem:
        """The lesson of that name as its file is now, if it is on the shelf."""
        found = self.state.shelf.find(name)
        if found is None:
            raise HTTPError(404)
        return found


class ShelfPage(_Page):
    """The shelf."""

    def get(self) -> None:
        """Show every lesson found."""
        if "token" in self.request.arguments:
            # The cookie holds it from here on; an address is easily read over a shoulder.
            self.redirect(self.base_url, status=303)
            return
        shelf = self.state.shelf
        done = shelf.find(self.get_query_argument("renumbered", ""))
        self.show(
            "shelf.html",
            shelf=shelf,
            items=shelf.items(),
            warm=self.state.is_warm,
            done=done,
            outputs={name: OUTPUTS[name] for name in ON_THE_SHELF},
        )


class BoardPage(_Page):
    """The board of a lesson, or the question whether to run somebody's code."""

    async def get(self, name: str) -> None:
        """Show the board of a lesson."""
        item = self.item(name)
        if item.notebook is None:
            self.say(UNREADABLE, item.problem)
            return
        if not self.state.may_run(item):
            self.show("ask.html", item=item, then="board")
            return
        self.state.opened(item)
        with in_file(item.source.name):
            await self.show_board(Board.of(item))

    async def show_board(self, board: Board) -> None:
        """Run a board and send it piece by piece."""
        self.begin()
        policy = _BOARD.format(host=self.request.host) if board.own else _BOARD_OF_OTHERS
        self.set_header("Content-Security-Policy", policy)
        try:
            async for piece in self.state.boards.open(board):
                self.write(piece)
                await self.flush()
        except StreamClosedError:
            pass  # the page was closed while it came; its kernel goes like that of any closed page


class MakerPage(BoardPage):
    """The lesson maker, with a lesson of the shelf or with a new one."""

    async def get(self, name: str = "") -> None:
        """Show the form; the notebook of a lesson that is changed in it is read and not run."""
        item = self.item(name) if name else None
        await self.show_board(maker_board(self.state.shelf.folder, item))


class Run(_Page):
    """The teacher's word that a notebook with code of others may run."""

    async def post(self, name: str) -> None:
        """Note it, for the file as it was when the question was asked; then go on."""
        item = self.item(name)
        if self.get_body_argument("stamp", "") != item.stamp:
            self.show("ask.html", item=item, then=self.get_body_argument("then", "board"))
            return
        self.state.agree(item)
        then = self.get_body_argument("then", "board")
        if then in ON_THE_SHELF:
            await self.state.make(item, then)
            self.redirect(self.at("made", then, name), status=303)
        else:
            self.redirect(self.at("board", name), status=303)


class Make(_Page):
    """Makes the page, the sheet or the key of a lesson beside the lesson."""

    async def post(self, output: str, name: str) -> None:
        """Make it and show it."""
        item = self.item(name)
        if item.problem:
            self.say(UNREADABLE, item.problem)
        elif OUTPUTS[output].runs_code and not self.state.may_run(item):
            self.show("ask.html", item=item, then=output)
        else:
            await self.state.make(item, output)
            self.redirect(self.at("made", output, name), status=303)


class Made(_Page):
    """What was made of a lesson."""

    def get(self, output: str, name: str) -> None:
        """Show it as it lies in the folder."""
        item = self.item(name)
        content = made(item, output)
        if content is None:
            raise HTTPError(404)
        self.set_header("Content-Type", OUTPUTS[output].media_type)
        # A browser's own view of paper does not open in a sandbox.
        self.set_header("Content-Security-Policy", _MADE if OUTPUTS[output].runs_code else _PAPER)
        self.set_header("Cache-Control", "no-store")
        name = quote(target(item, output).name)
        self.set_header("Content-Disposition", f"inline; filename*=utf-8''{name}")
        self.finish(content)


class Notebook(_Page):
    """The notebook of a lesson in JupyterLab; written first where there is none yet."""

    async def post(self, name: str) -> None:
        """Open it, telling meanwhile that JupyterLab takes its time."""
        item = self.item(name)
        file = notebook_for(item)
        self.begin()
        self.write(self.render_string("lab.html", item=item))
        await self.flush()
        try:
            address = await self.state.lab.address(file)
        except LabProblem as problem:
            self.finish(f"<p>{xhtml_escape(str(problem))}</p>")
            return
        safe = xhtml_escape(address)
        self.finish(
            f'<meta http-equiv="refresh" content="0;url={safe}">'
            f'<p><a class="go" href="{safe}">Open it</a></p>'
        )


class Renumber(_Page):
    """Gives a copied round other numbers."""

    def post(self, name: str) -> None:
        """Write another seed into the lesson's file."""
        item = self.item(name)
        renumber(item, self.get_body_argument("round", ""))
        self.redirect(f"{self.base_url}?{urlencode({'renumbered': name})}", status=303)


class KernelState(_Page):
    """Whether the kernel of a board lives; asked by the board every second."""

    async def get(self, kernel_id: str) -> None:
        """Answer, and count the kernel as wanted."""
        kernels = self.kernel_manager
        alive = await kernels.lives(kernel_id)
        if alive:
            kernels.touch(kernel_id)
        self.set_header("Cache-Control", "no-store")
        self.finish({"alive": alive})


class _Brief:
    """Refuses in a word, at addresses that are not for people."""

    def write_error(self, status_code: int, **_: Any) -> None:
        self.finish(str(status_code))


class LabFiles(_Brief, FileFindHandler):
    """The code of widgets that are installed here, which Voila's front end loads."""


class KernelSocket(_Brief, VoilaKernelWebsocketHandler):
    """The line between a board and its kernel, on which no code travels.

    A browser may leave before the line stands; Jupyter would answer it all the same, and fail. For
    a kernel that died it would wait a minute, and fail as well.
    """

    connection = None
    _left = False

    async def pre_get(self) -> None:
        """Ready the kernel's end, and give it up again where nobody waits any more."""
        kernels = self.kernel_manager
        if not await kernels.lives(self.kernel_id):
            raise HTTPError(404)
        kernels.touch(self.kernel_id)
        try:
            await super().pre_get()
        except TimeoutError:  # it died meanwhile
            raise HTTPError(404) from None
        if self._left:
            self.on_close()
            raise Finish

    def on_close(self) -> None:
        """Leave the kernel."""
        self._left = True
        if self.connection is not None:
            super().on_close()


class KernelModel(KernelHandler):
    """What Voila's front end asks about its kernel before it connects."""

    SUPPORTED_METHODS = ("GET",)


class Goodbye(_Page):
    """What Voila's front end sends when a board is left; no word of it is needed.

    It comes without the check that nobody else sent it, so it does nothing. The kernel goes like
    any that is no longer asked for.
    """

    def check_xsrf_cookie(self) -> None:
        """Let it in, for it does nothing."""

    def post(self, kernel_id: str) -> None:  # noqa: ARG002 - names what it would be about
        """Thank for it."""
        self.set_status(204)


class NotThere(_Page):
    """Everything else."""

    def prepare(self) -> None:
        """Refuse it, whoever asks and however."""
        raise HTTPError(404)


def handlers(app: Voila) -> list[Any]:
    """Every address that the server answers."""
    kernel = r"(?P<kernel_id>\w+-\w+-\w+-\w+-\w+)"
    outputs = "|".join(ON_THE_SHELF)
    labextensions = {"path": app.labextensions_path, "no_cache_paths": ["/"]}
    own = [
        (r"", ShelfPage),
        (r"board/(.+)", BoardPage),
        (r"maker", MakerPage),
        (r"maker/(.+)", MakerPage),
        (r"run/(.+)", Run),
        (rf"make/({outputs})/(.+)", Make),
        (rf"made/({outputs})/(.+)", Made),
        (r"notebook/(.+)", Notebook),
        (r"renumber/(.+)", Renumber),
        (rf"kernel/{kernel}", KernelState),
        (rf"api/kernels/{kernel}", KernelModel),
        (rf"api/kernels/{kernel}/channels", KernelSocket),
        (rf"voila/api/shutdown/{kernel}", Goodbye),
        (r"voila/static/(.*)", MultiStaticFileHandler, {"paths": app.static_paths}),
        (r"voila/labextensions/(.*)", LabFiles, labextensions),
    ]
    return [(re.escape(app.base_url) + pattern, *rest) for pattern, *rest in own]


def _of_the_system(problem: OSError) -> str:
    """What the system refused, in words for people."""
    name = Path(problem.filename).name if problem.filename else "The file"
    # What is being written has a name of its own until it is whole.
    name = re.sub(r"^\.(.+)\.[0-9a-f]+\.part$", r"\1", name)
    if isinstance(problem, PermissionError) or problem.errno == errno.EROFS:
        return f"{name} cannot be written: the folder or the file is read-only."
    if problem.errno == errno.ENOSPC:
        return f"{name} cannot be written: the disk is full."
    return f"{name} cannot be written ({problem.strerror or problem})."
