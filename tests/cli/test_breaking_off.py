"""Ctrl-C while the command is being loaded: no traceback, and the exit code that shells know."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

REPO = Path(__file__).resolve().parents[2]
BROKEN_OFF_AT = """
import sys

class Hand:
    def find_spec(self, name, *_):
        if name == AT:
            raise KeyboardInterrupt

AT = sys.argv.pop()
sys.meta_path.insert(0, Hand())
sys.argv.append("rules")
from budgetfix.cli import main
main()
"""


@pytest.mark.parametrize("module", ["budgetfix.cli.streams", "budgetfix.cli.app", "typer", "budgetfix.cli.commands"])
def test_breaking_off_says_nothing(module: str) -> None:
    """Whichever import it falls into, the first ones included: exit code 130 and not a word."""
    done = subprocess.run(
        [sys.executable, "-c", BROKEN_OFF_AT, module],
        env=os.environ | {"PYTHONPATH": str(REPO)},
        capture_output=True,
        text=True,
        timeout=120,
    )
    assert (done.returncode, done.stdout, done.stderr) == (130, "", "")
