"""An outside opinion on what a page is like for those who hear it or steer it by keys."""

from __future__ import annotations

from typing import TYPE_CHECKING

from axe_playwright_python.sync_playwright import Axe

if TYPE_CHECKING:
    from playwright.sync_api import Page

# The levels A and AA of the Web Content Accessibility Guidelines 2.2 (W3C Recommendation, 2023).
LEVELS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa"]


def faults(page: Page) -> list[str]:
    """What the axe checker finds wrong on a page: rule, element and reason, one line each."""
    options = {"runOnly": {"type": "tag", "values": LEVELS}, "resultTypes": ["violations"]}
    found = Axe().run(page, options=options).response["violations"]
    return [
        f"{fault['id']} on {node['html'][:120]}: {node['failureSummary']}"
        for fault in found
        for node in fault["nodes"]
    ]
