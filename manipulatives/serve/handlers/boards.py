"""Boards, the lesson maker, and the permission to run code of others."""

from __future__ import annotations

from tornado.iostream import StreamClosedError

from manipulatives.lessons.problem import in_file
from manipulatives.serve.board.board import Board
from manipulatives.serve.board.maker import maker_board
from manipulatives.serve.handlers.page import UNREADABLE, ShelfHandler
from manipulatives.shelf.outputs import ON_THE_SHELF

# A board loads scripts from this server only, and connects to its kernel here.
_BOARD = (
    "default-src 'self' data: blob:; script-src 'self' 'unsafe-inline' blob:; "
    "style-src 'self' 'unsafe-inline'; form-action 'none'; base-uri 'none'; "
    # Not every browser counts a web socket to the same server as its own.
    "frame-ancestors 'none'; connect-src 'self' ws://{host} wss://{host}"
)
# Widgets of others may bring anything along, which the teacher agreed to.
_BOARD_OF_OTHERS = "base-uri 'none'; frame-ancestors 'none'"


class BoardPage(ShelfHandler):
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
        self.state.note_opened(item)
        with in_file(item.source.name):
            await self.show_board(Board.of(item))

    async def show_board(self, board: Board) -> None:
        """Run a board and send it piece by piece."""
        self.set_page_headers()
        policy = _BOARD.format(host=self.request.host) if board.kit_only else _BOARD_OF_OTHERS
        self.set_header("Content-Security-Policy", policy)
        try:
            async for piece in self.state.boards.open(board):
                self.write(piece)
                await self.flush()
        except StreamClosedError:
            pass  # closed while it was loading; its kernel ends as that of any closed page


class MakerPage(BoardPage):
    """The lesson maker, with a lesson of the shelf or with a new one."""

    async def get(self, name: str = "") -> None:
        """Show the form; the notebook of a lesson that is changed in it is read and not run."""
        item = self.item(name) if name else None
        await self.show_board(maker_board(self.state.shelf.folder, item))


class AllowRun(ShelfHandler):
    """The teacher allows a notebook with code of others to be run."""

    async def post(self, name: str) -> None:
        """Note it, for the file as it was when the question was asked; then go on."""
        item = self.item(name)
        if self.get_body_argument("stamp", "") != item.stamp:
            self.show("ask.html", item=item, then=self.get_body_argument("then", "board"))
            return
        self.state.allow_run(item)
        then = self.get_body_argument("then", "board")
        if then in ON_THE_SHELF:
            await self.state.make(item, then)
            self.redirect(self.at("made", then, name), status=303)
        else:
            self.redirect(self.at("board", name), status=303)
