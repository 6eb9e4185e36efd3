"""How long the sheets of 200 lessons take to print, and how large they are.

    python tests/benchmarks/sheets_printed.py [LESSONS]

The lessons are of any skills with any options; every one is printed for pupils. Working out tasks
and laying out pages is timed apart from writing the PDF, in seconds of processor time.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from manipulatives.lessons.settings import ClassSettings, settled
from manipulatives.outputs.sheet.pdf.document import pdf_of
from manipulatives.outputs.sheet.rounds import tasks_by_round
from manipulatives.outputs.sheet.sheet import pages_of
from support.paper import some_lessons

LESSONS = 200


def main(count: int) -> None:
    """Print so many sheets and say what it took."""
    settings = ClassSettings()
    lessons = [settled(lesson, settings) for lesson in some_lessons(count, seed=3)]
    # What is worked out or loaded once is no part of it.
    pdf_of(
        pages_of(lessons[0], tasks_by_round(lessons[0], settings)), title="Once", language="en-US"
    )

    begin = time.process_time()
    drawn = [pages_of(lesson, tasks_by_round(lesson, settings)) for lesson in lessons]
    laid_out = time.process_time() - begin
    begin = time.process_time()
    made = [
        pdf_of(pages, title=lesson.title, language="en-US")
        for lesson, pages in zip(lessons, drawn, strict=True)
    ]
    written = time.process_time() - begin

    pages = sum(map(len, drawn))
    shapes = sum(len(page.shapes) for each in drawn for page in each)
    print(f"{count} lessons, {pages} pages, {shapes} shapes")
    print(f"tasks and layout: {laid_out:.2f} s; PDF: {written:.2f} s")
    kilobytes = sum(map(len, made)) / 1000
    print(f"PDF: {1000 * written / pages:.1f} ms and {kilobytes / pages:.1f} kB a page")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else LESSONS)
