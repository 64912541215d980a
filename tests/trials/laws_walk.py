"""One job through the whole walk: files on disk, read, inspected, chosen, fitted again, checked, made into a book."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from random import Random
from typing import Any

from budgetfix.base.problems import FilesRefused
from budgetfix.exports.plan_json import plan_object
from budgetfix.exports.survey_yaml import survey_yaml
from budgetfix.intake.job import Job
from budgetfix.outcome.book import NextStep, PlanBook
from budgetfix.outcome.check import ClaimFails, checked
from budgetfix.outcome.make import Around, make_book
from budgetfix.pipeline.planning import Walked, Wish, walked
from budgetfix.pipeline.reading import JobOptions, read
from budgetfix.room.survey import Survey

Raw = dict[str, Any]
ORDERED = date(2026, 6, 1)
SECONDS = 120.0
NOTHING = Around("", "", SECONDS, None, None, (), NextStep(), (), ())
"""Nothing beside the best plan: other plans, the curve and why not have tests of their own."""


@dataclass(frozen=True)
class Files:
    """A job as data, so that one thing in it can be made otherwise. `faults`: rows of faults.csv."""

    brief: Raw
    catalog: Raw
    faults: tuple[Raw, ...] = ()
    survey: Survey | None = None

    def with_(self, **new: Any) -> Files:
        """The same with other parts, nothing shared with this one."""
        parts = {"brief": self.brief, "catalog": self.catalog, "faults": self.faults} | new
        survey = parts.pop("survey", self.survey)
        return Files(**json.loads(json.dumps(parts)), survey=survey)

    @property
    def must_all(self) -> bool:
        """Everything on offer must be done."""
        return "all" in (self.brief.get("must") or ())

    def put(self, folder: Path) -> None:
        """Write them, in a folder of their own. JSON text is YAML."""
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir(parents=True)
        (folder / "brief.yaml").write_text(json.dumps(self.brief), "utf-8")
        (folder / "catalog.yaml").write_text(json.dumps(self.catalog), "utf-8")
        if self.survey is not None:
            (folder / "survey.yaml").write_bytes(survey_yaml(self.survey))
        if self.faults:
            rows = [f"{one['fault']},{one['points']},{one['safety']}" for one in self.faults]
            (folder / "faults.csv").write_text("\n".join(["fault,points,safety", *rows, ""]), "utf-8")


@dataclass(frozen=True)
class Told:
    """What the walk makes of a job. `wish`: what its plan is chosen by, as far as it is proven; less is better.

    `plan`: as `plan --json` prints it. `offered`: ids of all candidates. `findings`: all that was inspected before.
    """

    plan: Raw
    wish: tuple[int, ...]
    offered: tuple[str, ...]
    findings: tuple[str, ...]
    proven: bool
    hazard_points: int
    job: Job
    book: PlanBook

    @property
    def chosen(self) -> tuple[str, ...]:
        """Ids of what the plan does."""
        return tuple(sorted(one["id"] for one in self.plan["chosen"]))

    @property
    def sums(self) -> tuple[int, ...]:
        """Hazard points, points, money and person-minutes."""
        plan = self.plan
        return (self.hazard_points, plan["points_after"], plan["spent_minor"], sum(plan["minutes_used"]))

    @property
    def figures(self) -> tuple[Any, ...]:
        """What a person reads as the plan: what is done, what is left, what it costs, and when."""
        return (self.sums, self.plan["chosen"], self.plan["purchases"], self.plan["left"], self.plan["new"])


def told(files: Files, folder: Path) -> Told | None:
    """The plan of a job; None where no plan keeps every wish. Errors: ClaimFails, FilesRefused."""
    files.put(folder)
    return told_of(folder)


def told_of(folder: Path) -> Told | None:
    """The plan of the job in a folder."""
    job = read(folder, JobOptions(), ORDERED)
    walk = walked(job, Wish(SECONDS, _still))
    if not isinstance(walk, Walked):
        return None
    base, framed = walk.seen.base, walk.offer.framed
    found = checked(base, framed, walk.answer.plan)
    book = make_book(base, framed, walk.answer, found, NOTHING)
    return Told(
        json.loads(json.dumps(plan_object(book, ()))),
        _wish(job.brief.must_all, job.brief.hazards_first, book),
        tuple(sorted(framed.candidates)),
        tuple(sorted({one.rule for one in walk.seen.findings})),
        book.proven,
        book.hazard_points_after,
        job,
        book,
    )


def _still() -> float:
    """A clock that stands: how far a plan gets must not depend on the machine."""
    return 0.0


def _wish(everything: bool, hazards_first: bool, book: PlanBook) -> tuple[int, ...]:
    """The household's wishes in their order; where all must be done, sessions and money come first."""
    left = (book.hazard_points_after, book.points_after)
    if everything:
        last = max((task.session or 0 for task in book.tasks), default=0)
        return (last, book.spent_minor, *left)
    return left if hazards_first else (sum(left),)


@dataclass(frozen=True)
class Case:
    """One job, the plan that it has (None: it has none), and the dice for what is to be made otherwise."""

    files: Files
    before: Told | None
    dice: Random


@dataclass(frozen=True)
class Changed:
    """A job made otherwise. `apart`: why the law is known not to hold for some like it. `about`: what was changed.

    `instead`: the job that it is held against, where that is not the one at hand.
    """

    files: Files
    apart: str = ""
    about: str = ""
    instead: Files | None = None


@dataclass(frozen=True)
class Law:
    """One promise. `change` makes the other job (None: there is none); `wrong` says what does not hold, or nothing.

    `may_end`: the other job may have no plan. `may_begin`: it may have one where this one has none.
    """

    slug: str
    promise: str
    change: Callable[[Case], Changed | None]
    wrong: Callable[[Told, Told, Changed], str]
    may_end: bool = False
    may_begin: bool = False


def not_worse(before: Told, after: Told, _: Changed) -> str:
    """The second is at least as good, by the household's own wishes."""
    return "" if after.wish <= before.wish else f"{before.wish} became {after.wish}"


def not_better(before: Told, after: Told, _: Changed) -> str:
    """The second is at most as good."""
    return "" if after.wish >= before.wish else f"{before.wish} became {after.wish}"


def same(before: Told, after: Told, _: Changed) -> str:
    """The two plans are one."""
    names = ("sums", "chosen", "purchases", "left", "new")
    return "; ".join(
        f"{name}: {one} became {other}"
        for name, one, other in zip(names, before.figures, after.figures, strict=True)
        if one != other
    )


@dataclass(frozen=True)
class Tried:
    """One law on one job: `held`, `broken`, `no plan` in both, `set aside`, `nothing to change`."""

    law: str
    came: str
    words: str = ""


def tried(law: Law, case: Case, folder: Path) -> Tried:
    """Try one law on one job, in a folder that may be written over."""
    other, before = law.change(case), case.before
    if other is None:
        return Tried(law.slug, NONE)
    try:
        before = before if other.instead is None else told(other.instead, folder)
        after = told(other.files, folder)
    except ClaimFails as fails:
        return Tried(law.slug, BROKEN, f"the check of the plan failed: {fails}")
    except FilesRefused as refused:
        return Tried(law.slug, BROKEN, f"refused: {'; '.join(map(str, refused.problems))}")
    words = _words(law, before, after, other)
    if words is None:
        return Tried(law.slug, NO_PLAN if before is None else UNPROVEN)
    return Tried(law.slug, (other.apart or BROKEN) if words else HELD, words)


HELD, BROKEN, NONE, NO_PLAN, UNPROVEN = "held", "broken", "nothing to change", "no plan", "unproven"


def _words(law: Law, before: Told | None, after: Told | None, other: Changed) -> str | None:
    """What does not hold; None where nothing can be said."""
    if before is None:
        return None if after is None else ("" if law.may_begin else "a plan where there was none")
    if after is None:
        return "" if law.may_end else "no plan any more"
    return law.wrong(before, after, other) if before.proven and after.proven else None
