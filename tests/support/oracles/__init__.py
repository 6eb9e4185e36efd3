"""Opinions apart from the kit's: each works out the tasks of a strand again."""

from __future__ import annotations
