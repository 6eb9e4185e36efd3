"""The page of the shelf, and its button for copied rounds."""

from __future__ import annotations

from urllib.parse import urlencode

from manipulatives.serve.handlers.page import ShelfHandler
from manipulatives.shelf.copies import renumber
from manipulatives.shelf.outputs import ON_THE_SHELF, OUTPUTS


class ShelfPage(ShelfHandler):
    """The page of the shelf."""

    def get(self) -> None:
        """Show every lesson found."""
        if "token" in self.request.arguments:
            # The cookie holds it from here on; an address is easily read on a screen.
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


class Renumber(ShelfHandler):
    """Gives a copied round other numbers."""

    def post(self, name: str) -> None:
        """Write another seed into the lesson's file."""
        item = self.item(name)
        renumber(item, self.get_body_argument("round", ""))
        self.redirect(f"{self.base_url}?{urlencode({'renumbered': name})}", status=303)
