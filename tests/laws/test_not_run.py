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


@pytest.mark.libreoffice
def test_book():
    """A book opens."""
'''


@pytest.mark.parametrize(
    ("promised", "code", "words"),
    [("", 0, "NOT RUN: LibreOffice is missing"), ("1", 1, "LibreOffice is missing, and the gate promised it")],
    ids=["elsewhere", "in the gate"],
)
def test_a_missing_program_is_said(promised: str, code: int, words: str, tmp_path: Path) -> None:
    """Without LibreOffice on the path a marked test is skipped with a reason, or fails with one."""
    plant(tmp_path, {"test_planted.py": PLANTED})
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
    assert words in done.stdout
    assert done.returncode == code
