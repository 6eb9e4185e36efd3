"""Putting a lesson together without programming: in a form in the browser, or by commands."""
