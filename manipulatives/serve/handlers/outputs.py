"""The outputs of a lesson: making one with a button, and showing its file."""

from __future__ import annotations

from urllib.parse import quote

from tornado.web import HTTPError

from manipulatives.serve.handlers.page import UNREADABLE, ShelfHandler
from manipulatives.shelf.item_outputs import output_path, read_output
from manipulatives.shelf.outputs import OUTPUTS

_PAPER_POLICY = "frame-ancestors 'none'"
# A page made from a lesson is sandboxed: it may run, but not act as the shelf.
_PAGE_POLICY = "sandbox allow-scripts allow-modals allow-popups allow-downloads"


class MakeOutput(ShelfHandler):
    """Makes an output of a lesson, beside the lesson."""

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


class ShowOutput(ShelfHandler):
    """Shows an output of a lesson."""

    def get(self, output: str, name: str) -> None:
        """Show the file in the folder."""
        item = self.item(name)
        content = read_output(item, output)
        if content is None:
            raise HTTPError(404)
        self.set_header("Content-Type", OUTPUTS[output].media_type)
        # The PDF viewer of a browser does not open in a sandbox.
        policy = _PAGE_POLICY if OUTPUTS[output].runs_code else _PAPER_POLICY
        self.set_header("Content-Security-Policy", policy)
        self.set_header("Cache-Control", "no-store")
        name = quote(output_path(item, output).name)
        self.set_header("Content-Disposition", f"inline; filename*=utf-8''{name}")
        self.finish(content)
