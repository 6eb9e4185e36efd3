"""Files of installed widgets, at addresses that only scripts ask for."""

from __future__ import annotations

from typing import Any

from jupyter_server.base.handlers import FileFindHandler


class StatusOnly:
    """Answers an error with its number only, at addresses that only scripts ask for."""

    def write_error(self, status_code: int, **_: Any) -> None:
        """Answer with the number."""
        self.finish(str(status_code))


class ExtensionFiles(StatusOnly, FileFindHandler):
    """The scripts of widgets that are installed here, which Voila's front end loads."""
