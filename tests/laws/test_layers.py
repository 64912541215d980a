"""Law 1 and 3: the import contracts of pyproject.toml hold, and each fails on a planted violation."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.laws.source import REPO

LINTER = Path(sys.executable).with_name("lint-imports")


def lint(root: Path) -> tuple[int, str]:
    """Exit code and words of the import contracts over the package below `root`."""
    done = subprocess.run([LINTER, "--no-logo", "--no-cache"], cwd=root, capture_output=True, text=True, timeout=120)
    return done.returncode, " ".join((done.stdout + done.stderr).split())


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """The package and its contracts, copied, to plant violations in."""
    shutil.copytree(REPO / "budgetfix", tmp_path / "budgetfix", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(REPO / "pyproject.toml", tmp_path)
    return tmp_path


def test_no_folder_imports_upwards_or_sideways() -> None:
    """The package keeps every import contract."""
    code, words = lint(REPO)
    assert code == 0, words


@pytest.mark.parametrize(
    ("module", "line", "contract"),
    [
        ("base/planted.py", "import budgetfix.room.survey", "A folder imports only from rows below its own BROKEN"),
        (
            "catalog/planted.py",
            "import budgetfix.inspection.rule",
            "A folder imports only from rows below its own BROKEN",
        ),
        ("framing/planted.py", "import pulp", "Only optimize imports pulp or highspy BROKEN"),
        ("cli/planted.py", "from highspy import Highs", "Only optimize imports pulp or highspy BROKEN"),
    ],
    ids=["upwards", "sideways", "solver in framing", "solver in cli"],
)
def test_a_planted_import_breaks_its_contract(copy: Path, module: str, line: str, contract: str) -> None:
    """One forbidden import line is enough to fail, and the contract it broke is named."""
    (copy / "budgetfix" / module).write_text(line + "\n", "utf-8")
    code, words = lint(copy)
    assert code == 1
    assert contract in words


@pytest.mark.parametrize(
    ("folder", "contract"),
    [
        ("inspection/rules", "No rule imports another rule BROKEN"),
        ("remedies/kinds", "No remedy kind imports another kind BROKEN"),
    ],
)
def test_two_rules_or_kinds_that_know_each_other_fail(copy: Path, folder: str, contract: str) -> None:
    """A rule that leans on another rule, or a kind on another kind, breaks independence."""
    dotted = folder.replace("/", ".")
    (copy / "budgetfix" / folder / "planted_one.py").write_text("", "utf-8")
    (copy / "budgetfix" / folder / "planted_two.py").write_text(f"import budgetfix.{dotted}.planted_one\n", "utf-8")
    code, words = lint(copy)
    assert code == 1
    assert contract in words


def test_a_folder_that_nobody_planned_fails(copy: Path) -> None:
    """A new folder must be given its row in the contracts before it may exist."""
    (copy / "budgetfix" / "utils").mkdir()
    (copy / "budgetfix" / "utils" / "__init__.py").write_text("", "utf-8")
    code, words = lint(copy)
    assert code == 1
    assert "utils" in words
