"""The same job gives the same bytes, whatever order Python's sets fall in."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path
from random import Random

import pytest

from tests.laws.source import REPO

SEEDS = ("0", "1", "2", "3")
CHOOSER = """
import sys, time
from tests.scenarios import job
from budgetfix.optimize import Growth, solve
from budgetfix.pipeline.candidates import offered
from budgetfix.pipeline.inspecting import inspected
framed = offered(inspected(job(sys.argv[1])).base).framed
growth = Growth(framed.problem, asks=300)
print(solve(framed.problem, seconds=300, clock=time.monotonic, growth=growth))
"""


def said(words: list[str], cwd: Path, seed: str) -> bytes:
    """Standard output of `python WORDS` under one hash seed."""
    surroundings = os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": str(REPO)}
    done = subprocess.run([sys.executable, *words], cwd=cwd, env=surroundings, capture_output=True, timeout=900)
    assert done.returncode == 0, done.stderr.decode()
    return done.stdout


def planned(folder: Path, desk: Path, seed: str = "0") -> tuple[bytes, dict[str, bytes]]:
    """What `plan --json` prints for a copy of a folder, and every file that is there then.

    The seconds are many, so that a slow machine leaves nothing out either.
    """
    shutil.copytree(folder, desk / "job")
    spoken = said(["-m", "budgetfix", "plan", "job", "--json", "--seconds", "600"], desk, seed)
    return spoken, {path.name: path.read_bytes() for path in sorted((desk / "job").iterdir()) if path.is_file()}


@pytest.mark.slow
def test_a_plan_does_not_depend_on_the_hash_seed(tmp_path: Path) -> None:
    """What is printed and each file that is written are the same, byte for byte, under four hash seeds."""
    answers = [planned(REPO / "catalog_demo" / "renter", tmp_path / seed, seed) for seed in SEEDS]
    assert {"plan.xlsx", "plan.html", "plan.ics", "buy.csv", "do.csv"} <= set(answers[0][1])
    assert all(answer == answers[0] for answer in answers)


@pytest.mark.slow
@pytest.mark.parametrize("scenario", ["stager", "couple"])
def test_the_chooser_does_not_depend_on_the_hash_seed(scenario: str, tmp_path: Path) -> None:
    """The answer with its rounds, for rooms with people, waits and dates, under two hash seeds."""
    answers = {said(["-c", CHOOSER, scenario], tmp_path, seed) for seed in SEEDS[:2]}
    assert len(answers) == 1
    assert b"proven=True" in answers.pop()


def tied(folder: Path, order: Random | None = None) -> None:
    """A job in which almost everything is equal: rounded prices and points, every third remedy twice."""
    points = [f"f{fault},{20 + 10 * (fault % 3)}" for fault in range(1, 10)]
    remedies = [
        {
            "remedy": f"r{number:02}",
            "answers": {f"f{1 + number % 9}": 0.5 + 0.5 * (number % 2)},
            "cost": 5 * (1 + number % 3),
            "hours": 0.5,
            "uses": {"paint": 1} if number % 4 == 0 else {},
            "pick_one": f"g{number % 5}" if number % 2 else None,
        }
        for number in range(24)
    ]
    remedies += [{**one, "remedy": f"{one['remedy']}-twin"} for one in remedies[::3]]
    catalog = {"currency": "USD", "products": [{"product": "paint", "price": 5}, {"product": "oil", "price": 5}]}
    if order is not None:
        for rows in (points, remedies, catalog["products"]):
            order.shuffle(rows)  # type: ignore[arg-type]
    folder.mkdir()
    (folder / "faults.csv").write_text("\n".join(["fault,points", *points]) + "\n", encoding="utf-8")
    whole = {**catalog, "remedies": [{key: value for key, value in one.items() if value} for one in remedies]}
    (folder / "catalog.yaml").write_text(json.dumps(whole), encoding="utf-8")
    (folder / "brief.yaml").write_text(
        json.dumps({"currency": "USD", "budget": 40, "hours": [1.5, 1, 1]}), encoding="utf-8"
    )


@pytest.mark.slow
def test_ties_and_the_order_of_lines_change_nothing(tmp_path: Path) -> None:
    """Full of ties, under four hash seeds and with the lines of every file in other orders: the same object."""
    tied(tmp_path / "plain")
    spoken, written = planned(tmp_path / "plain", tmp_path / "0")
    for seed in SEEDS[1:]:
        assert planned(tmp_path / "plain", tmp_path / seed, seed) == (spoken, written)
        tied(tmp_path / f"mixed {seed}", Random(seed))
        assert planned(tmp_path / f"mixed {seed}", tmp_path / f"again {seed}", seed)[0] == spoken


def test_an_answer_in_the_order_of_a_set_is_found(tmp_path: Path) -> None:
    """Printing a set of words gives different bytes under these four seeds, so the test above can fail."""
    words = ["-c", "print({'rug', 'rod', 'lamp', 'sofa', 'shelf', 'mirror', 'panel', 'hook'})"]
    assert len({said(words, tmp_path, seed) for seed in SEEDS}) > 1
