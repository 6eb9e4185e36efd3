"""Packages that the kit's own processes do not import, and that others still can."""

from __future__ import annotations

import subprocess
import sys

FAST = "from manipulatives.notebook.fast_import import import_nbformat_fast; import_nbformat_fast()"


def printed(code):
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    return done.stdout.split()


def test_notebooks_and_the_server_load_without_the_slow_parsers():
    code = f"{FAST}; import sys, nbformat, voila.app; print('rfc3987_syntax' in sys.modules)"
    assert printed(code) == ["False"]


def test_whoever_asks_for_the_slow_module_afterwards_gets_it():
    code = (
        f"{FAST}; from rfc3987_syntax import is_valid_syntax as valid; print(valid('iri', 'a:b'))"
    )
    assert printed(code) == ["True"]


def test_a_schema_checker_that_is_loaded_already_stays_as_it_is():
    code = f"import jsonschema._format as f; {FAST}; print('iri' in f.FormatChecker.checkers)"
    assert printed(code) == ["True"]


def test_commands_that_read_no_notebook_do_not_load_what_reads_them():
    code = (
        "import sys; from manipulatives.cli import main; main(['skills', 'time']); "
        "print(*(name for name in ('nbformat', 'jsonschema') if name in sys.modules))"
    )
    assert printed(code)[-1] not in ("nbformat", "jsonschema")
