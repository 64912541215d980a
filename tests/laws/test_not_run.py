"""A test whose program is missing says NOT RUN, and fails where the gate promised the program."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.laws.source import REPO, plant

PLANTED = '''import pytest


@pytest.mark.{mark}
def test_book():
    """A book opens."""
'''


@pytest.mark.parametrize(
    ("promised", "code", "words"),
    [("", 0, "NOT RUN: {} is missing"), ("1", 1, "{} is missing, and the gate promised it")],
    ids=["elsewhere", "in the gate"],
)
@pytest.mark.parametrize(("mark", "name"), [("libreoffice", "LibreOffice"), ("chromium", "Chromium")])
def test_a_missing_program_is_said(mark: str, name: str, promised: str, code: int, words: str, tmp_path: Path) -> None:
    """Without the program on the path a marked test is skipped with a reason, or fails with one."""
    plant(tmp_path, {"test_planted.py": PLANTED.format(mark=mark)})
    shutil.copy(REPO / "tests" / "conftest.py", tmp_path)
    shutil.copy(REPO / "pyproject.toml", tmp_path)
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-p", "no:cacheprovider", "test_planted.py"],
        cwd=tmp_path,
        env=os.environ | {"PATH": str(tmp_path), "BUDGETFIX_CI": promised},
        capture_output=True,
        text=True,
        timeout=120,
    )
    assert words.format(name) in done.stdout
    assert done.returncode == code
