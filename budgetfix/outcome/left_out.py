"""Why each candidate that is not in the plan is not in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from budgetfix.base.money import write_money
from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog
from budgetfix.framing.frame import Framed
from budgetfix.optimize.problem import Plan
from budgetfix.outcome.book import LeftOutRow
from budgetfix.outcome.tasks import alone_minor
from budgetfix.outcome.worth import Worth
from budgetfix.remedies.candidate import Candidate

NO_ROOM = "no room left in the hours or limits without giving up more"
REASONS = {
    "step-too-long": "a step is longer than every session",
    "too-loud": "a step is too loud for the sessions that are long enough for it",
    "too-late": "it would be done too late",
    "too-few-people": "it needs more people than there are",
    "needs-clash": "what it needs cannot be chosen with it",
    "tool-not-to-be-had": "a tool that it needs cannot be had",
    "over-budget": "it costs more than the whole budget",
    "over-limit": "it goes over a limit by itself",
}


def left_out(
    brief: Brief,
    catalog: Catalog,
    framed: Framed,
    plan: Plan,
    worth: Worth,
    impossible: Mapping[str, str],
    never: tuple[Candidate, ...],
    blocked: tuple[tuple[Candidate, str], ...] = (),
    *,
    proven: bool = True,
) -> tuple[LeftOutRow, ...]:
    """All candidates that are not chosen, what would add most first; then what may never be."""
    rows = []
    for id, candidate in framed.candidates.items():
        if id not in plan.chosen:
            row = _row(brief, catalog, framed, plan, worth, candidate, impossible.get(id))
            rows.append(row if proven or row.why != NO_ROOM else replace(row, why="not looked at in the time"))
    rows += [_plain(brief, catalog, one, "the brief says never") for one in sorted(never, key=lambda one: one.id)]
    rows += [_plain(brief, catalog, one, why) for one, why in blocked]
    return tuple(sorted(rows, key=lambda row: (-(row.would_add or 0), row.id)))


def _plain(brief: Brief, catalog: Catalog, one: Candidate, why: str) -> LeftOutRow:
    return LeftOutRow(one.id, one.name, alone_minor(one, catalog, brief), _minutes(one), None, why)


def _minutes(candidate: Candidate) -> int:
    return sum(work.minutes * work.people for work in candidate.work)


def _row(
    brief: Brief,
    catalog: Catalog,
    framed: Framed,
    plan: Plan,
    worth: Worth,
    candidate: Candidate,
    cannot: str | None,
) -> LeftOutRow:
    cost, minutes = alone_minor(candidate, catalog, brief), _minutes(candidate)
    if cannot is not None:
        return LeftOutRow(candidate.id, candidate.name, cost, minutes, None, REASONS.get(cannot, cannot))
    rivals = _rivals(framed, plan, candidate.id)
    hazards, points = worth.left(plan.chosen)
    then = worth.left([*(id for id in plan.chosen if id not in rivals), candidate.id])
    gain = hazards - then[0] + points - then[1]
    kept = [id for id in plan.chosen if id not in rivals]
    worse = worth.worsens([*kept, candidate.id]) if gain > 0 else ()
    if worse:
        why = f"would leave worse: {', '.join(worse)}"
        return LeftOutRow(candidate.id, candidate.name, cost, minutes, None, why)
    if rivals and gain > 0 and brief.hazards_first and then[0] > hazards:
        return LeftOutRow(candidate.id, candidate.name, cost, minutes, gain, _less_safe(framed, rivals))
    short = "" if rivals else _money_short(brief, framed, plan, candidate, catalog)
    return LeftOutRow(
        candidate.id, candidate.name, cost, minutes, gain, _why(framed, rivals, gain, short, candidate, plan)
    )


def _less_safe(framed: Framed, rivals: tuple[str, ...]) -> str:
    return f"leaves more of the hazards than {', '.join(framed.candidates[id].name for id in rivals)}"


def _rivals(framed: Framed, plan: Plan, id: str) -> tuple[str, ...]:
    options = {option.id: option for option in framed.problem.options}
    own = options[id]
    return tuple(
        other
        for other in plan.chosen
        if other in framed.candidates
        and (
            other in own.excludes or id in options[other].excludes or (own.group and options[other].group == own.group)
        )
    )


def _money_short(brief: Brief, framed: Framed, plan: Plan, candidate: Candidate, catalog: Catalog) -> str:
    if framed.problem.budget_minor is None:
        return ""
    missing = plan.spent_minor + alone_minor(candidate, catalog, brief) - framed.problem.budget_minor
    return write_money(missing, brief.currency) if missing > 0 else ""


def _why(framed: Framed, rivals: tuple[str, ...], gain: int, short: str, candidate: Candidate, plan: Plan) -> str:
    missing = [need for need in candidate.needs if need not in plan.chosen]
    if rivals:
        names = ", ".join(framed.candidates[id].name for id in rivals)
        return f"instead of it: {names}" if gain <= 0 else f"more than {names} would, but not within the limits"
    if missing:
        names = ", ".join(framed.candidates[id].name if id in framed.candidates else id for id in missing)
        return f"needs: {names}"
    if gain <= 0:
        return "adds nothing beside what is chosen"
    if short:
        return f"{short} more money is needed"
    return NO_ROOM
