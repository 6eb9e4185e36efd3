"""Each table and each file that more than one floor reads, stated once."""

from __future__ import annotations
