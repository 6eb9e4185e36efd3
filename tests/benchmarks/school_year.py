"""How long a school year takes to make: 180 lessons, each with notebook, page, sheet, key, script.

Run it by hand: ``python tests/benchmarks/school_year.py [DAYS]``. It begins the command that a
teacher would, in a process of its own, and prints seconds, megabytes and peak memory; then it stops
the command half-way in a second folder and says how long the rest takes.
"""

from __future__ import annotations

import datetime as dt
import resource
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from manipulatives.lessons.catalogue.skills import SKILLS
from manipulatives.lessons.editing import changed, new_seed, with_round
from manipulatives.lessons.files import write_lesson
from manipulatives.lessons.lesson import Lesson

DAYS = 180
ROUNDS = 4
FIRST = dt.date(2026, 9, 1)
MAKE = """
import argparse, signal, sys
from manipulatives.commands import make as make

if __name__ == "__main__":
    # What runs in the background of a shell does not hear Ctrl+C unless it asks to.
    signal.signal(signal.SIGINT, signal.default_int_handler)
    parser = argparse.ArgumentParser()
    make.arguments(parser)
    try:
        print(make.run(parser.parse_args(sys.argv[1:])))
    except KeyboardInterrupt:
        print("stopped")
"""
FORMS = 5


def school_days(count: int) -> list[dt.date]:
    """Return so many school days, Monday to Friday."""
    days: list[dt.date] = []
    day = FIRST
    while len(days) < count:
        if day.isoweekday() <= 5:
            days.append(day)
        day += dt.timedelta(days=1)
    return days


def write_year(folder: Path, count: int) -> None:
    """Write the lesson files of a year: every skill comes, and comes back."""
    skills = [*SKILLS]
    for number, day in enumerate(school_days(count)):
        lesson = Lesson(f"{day:%A} {day.day} {day:%B}", seed=new_seed(str(day)), date=day)
        # A prime step takes the rounds of a day from different strands.
        for place in range(ROUNDS):
            lesson = with_round(lesson, skills[(number + 17 * place) % len(skills)])
            lesson = changed(lesson, place, tasks=4)
        write_lesson(lesson, folder / f"{day}.toml")


def begin(script: Path, lessons: Path, into: Path) -> subprocess.Popen[bytes]:
    """Begin to make everything, as the command line does."""
    return subprocess.Popen([sys.executable, str(script), str(lessons), "--into", str(into)])


def told(into: Path) -> str:
    """Say how many files there are and how large they are."""
    files = [path for path in into.iterdir() if not path.name.startswith(".")]
    size = sum(path.stat().st_size for path in files) / 1e6
    return f"{len(files)} files, {size:.1f} MB"


def main(count: int) -> None:
    """Make a year and print what it took."""
    with tempfile.TemporaryDirectory() as name:
        top = Path(name)
        lessons = top / "lessons"
        lessons.mkdir()
        script = top / "make.py"
        script.write_text(MAKE)
        write_year(lessons, count)

        since = time.perf_counter()
        status = begin(script, lessons, top / "year").wait()
        whole = time.perf_counter() - since
        peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
        print(f"{count} lessons: {whole:.1f} s, {told(top / 'year')}, status {status}")
        print(f"largest process at its peak: {peak:.0f} MB; two of them work at once")

        since = time.perf_counter()
        begin(script, lessons, top / "year").wait()
        print(f"once more with nothing to do: {time.perf_counter() - since:.1f} s")

        stopped = begin(script, lessons, top / "again")
        time.sleep(whole / 2)
        stopped.send_signal(signal.SIGINT)
        stopped.wait()
        half = told(top / "again")
        since = time.perf_counter()
        begin(script, lessons, top / "again").wait()
        rest = time.perf_counter() - since
        print(f"stopped half-way with {half}; the rest: {rest:.1f} s, {told(top / 'again')}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else DAYS)
