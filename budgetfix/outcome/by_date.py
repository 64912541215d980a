"""Where money comes by date: the bill of a plan by its phases, and whether any of it is spent too early.

By a path of its own: from days of the brief and the catalogue's days of waiting, not from the chooser's sessions.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import timedelta
from fractions import Fraction

from budgetfix.brief.models import Brief
from budgetfix.catalog.bill import BillLine
from budgetfix.catalog.bill_by_date import Bought, bill_by_date, spent_by
from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.options import errands_of, labour_minor, lead_days
from budgetfix.framing.purses import Purse, day_of, errands_by_id, purses, round_id
from budgetfix.optimize.problem import Plan
from budgetfix.outcome.book import MoneyDay, MoneyLine
from budgetfix.remedies.candidate import Candidate


def dated_bill(base: Ground, plan: Plan, chosen: tuple[Candidate, ...]) -> tuple[BillLine, ...]:
    """Every line of money with the phase in which it is paid."""
    there, brief = purses(base.brief), base.brief
    phase = {**dict.fromkeys(plan.chosen, 0), **dict(plan.buys)}
    first_money = next((place for place, one in enumerate(there) if one.come_minor), 0)
    tools = _first_use(plan, chosen, phase)
    hires = _hires(base, plan, chosen, tools)
    parts = []
    for number in range(len(there)):
        mine = tuple(one for one in chosen if phase[one.id] == number)
        parts.append(
            Bought(
                costs=tuple((one.id, one.cost_minor) for one in mine),
                uses=_uses(mine),
                tools=tuple(tool for tool in plan.bought if tools[tool] == number),
                hired=tuple((tool, counts[number]) for tool, counts in hires.items() if counts.get(number)),
                labour=tuple((id, pay) for id, pay in _pay(brief, plan, chosen) if phase[id] == number),
                fixed=tuple((one.name, one.cost_minor) for one in brief.fixed) if number == first_money else (),
            )
        )
    return bill_by_date(base.catalog, parts)


def _uses(mine: tuple[Candidate, ...]) -> dict[str, Fraction]:
    used: dict[str, Fraction] = {}
    for one in mine:
        for product, units in one.goods:
            used[product] = used.get(product, Fraction(0)) + units
    return used


def _pay(brief: Brief, plan: Plan, chosen: tuple[Candidate, ...]) -> list[tuple[str, int]]:
    """The pay of each chosen remedy and round."""
    rounds, paid = errands_by_id(brief), {one.id: labour_minor(one, brief) for one in chosen}
    paid |= {id: brief.pay_minor(id, rounds[id].minutes * rounds[id].people) for id in plan.chosen if id in rounds}
    return sorted(paid.items())


def _first_use(plan: Plan, chosen: tuple[Candidate, ...], phase: Mapping[str, int]) -> dict[str, int]:
    """The phase in which a tool is first asked for."""
    wanted = (*plan.bought, *(tool for tool, _ in plan.hired))
    return {tool: min(phase[one.id] for one in chosen if tool in one.tools) for tool in wanted}


def _hires(
    base: Ground, plan: Plan, chosen: tuple[Candidate, ...], first: Mapping[str, int]
) -> dict[str, dict[int, int]]:
    """Sessions of hire by phase, for each hired tool: each is paid from what has come by its day.

    What was paid for before is used up first, for its own session where it is hired for that anyhow.
    """
    there, held = purses(base.brief), dict(base.rest.held)
    users = {tool: {one.id for one in chosen if tool in one.tools} for tool, _ in plan.hired}
    found: dict[str, dict[int, int]] = {}
    for tool, count in plan.hired:
        counts: dict[int, int] = {}
        sessions = _begun(base, plan, users[tool], held.get(tool, ()))
        for session in sessions[max(0, len(sessions) - count) :]:
            paid = max(place for place, one in enumerate(there) if not place or _has_come(base.brief, one, session))
            counts[paid] = counts.get(paid, 0) + 1
        found[tool] = counts or {first[tool]: count}
    return found


def _begun(base: Ground, plan: Plan, users: set[str], held: tuple[int, ...]) -> list[int]:
    """The first parts of all sessions (from 0) in which some of these options have a step, but for those `held`."""
    hours = base.brief.hours or ()
    starts = [place for place, one in enumerate(hours) if not one.continues]
    used = {one.session for one in plan.placed if one.option in users and one.session is not None}
    begun = {max(start for start in starts if start <= session) for session in used}
    return sorted(begun - {starts[number] for number in held})


def dated_lines(
    base: Ground, plan: Plan, chosen: tuple[Candidate, ...], bill: tuple[BillLine, ...], lines: tuple[MoneyLine, ...]
) -> tuple[MoneyLine, ...]:
    """The lines of a bill with the day from which on each is paid; goods with those they are bought for by then."""
    there, phase = purses(base.brief), dict(plan.buys)
    found = []
    for one, line in zip(bill, lines, strict=True):
        if one.kind == "product":
            served = _served(one, bill, chosen, phase)
            line = replace(
                line, tasks=tuple(name for name in line.tasks if name in served or name not in _names(chosen))
            )
        purse = there[one.phase]
        found.append(replace(line, phase=one.phase, buy_on=purse.on, buy_session=purse.session or 0))
    return tuple(found)


def _names(chosen: tuple[Candidate, ...]) -> set[str]:
    return {one.name for one in chosen}


def _served(
    line: BillLine, bill: tuple[BillLine, ...], chosen: tuple[Candidate, ...], phase: Mapping[str, int]
) -> set[str]:
    """Names of those who use what is bought in one phase: bought with it, or before more of it is bought."""
    more = [one.phase for one in bill if (one.kind, one.id) == ("product", line.id) and one.phase > line.phase]
    later = min(more, default=1 + max(phase.values(), default=line.phase))
    return {one.name for one in chosen if line.phase <= phase.get(one.id, 0) < later}


def money_days(base: Ground, bill: tuple[BillLine, ...]) -> tuple[MoneyDay, ...]:
    """How the money stands from each day on which some comes; the start only where any is there."""
    there = purses(base.brief)
    days = tuple(
        MoneyDay(one.on, one.session or 0, one.comes_minor, one.come_minor - one.held_minor, spent)
        for one, spent in zip(there, spent_by(bill, len(there)), strict=True)
    )
    return tuple(one for one in days if one.comes_minor)


def _has_come(brief: Brief, one: Purse, session: int, days: int = 0) -> bool:
    """Whether a purse was there some days before a session (from 0)."""
    hours = brief.hours or ()
    if one.session is not None:
        return session >= one.session - 1 and hours[session].day >= hours[one.session - 1].day + days
    return one.on is not None and day_of(hours[session], brief) >= one.on + timedelta(days=days)


def broken_dates(base: Ground, framed: Framed, plan: Plan, bill: tuple[BillLine, ...]) -> list[str]:
    """What a plan does not keep of money by date, in words: money spent too early, work before its goods are there."""
    there, words = purses(base.brief), []
    for one, spent in zip(there, spent_by(bill, len(there)), strict=True):
        fixed = base.brief.fixed_minor if one.come_minor else 0
        if spent > one.come_minor - one.held_minor or spent - fixed > one.remedies_minor:
            words.append(f"{spent} is spent by {one.on or one.session}, {one.come_minor} has come")
    phase, first = dict(plan.buys), _first_sessions(plan)
    for id in sorted(phase.keys() & framed.candidates.keys()):
        if id in first:
            words += _too_early(base, framed, plan, framed.candidates[id], phase[id], first)
    return words


def _first_sessions(plan: Plan) -> dict[str, int]:
    """The session (from 0) of the first step of each option."""
    return {one.option: one.session for one in plan.placed if one.step == 0 and one.session is not None}


def _too_early(
    base: Ground, framed: Framed, plan: Plan, one: Candidate, phase: int, first: Mapping[str, int]
) -> list[str]:
    """Work that begins before its money, its days of waiting, or the round that fetches its goods."""
    brief, words = base.brief, []
    wait = lead_days(one, base.catalog, _uses(tuple(framed.candidates.values())), base.rest)
    if phase and not _has_come(brief, purses(brief)[phase], first[one.id], wait):
        words.append(f"{one.id} begins before its goods can be there")
    by_id = errands_by_id(brief)
    for plain in errands_of(one, base.catalog, brief.errands, base.rest):
        rounds = [round_id(by_id[plain], later) for later in range(phase, len(purses(brief)))]
        if not any(id in plan.chosen and first.get(id, 0) <= first[one.id] for id in rounds):
            words.append(f"{one.id} begins before {rounds[0]}")
    return words
