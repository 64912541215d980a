"""After solving: apply, inspect again, bill again, check every limit again. Claim and check agree, or we fail."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from budgetfix.catalog.bill import BillLine, bill, total_minor
from budgetfix.catalog.stay import away
from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.listed import remaining, voiced
from budgetfix.framing.measured import changed_by, voices_of
from budgetfix.framing.options import ERRAND
from budgetfix.framing.purses import purses
from budgetfix.inspection.finding import Finding
from budgetfix.optimize.problem import Option, Plan
from budgetfix.optimize.setting_up import set_up
from budgetfix.outcome.by_date import broken_dates, dated_bill
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.overlaps import overlaps
from budgetfix.room.survey import Survey


class ClaimFails(Exception):
    """What the chooser promised is not what the room, the bill or the clock say: our bug, never the user's."""


@dataclass(frozen=True)
class Checked:
    """A plan, checked. `listed_after`: points left of each listed fault. `used`: person-minutes by session."""

    chosen: tuple[Candidate, ...]
    room: Survey | None
    findings: tuple[Finding, ...]
    listed_after: Mapping[str, int]
    bill: tuple[BillLine, ...]
    used: tuple[int, ...]


def uses_of(chosen: Iterable[Candidate]) -> dict[str, Fraction]:
    """Units of each product, by product."""
    totals: dict[str, Fraction] = defaultdict(Fraction)
    for candidate in chosen:
        for product, units in candidate.goods:
            totals[product] += units
    return dict(totals)


def listed_after(base: Ground, chosen: Iterable[Candidate]) -> dict[str, int]:
    """Points left of each listed fault, reliefs of the chosen working on what is left."""
    picked = tuple(chosen)
    return {
        fault.fault: remaining(
            fault, (relief for one in picked for name, relief in one.answers if name == fault.fault), base.brief
        )
        for fault in base.faults
    }


def checked(base: Ground, framed: Framed, plan: Plan) -> Checked:
    """The plan taken off again from its set. Errors: ClaimFails."""
    ids = tuple(id for id in plan.chosen if not id.startswith(ERRAND))
    chosen = tuple(framed.candidates[id] for id in ids)
    room, findings = _inspected(base, framed, ids)
    left = listed_after(base, chosen)
    lines = _billed(base, plan, chosen)
    found = Checked(chosen, room, findings, left, lines, used_minutes(framed, plan))
    _agree(base, framed, plan, found)
    return found


def _billed(base: Ground, plan: Plan, chosen: tuple[Candidate, ...]) -> tuple[BillLine, ...]:
    """Everything that the plan costs, with pay and what is spent whatever is chosen."""
    brief = base.brief
    if purses(brief):
        return dated_bill(base, plan, chosen)
    work = {one.id: sum(step.person_minutes for step in one.work) for one in chosen}
    work |= {f"{ERRAND}{one.errand}": one.minutes * one.people for one in brief.errands}
    return bill(
        base.catalog,
        [(one.id, one.cost_minor) for one in chosen],
        uses_of(chosen),
        plan.bought,
        plan.hired,
        [(id, brief.pay_minor(id, work[id])) for id in plan.chosen],
        [(one.name, one.cost_minor) for one in brief.fixed],
    )


def _inspected(base: Ground, framed: Framed, ids: tuple[str, ...]) -> tuple[Survey | None, tuple[Finding, ...]]:
    if base.survey is None:
        return None, ()
    room = changed_by(base.survey, framed.candidates, ids)
    findings: list[Finding] = []
    for at, block in enumerate(base.blocks):
        after = base.again(at, room)
        if base.too_much_worse(at, after):
            raise ClaimFails(f"{block.room}/{block.name} is left worse than the guard allows")
        findings += after.findings
    _no_new_overlap(base.survey, room)
    return room, tuple(findings)


def _no_new_overlap(before: Survey, after: Survey) -> None:
    for facts in before.rooms:
        fresh = set(overlaps(after, facts.room)) - set(overlaps(before, facts.room))
        if fresh:
            raise ClaimFails(f"two things on one spot: {sorted(fresh)}")


def used_minutes(framed: Framed, plan: Plan) -> tuple[int, ...]:
    """Person-minutes of every session, setting up included. Errors: ClaimFails when a person has too few."""
    sessions = framed.problem.sessions
    if sessions is None:
        return ()
    options: dict[str, Option] = {option.id: option for option in framed.problem.options}
    people = framed.problem.people
    used = [dict.fromkeys(people, 0) for _ in sessions]
    for placed in plan.placed:
        if placed.session is None:
            raise ClaimFails(f"{placed.option} has no session")
        for place, person in enumerate(placed.people):
            used[placed.session][person] += options[placed.option].steps[placed.step].minutes_in(place)
    for row, session, setup in zip(used, sessions, set_up(framed.problem, plan.placed), strict=True):
        for person, there in zip(people, session.minutes, strict=True):
            row[person] += setup[person]
            if row[person] > there:
                raise ClaimFails(f"{person} has {there} minutes, not {row[person]}")
    return tuple(sum(row.values()) for row in used)


def _agree(base: Ground, framed: Framed, plan: Plan, found: Checked) -> None:
    hazards = sum(finding.points for finding in found.findings if finding.safety)
    points = sum(finding.points for finding in found.findings if not finding.safety)
    for fault in base.faults:
        hazards += found.listed_after[fault.fault] if fault.safety else 0
        points += 0 if fault.safety else found.listed_after[fault.fault]
    claims = (
        ("hazard points", plan.hazards, hazards),
        ("points", plan.points, points),
        ("points in each one's eyes", plan.voices, _voiced(base, found)),
        ("money", plan.spent_minor + base.brief.fixed_minor, total_minor(found.bill)),
    )
    for name, claimed, counted in claims:
        if claimed != counted:
            raise ClaimFails(f"{name}: {claimed} promised, {counted} found again")
    _limits_hold(base, framed, found)
    words = broken_dates(base, framed, plan, found.bill) if purses(base.brief) else []
    if words:
        raise ClaimFails("; ".join(words))


def _voiced(base: Ground, found: Checked) -> tuple[int, ...]:
    """Points left in the eyes of each voice, inspected and listed."""
    brief = base.brief
    sums = [voices_of(found.findings, brief)] if base.blocks else []
    for fault in base.faults:
        reliefs = [relief for one in found.chosen for name, relief in one.answers if name == fault.fault]
        sums.append(voiced(fault, reliefs, brief))
    return tuple(sum(column) for column in zip(*sums, strict=True))


def _stock_holds(base: Ground, found: Checked) -> None:
    packs = {line.id: line.packs or 0 for line in found.bill if line.kind == "product"}
    for product in base.catalog.products:
        taken = packs.get(product.product, 0)
        if taken and (away(product, base.catalog.stay) or (product.stock is not None and taken > product.stock)):
            raise ClaimFails(f"{taken} of {product.product} are not there")
    for name, slot in base.brief.vans.slots if base.brief.vans is not None else ():
        heavy = [
            (one.weight_kg or 0) * packs.get(one.product, 0) for one in base.catalog.products if one.stock is not None
        ]
        if slot.load_kg is not None and sum(heavy) > slot.load_kg:
            raise ClaimFails(f"the van {name} carries {slot.load_kg} kg, not {sum(heavy)}")


def _limits_hold(base: Ground, framed: Framed, found: Checked) -> None:
    problem, fixed_minor = framed.problem, base.brief.fixed_minor
    if problem.budget_minor is not None and total_minor(found.bill) - fixed_minor > problem.budget_minor:
        raise ClaimFails("the bill is above the budget")
    chosen = {candidate.id for candidate in found.chosen}
    options = {option.id: option for option in problem.options}
    for limit in problem.limits:
        if sum(dict(options[id].spends).get(limit.id, 0) for id in chosen) > limit.most:
            raise ClaimFails(f"limit {limit.id} is not kept")
    _stock_holds(base, found)
    for id in sorted(chosen):
        missing = [need for need in options[id].needs if need not in chosen and not need.startswith(ERRAND)]
        against = [other for other in options[id].excludes if other in chosen]
        if missing or against:
            raise ClaimFails(f"{id} needs {missing} and excludes {against}")
