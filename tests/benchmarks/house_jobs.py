"""The houses as problems of the chooser, by the same walk that plans them."""

from __future__ import annotations

import json
import tempfile
import time
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from budgetfix.optimize import Growth, impossible
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Extra, Problem
from budgetfix.optimize.search import Search
from budgetfix.optimize.solver import Program, Terms
from budgetfix.pipeline.candidates import offered
from budgetfix.pipeline.inspecting import inspected
from budgetfix.pipeline.reading import JobOptions, read
from tests.benchmarks.as_jobs import house
from tests.pipeline.listed_job import TODAY

FOLDER = Path(__file__).parent / "houses"


@dataclass(frozen=True)
class House:
    """A house, framed. `points`: what its faults weigh; `best`, `spend_minor`: the published optimum."""

    name: str
    problem: Problem
    points: int
    best: int
    spend_minor: int

    @property
    def left(self) -> int:
        """Points that remain in the best plan."""
        return self.points - self.best


def names(*rooms: int) -> tuple[str, ...]:
    """Houses of these sizes, by name."""
    return tuple(path.stem for size in rooms for path in sorted(FOLDER.glob(f"house_{size:02}rooms_*.json")))


@cache
def house_job(name: str) -> House:
    """One house."""
    text = (FOLDER / f"{name}.json").read_text(encoding="utf-8")
    optimum = json.loads((FOLDER / "optima.json").read_text(encoding="utf-8"))[f"{name}.json"]
    with tempfile.TemporaryDirectory() as there:
        house(text, Path(there))
        problem = offered(inspected(read(Path(there), JobOptions(), TODAY)).base).framed.problem
    points = sum(fault["points"] for fault in json.loads(text)["faults"])
    return House(name, problem, points, optimum["points"], optimum["cost_minor"])


def first_program(problem: Problem) -> tuple[Program, Terms]:
    """The first program that a solve of this problem hands to the solver, and its objective."""
    facts = Facts.of(problem, without=impossible(problem))
    growth = Growth(problem)
    growth.grow_up_front(frozenset(facts.by_id))
    search = Search(facts, growth, Extra(), time.perf_counter, None, time.perf_counter() + 60.0)
    wish = next(one for one in search.order if search.terms(one))
    return search.program(), search.terms(wish)


def short(name: str) -> str:
    """A house in a few words: 4 rooms, 8 sessions, the first."""
    _, rooms, sessions, number = name.split("_")
    count = int(rooms[:2])
    return f"{count} room{'s' * (count > 1)}, {int(sessions[:2])} sessions, no. {int(number) + 1}"
