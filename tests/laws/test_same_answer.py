"""The same job gives the same bytes, whatever order Python's sets fall in."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.laws.source import REPO

SEEDS = ("0", "1", "2")
JOBS = [("renter", SEEDS), ("stager", SEEDS[:2]), ("couple", SEEDS[:2])]


def said(words: list[str], cwd: Path, seed: str) -> bytes:
    """Standard output of `python WORDS` under one hash seed."""
    surroundings = os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": str(REPO)}
    done = subprocess.run([sys.executable, *words], cwd=cwd, env=surroundings, capture_output=True, timeout=300)
    assert done.returncode == 0, done.stderr.decode()
    return done.stdout


@pytest.mark.slow
@pytest.mark.parametrize(("scenario", "seeds"), JOBS)
def test_a_plan_does_not_depend_on_the_hash_seed(scenario: str, seeds: tuple[str, ...], tmp_path: Path) -> None:
    """What is printed and each file that is written are the same, byte for byte, under other hash seeds.

    The seconds are many, so that a slow machine leaves nothing out either.
    """
    answers = []
    for seed in seeds:
        desk = tmp_path / seed
        shutil.copytree(REPO / "catalog_demo" / scenario, desk / scenario)
        spoken = said(["-m", "budgetfix", "plan", scenario, "--json", "--seconds", "300"], desk, seed)
        written = {path.name: path.read_bytes() for path in sorted((desk / scenario).iterdir()) if path.is_file()}
        answers.append((spoken, written))
    assert {"plan.xlsx", "buy.csv", "do.csv"} <= set(answers[0][1])
    assert all(answer == answers[0] for answer in answers)


def test_an_answer_in_the_order_of_a_set_is_found(tmp_path: Path) -> None:
    """Printing a set of words gives different bytes under these three seeds, so the test above can fail."""
    words = ["-c", "print({'rug', 'rod', 'lamp', 'sofa', 'shelf', 'mirror', 'panel', 'hook'})"]
    assert len({said(words, tmp_path, seed) for seed in SEEDS}) > 1
