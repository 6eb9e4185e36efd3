"""The notebook of a lesson in JupyterLab."""

from __future__ import annotations

from tornado.escape import xhtml_escape

from manipulatives.serve.handlers.page import ShelfHandler
from manipulatives.serve.lab import LabProblem
from manipulatives.shelf.item_outputs import notebook_path


class OpenNotebook(ShelfHandler):
    """The notebook of a lesson in JupyterLab; written first where there is none yet."""

    async def post(self, name: str) -> None:
        """Open it, and say meanwhile that JupyterLab is starting."""
        item = self.item(name)
        file = notebook_path(item)
        self.set_page_headers()
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
