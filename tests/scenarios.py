"""The three demo jobs, each read and planned once a process, for every test that asks about its plan."""

from __future__ import annotations

import shutil
import time
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import cache, cached_property
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch

import pytest

from budgetfix.framing.measured import changed_by
from budgetfix.inspection.finding import Finding
from budgetfix.intake.job import Job
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.candidates import offered
from budgetfix.pipeline.inspecting import Inspected, inspected
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.reading import JobOptions, read
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.fit import candidates
from budgetfix.room.survey import Survey

SCENARIOS = ("renter", "stager", "couple")
EACH = pytest.mark.parametrize("name", [pytest.param(name, marks=pytest.mark.xdist_group(name)) for name in SCENARIOS])
"""A test of every demo plan; tests of one plan run in one process, which makes it once."""
RENTER = pytest.mark.xdist_group("renter")
"""A test of the renter's plan alone."""
DEMO = Path(__file__).resolve().parent.parent / "catalog_demo"
TODAY = date(2026, 6, 1)


@dataclass(frozen=True)
class Planned:
    """One run: the job, its plan, what was found before, and what was on offer."""

    job: Job
    book: PlanBook
    before: Inspected
    offer: Mapping[str, Candidate]

    @property
    def ids(self) -> tuple[str, ...]:
        return tuple(row.id for row in self.book.chosen)

    @cached_property
    def chosen(self) -> tuple[Candidate, ...]:
        return tuple(self.offer[id] for id in self.ids)

    @cached_property
    def after(self) -> Inspected:
        """The changed rooms inspected anew, by a path of their own."""
        assert self.job.survey is not None
        room = changed_by(self.job.survey, self.offer, self.ids)
        return inspected(replace(self.job, survey=room))


@cache
def job(name: str) -> Job:
    """A copy of a demo job, read."""
    with TemporaryDirectory() as there:
        folder = Path(there) / name
        shutil.copytree(DEMO / name, folder)
        return read(folder, JobOptions(), TODAY)


@cache
def run(name: str) -> Planned:
    """A demo job planned at its own budget, with little time for what stands beside the plan."""
    mine = job(name)
    with patch("budgetfix.pipeline.around.BESIDE", 0.1), patch("budgetfix.pipeline.around.GOODS", 0.02):
        book = planned(mine, Wish(60.0, time.monotonic))
    assert isinstance(book, PlanBook)
    before = inspected(mine)
    return Planned(mine, book, before, offered(before.base).framed.candidates)


@cache
def theirs(name: str) -> Mapping[str, Candidate]:
    """The remedies of a job's own catalogue, by id, whether or not they would be worth it."""
    mine = job(name)
    return {one.id: one for one in candidates(mine.survey, mine.catalog, mine.brief, ())}


def room_with(name: str, ids: Iterable[str]) -> Survey:
    """The rooms of a job as they stand after some of its remedies, and nothing else."""
    survey = job(name).survey
    assert survey is not None
    return changed_by(survey, theirs(name), ids)


def seen_with(name: str, ids: Iterable[str] = ()) -> Mapping[str, Finding]:
    """Every fault, by `rule/subject`, of the rooms as they stand after some remedies."""
    after = inspected(replace(job(name), survey=room_with(name, ids)))
    return {finding.id: finding for finding in after.findings if finding.fault}
