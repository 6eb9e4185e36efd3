"""A lesson, or any notebook, as one HTML file that needs no server, no network and no kernel."""

from __future__ import annotations

from manipulatives.outputs.page.page import page_of, page_of_file

__all__ = ["page_of", "page_of_file"]
