"""Is a workbook open in another program? Told by the file that office programs leave beside it."""

from __future__ import annotations

import os
import shutil
import subprocess
import time
from pathlib import Path

import pytest

from budgetfix.exports.plan_book import plan_book
from budgetfix.intake.open_elsewhere import open_lock
from tests.exports.remembered_book import KEPT


@pytest.mark.parametrize("name", [".~lock.plan.xlsx#", "~$plan.xlsx"])
def test_a_file_beside_it_says_so(tmp_path: Path, name: str) -> None:
    """Common practice: of programs for open documents, and of the usual one on Windows."""
    assert open_lock(tmp_path / "plan.xlsx") is None
    (tmp_path / name).write_bytes(b"somebody")
    assert open_lock(tmp_path / "plan.xlsx") == tmp_path / name
    assert open_lock(tmp_path / "portfolio.xlsx") is None


@pytest.mark.libreoffice
@pytest.mark.slow
def test_a_real_program_that_has_it_open(tmp_path: Path) -> None:
    """LibreOffice, told to open the workbook and to wait: the file is there until the program ends."""
    book = tmp_path / "plan.xlsx"
    book.write_bytes(plan_book(KEPT))
    words = ["--headless", "--norestore", f"-env:UserInstallation={(tmp_path / 'desk').as_uri()}"]
    where = f"--accept=pipe,name=budgetfix{os.getpid()};urp;"
    with subprocess.Popen(
        [str(shutil.which("soffice")), *words, where, str(book)], stdout=subprocess.DEVNULL, start_new_session=True
    ) as office:
        try:
            until = time.monotonic() + 90
            while open_lock(book) is None and time.monotonic() < until:
                time.sleep(0.2)
            assert open_lock(book) == tmp_path / ".~lock.plan.xlsx#"
        finally:
            os.killpg(office.pid, 15)
