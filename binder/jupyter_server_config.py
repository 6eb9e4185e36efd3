# ruff: noqa: INP001 - a setting of the trial, no module of a package
"""What the server of a hosted trial does: it shows the shelf before anything else.

The shelf is a process of its own behind the server, which knows who may come in; notebooks open
in the JupyterLab that the server is.
"""

from __future__ import annotations

c = get_config()  # noqa: F821 - Jupyter runs this file with it

c.ServerProxy.servers = {
    "shelf": {
        "command": [
            *("manipulatives", "serve", "notebooks", "--no-browser"),
            *("--port", "{port}", "--base", "{base_url}shelf/"),
            *("--lab", "{base_url}lab/tree/notebooks"),
        ],
        "absolute_url": True,
        "timeout": 60,
        "launcher_entry": {"title": "Shelf"},
    }
}
c.ServerApp.default_url = "/shelf/"
c.LabApp.default_url = "/shelf/"
