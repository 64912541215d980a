"""The rest of random jobs, with random ticks, sums and minutes, against every subset of the outside path.

The rest of that with nothing new typed is the same again.
"""

from __future__ import annotations

from pathlib import Path
from random import Random

import pytest

from budgetfix.optimize.problem import NoPlan
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.planning import planned
from budgetfix.pipeline.replanning import NoRest, Replanned, replanned
from tests.pipeline.outside_rest import Typed, outside, typed, write_plain
from tests.pipeline.ticked import back, ids, read_at, wish
from tests.proof.job_files import read_job

JOBS = 120
PARTS = 12


def differences(folder: Path, at: int) -> list[str]:
    """On what the tool and the outside path disagree about the rest of one random job."""
    write_plain(folder, at)
    job, plain = read_at(folder), read_job(folder)
    book = planned(job, wish())
    if isinstance(book, NoPlan) or not book.proven:
        return []
    told = typed(back(book), Random(f"ticks {at}"), plain)
    found = replanned(job, told.so_far, told.day, wish())
    rest = outside(plain, told)
    if isinstance(found, NoRest):
        loose = rest.stuck(rest.barred | rest.begun).best()
        return [] if loose is None else [f"no plan; outside: {loose}"]
    unended = frozenset(found.left.rest.unended)
    fewer = [one for one in sorted(unended - rest.barred) if rest.stuck(unended - {one}).best() is not None]
    if fewer or not rest.barred <= unended:
        return [f"{fewer} could be ended"]
    rest = rest.stuck(unended)
    best = rest.best()
    if best is None:
        return [f"tool: {ids(found.book)}; outside: no plan"]
    return (
        _unlike(found.book, best.hazards, best.points, best.spent, [id for id in best.chosen if id not in rest.done])
        + _promises(found.book, told, rest.spent)
        + _again(found, replanned(job, back(found.book), told.day, wish()))
    )


def _again(first: Replanned, second: Replanned | NoRest) -> list[str]:
    """Replanned a second time with nothing typed, all is as the first time."""
    if isinstance(second, NoRest):
        return ["no plan the second time"]
    once, twice = map(_sums, (first, second))
    return [] if once == twice else [f"once {once}, twice {twice}"]


def _sums(one: Replanned) -> tuple[object, ...]:
    paid, book = one.left.paid, one.book
    return paid.spent_minor, paid.over_minor, book.spent_minor, book.points_after, ids(book)


def _unlike(book: PlanBook, hazards: int, points: int, spent: int, chosen: list[str]) -> list[str]:
    mine = (book.hazard_points_after, book.points_after, sorted(ids(book)))
    theirs = (hazards, points, sorted(chosen))
    found = [] if mine == theirs else [f"tool {mine}, outside {theirs}"]
    fixed = sum(line.line_minor for line in book.money if line.kind == "fixed")
    return found + ([] if book.spent_minor == spent + fixed else [f"spent {book.spent_minor}, outside {spent + fixed}"])


def _promises(book: PlanBook, told: Typed, spent: int) -> list[str]:
    """Spent and planned within the money; at most five lines of 79 columns."""
    assert told.so_far.remembered.budget_minor == (
        None if book.budget_minor is None else told.so_far.remembered.budget_minor
    )
    budget, found = told.so_far.remembered.budget_minor, []
    fixed = sum(line.line_minor for line in book.money if line.kind == "fixed")
    if budget is not None and book.spent_minor - fixed and spent + book.spent_minor > budget:
        found.append(f"{spent} paid and {book.spent_minor} to come of {budget}")
    return found


@pytest.mark.parametrize("part", range(PARTS))
def test_the_rest_of_random_jobs_equals_trying_everything(tmp_path: Path, part: int) -> None:
    """Whatever is ticked, paid, sold out or late, the rest is the one that trying everything finds."""
    wrong = {at: differences(tmp_path / str(at), at) for at in range(part, JOBS, PARTS)}
    assert {at: words for at, words in wrong.items() if words} == {}
