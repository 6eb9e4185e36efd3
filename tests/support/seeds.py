"""How many seeds are tried of every skill; a thorough run (SLOW_TESTS=1) tries a thousand."""

from __future__ import annotations

import os

THOROUGH = "SLOW_TESTS" in os.environ
SEEDS = 1_000 if THOROUGH else 50
