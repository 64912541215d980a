"""A command that needs no heavy package does not pay for one: `--help` and `--version` stay quick."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from tests.laws.source import REPO, plant

HEAVY = ("highspy", "numpy", "openpyxl", "pandas", "pulp", "shapely", "xlsxwriter")


def loaded(root: Path, module: str) -> list[str]:
    """Heavy packages that importing a module drags in, seen from a fresh process."""
    words = f"import sys; sys.path.insert(0, {str(root)!r}); import {module}; print(*sorted(sys.modules))"
    done = subprocess.run([sys.executable, "-c", words], cwd=root, capture_output=True, text=True, check=True)
    return sorted(set(done.stdout.split()) & set(HEAVY))


def test_the_command_line_starts_light() -> None:
    """Importing the command line and its commands loads no heavy package."""
    assert loaded(REPO, "budgetfix.cli") == []
    assert loaded(REPO, "budgetfix.cli.app") == []


def test_a_planted_heavy_import_is_found(tmp_path: Path) -> None:
    """One import of openpyxl at the top of a module is seen."""
    plant(tmp_path, {"planted.py": "import openpyxl\n"})
    assert "openpyxl" in loaded(tmp_path, "planted")
