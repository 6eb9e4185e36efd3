"""`python -m manipulatives` does what `manipulatives` does."""

from __future__ import annotations

import sys

from manipulatives.cli import main

if __name__ == "__main__":
    sys.exit(main())
