"""What a practitioner chooses in each demo job, judged as a plan is, and set beside the plan. See `make reports`."""

from __future__ import annotations

import time
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cache

from budgetfix.base.money import write_money
from budgetfix.catalog.bill import bill, total_minor
from budgetfix.framing.frame import frame
from budgetfix.framing.measured import changed_by, gone
from budgetfix.framing.options import errands_of
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.inspect import look_again
from budgetfix.optimize import solve
from budgetfix.optimize.problem import Answer, NoPlan
from budgetfix.outcome.check import Checked, checked, listed_after, uses_of
from budgetfix.pipeline.inspecting import inspected
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.clashes import clashes
from budgetfix.room.overlaps import overlaps
from tests.scenarios import SCENARIOS, job, room_with, run, theirs

Ids = tuple[str, ...]

CHOICES: Mapping[str, Ids] = {
    "renter": ("m01", "m04", "m09", "m10", "m11", "m12", "m15", "m17", "m18", "m19"),
    "stager": (
        "t01", "t02", "t04", "t05", "t09", "t10", "t11", "t13", "t14", "t15", "t17", "t18", "t19", "t20", "t21", "t22",
    ),
    "couple": (
        "n01", "n02", "n03", "n05", "n06", "n08", "n09", "n10", "n11", "n12", "n13", "n15", "n16", "n17", "n18", "n19",
        "n20", "n21", "n22",
    ),
}  # fmt: skip
"""Common practice: what someone of the trade would take at the job's budget."""


@dataclass(frozen=True)
class Figures:
    """What a set comes to. `faults`: points of every fault that is left, by its id."""

    hazard_points: int
    points: int
    spent_minor: int
    minutes: int
    faults: Mapping[str, int]

    @property
    def wish(self) -> tuple[int, int]:
        """The order of wishes: hazard points, then points."""
        return self.hazard_points, self.points


@cache
def judged(name: str, ids: Ids) -> Figures:
    """A set of a job's own remedies: all its changes applied, every room inspected anew, its bill taken off."""
    base, chosen = inspected(job(name)).base, [remedy(name, id) for id in ids]
    after, listed = _left(name, ids), listed_after(base, chosen)
    hazards = sum(one.points for one in after if one.safety)
    points = sum(one.points for one in after if not one.safety)
    hazards += sum(listed[fault.fault] for fault in base.faults if fault.safety)
    points += sum(listed[fault.fault] for fault in base.faults if not fault.safety)
    faults = {one.id: one.points for one in after if one.fault} | {
        fault: left for fault, left in listed.items() if left
    }
    minutes = sum(person_minutes(one) for one in chosen) + _errands(name, chosen)
    return Figures(hazards, points, spent_minor(name, ids), minutes, faults)


def remedy(name: str, id: str) -> Candidate:
    """A remedy of the job's own catalogue, else one that the tool fitted to the room. Errors: KeyError."""
    return theirs(name)[id] if id in theirs(name) else run(name).offer[id]


def _left(name: str, ids: Ids) -> list[Finding]:
    base = inspected(job(name)).base
    assert base.survey is not None
    room = changed_by(base.survey, {id: remedy(name, id) for id in ids}, ids)
    absences = {one.rule.slug: one for one in base.judged}
    return [
        finding
        for block, before in zip(base.blocks, base.seen, strict=True)
        for finding in look_again(
            block, room, base.brief, before, gone(base.survey, room, block.room), absences
        ).findings
    ]


def person_minutes(one: Candidate) -> int:
    """Planned minutes of a remedy, counted for each pair of hands."""
    return sum(work.minutes * work.people for work in one.work)


def _errands(name: str, chosen: Iterable[Candidate]) -> int:
    made = {errand for one in chosen for errand in errands_of(one, job(name).catalog, job(name).brief.errands)}
    return sum(one.minutes * one.people for one in job(name).brief.errands if f"errand:{one.errand}" in made)


def spent_minor(name: str, ids: Ids) -> int:
    """The bill of a set: goods in whole packs with their mark-up, delivery, tax, pay and fixed costs."""
    brief, chosen = job(name).brief, [remedy(name, id) for id in ids]
    lines = bill(
        job(name).catalog,
        [(one.id, one.cost_minor) for one in chosen],
        uses_of(chosen),
        (),
        (),
        [(one.id, brief.labour_minor(person_minutes(one))) for one in chosen],
        [(one.name, one.cost_minor) for one in brief.fixed],
    )
    return total_minor(lines)


def new_overlaps(name: str, ids: Ids) -> list[tuple[str, str]]:
    """Pairs that share a spot after the set and did not before."""
    before, after = room_with(name, ()), room_with(name, ids)
    rooms = [facts.room for facts in before.rooms]
    return sorted({pair for room in rooms for pair in set(overlaps(after, room)) - set(overlaps(before, room))})


@cache
def walked(name: str) -> Checked | NoPlan:
    """The practitioner's whole set as a must, and nothing else on offer: placed in the hours, billed and checked."""
    base = inspected(job(name)).base
    brief = base.brief.model_copy(update={"must": CHOICES[name]})
    own = tuple(theirs(name)[id] for id in CHOICES[name])
    assert base.survey is not None
    framed = frame(replace(base, brief=brief), own, clashes(base.survey, own), {})
    answer = solve(framed.problem, seconds=60.0, clock=time.monotonic)
    return checked(base, framed, answer.plan) if isinstance(answer, Answer) else answer


@cache
def planned_figures(name: str) -> Figures:
    """The same figures of the plan, as its book says them."""
    book = run(name).book
    faults = {row.fault: row.points_after for row in book.faults if row.points_after}
    return Figures(book.hazard_points_after, book.points_after, book.spent_minor, book.best.minutes, faults)


@dataclass(frozen=True)
class Difference:
    """Remedies that only one of the two takes, and that stand for each other. `figures`: the practitioner's set with
    this one difference made; None where the plan's side was only fitted on the changed room.
    """

    theirs: Ids
    plans: Ids
    figures: Figures | None


def differences(name: str) -> tuple[Difference, ...]:
    """Every difference between the two sets: what shares a pick-one group or changes one thing belongs together."""
    mine, plans = CHOICES[name], run(name).ids
    left = [id for id in mine if id not in plans]
    found = []
    for id in (id for id in plans if id not in mine):
        instead = tuple(other for other in left if _instead(name, id, other))
        left = [other for other in left if other not in instead]
        found.append(_difference(name, instead, (id,)))
    found += [_difference(name, (id,), ()) for id in left]
    return tuple(sorted(found, key=lambda one: one.theirs or one.plans))


def _instead(name: str, id: str, other: str) -> bool:
    one, another = run(name).offer.get(id), theirs(name)[other]
    if one is None:
        return False
    things = {change.item for change in one.changes} & {change.item for change in another.changes}
    return bool(things) or (one.pick_one != "" and one.pick_one == another.pick_one)


def _difference(name: str, instead: Ids, plans: Ids) -> Difference:
    known = all(id in theirs(name) or id in run(name).offer for id in plans)
    made = tuple(sorted({*CHOICES[name], *plans} - set(instead)))
    return Difference(instead, plans, judged(name, made) if known else None)


def names(name: str, ids: Ids) -> str:
    """Remedies in words, with their ids."""
    titles = {row.id: row.name for row in run(name).book.chosen} | {id: one.name for id, one in theirs(name).items()}
    return " and ".join(f"{titles[id]} ({id})" for id in ids)


def money(name: str, minor: int) -> str:
    """An amount as the books write it."""
    return write_money(minor, job(name).brief.currency)


__all__ = ["CHOICES", "SCENARIOS", "Difference", "Figures", "differences", "judged", "planned_figures", "walked"]
