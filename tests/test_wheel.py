"""The wheel that users install is complete."""

from __future__ import annotations

import subprocess
import sys
import zipfile

import pytest

from support.files import PACKAGE, ROOT, files


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    """The wheel, built with what is installed here and no network."""
    folder = tmp_path_factory.mktemp("wheel")
    done = subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "--target", "wheel", "--directory", folder],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    (built,) = folder.glob("*.whl")
    return built


def test_every_file_of_the_package_is_in_the_wheel(wheel):
    inside = set(zipfile.ZipFile(wheel).namelist())
    wanted = {path.relative_to(ROOT).as_posix() for path in files(PACKAGE)}
    assert {path.rsplit(".", 1)[-1] for path in wanted} >= {
        "py",
        "js",
        "css",
        "woff2",
        "ttf",
        "txt",
    }
    assert wanted - inside == set()


def test_nothing_but_the_package_and_its_papers_is_in_the_wheel(wheel):
    others = {name.split("/")[0] for name in zipfile.ZipFile(wheel).namelist()} - {"manipulatives"}
    assert len(others) == 1
    assert others.pop().endswith(".dist-info")


def test_the_wheel_carries_the_licences(wheel):
    names = zipfile.ZipFile(wheel).namelist()
    assert any(name.endswith(".dist-info/licenses/LICENSE") for name in names)
    assert "manipulatives/data/font/OFL.txt" in names


def test_the_package_works_from_where_the_wheel_was_unpacked(wheel, tmp_path):
    zipfile.ZipFile(wheel).extractall(tmp_path)
    code = (
        "import sys; sys.path.insert(0, sys.argv[1])\n"
        "import manipulatives\n"
        "print(manipulatives.__file__)\n"
        "print(len(manipulatives.Clock()._esm), len(manipulatives.Clock()._css))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, tmp_path],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    place, sizes = done.stdout.splitlines()
    assert place == str(tmp_path / "manipulatives" / "__init__.py")
    assert all(int(size) > 1000 for size in sizes.split())
