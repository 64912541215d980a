"""Money that comes by date as phases: what may be spent by when, and when goods ordered then are there."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, timedelta

from budgetfix.brief.incomes import Income, has_come, total_minor
from budgetfix.brief.models import Brief, Errand, Hours
from budgetfix.catalog.models import Catalog
from budgetfix.framing.options import ERRAND, errand_option
from budgetfix.framing.rest import WHOLE_JOB, Rest
from budgetfix.optimize.problem import Instalment, Option


@dataclass(frozen=True, slots=True)
class Purse:
    """What has come by a day, or by a session (from 1), and how much of it is for remedies, in all.

    The first purse is there from the start (`on` is the day of the order), even where nothing has come yet.
    `first_session` (from 0) is the first one in which it can be spent; the number of sessions where there is none.
    """

    on: date | None
    session: int | None
    comes_minor: int
    come_minor: int
    held_minor: int
    remedies_minor: int
    first_session: int


def purses(brief: Brief) -> tuple[Purse, ...]:
    """The phases of a brief's money; empty where all is there at once, or where there is no list of hours.

    The contingency is held back of each running sum, as far as that goes; fixed costs count as soon as any has come.
    Of what is left of a job that is begun, an income itself says what is held back; of the last sum the brief does.
    """
    if not brief.incomes or not brief.hours:
        return ()
    start = 1 if brief.incomes[0].on is None else brief.ordered or brief.incomes[0].on
    at_once = tuple(one for one in brief.incomes if has_come(one, start))
    later = tuple(one for one in brief.incomes if not has_come(one, start))
    if not later:
        return ()
    first = total_minor(at_once)
    when = (start, None) if isinstance(start, date) else (None, start)
    held = at_once[-1].held_minor if at_once else None
    found = [_purse(brief, Income(first, *when, held), first, last=False)]
    for place, one in enumerate(later, start=1):
        come = found[-1].come_minor + one.amount_minor
        found.append(_purse(brief, one, come, last=place == len(later)))
    return (replace(found[0], first_session=0), *found[1:])


def _purse(brief: Brief, one: Income, come: int, *, last: bool) -> Purse:
    held = brief.held_back_of(come) if last or one.held_minor is None else one.held_minor
    held = held if last else min(come, held)
    remedies = come - held - (brief.fixed_minor if come else 0)
    return Purse(one.on, one.session, one.amount_minor, come, held, remedies, _first(brief, one, 0))


def _first(brief: Brief, one: Income | Purse, lead_days: int) -> int:
    """The first session (from 0) for goods ordered with an income; the number of sessions where there is none."""
    hours = brief.hours or ()
    if one.session is not None:
        if one.session > len(hours):
            return len(hours)
        ready = hours[one.session - 1].day + lead_days
        days = [each.day for each in hours]
        return next((place for place in range(one.session - 1, len(hours)) if days[place] >= ready), len(hours))
    there = (one.on or date.min) + timedelta(days=lead_days)
    return next((place for place, each in enumerate(hours) if day_of(each, brief) >= there), len(hours))


def day_of(hours: Hours, brief: Brief) -> date:
    """The day of a session; without a date, so many days after the order."""
    return hours.on or (brief.ordered or date.min) + timedelta(days=hours.day)


def instalments(found: Iterable[Purse]) -> tuple[Instalment, ...]:
    """The phases as the chooser has them."""
    return tuple(Instalment(one.remedies_minor, one.first_session) for one in found)


def round_id(errand: Errand, phase: int) -> str:
    """The id of an errand's round: each phase of money has one of its own."""
    return f"{ERRAND}{errand.errand}" + (f"@{phase + 1}" if phase else "")


def errands_by_id(brief: Brief) -> dict[str, Errand]:
    """The errand that each round is of."""
    phases = max(1, len(purses(brief)))
    return {round_id(errand, phase): errand for errand in brief.errands for phase in range(phases)}


def rounds(brief: Brief, wanted: Iterable[str], rest: Rest = WHOLE_JOB) -> tuple[Option, ...]:
    """The rounds of some errands (by the ids of their options), one a phase where money comes in phases."""
    names = frozenset(wanted)
    called = [errand for errand in brief.errands if ERRAND + errand.errand in names]
    there = purses(brief)
    if not there:
        return tuple(errand_option(errand, brief, rest) for errand in called)
    options = [(errand, errand_option(errand, brief, rest)) for errand in called]
    return tuple(_round(errand, one, there, phase, brief) for errand, one in options for phase in range(len(there)))


def _round(errand: Errand, option: Option, there: tuple[Purse, ...], phase: int, brief: Brief) -> Option:
    id = round_id(errand, phase)
    plain = replace(option, id=id, cost_minor=brief.pay_minor(id, errand.minutes * errand.people))
    first = max(plain.first_session, there[phase].first_session)
    arrivals = tuple(max(first, one.first_session) for one in there) if plain.cost_minor else ()
    return replace(plain, first_session=first, arrivals=arrivals)


def costs(option: Option, catalog: Catalog) -> bool:
    """Whether choosing an option can cost anything: money of its own, goods, a tool that is not there."""
    owned = {one.tool for one in catalog.tools if one.own}
    return bool(option.cost_minor or option.uses or not set(option.tools) <= owned)


def in_phases(option: Option, lead_days: int, errands: tuple[str, ...], brief: Brief, catalog: Catalog) -> Option:
    """The option with its arrivals and rounds by phase, where money comes in phases and it costs any.

    `lead_days`: of its goods, after the order; `errands`: ids of those that fetch them.
    """
    there = purses(brief)
    if not there or not costs(option, catalog):
        return option
    arrivals = (option.first_session, *(max(option.first_session, _first(brief, one, lead_days)) for one in there[1:]))
    by_id = {ERRAND + errand.errand: errand for errand in brief.errands}
    fetched = tuple(tuple(round_id(by_id[id], phase) for phase in range(len(there))) for id in errands)
    needs = tuple(id for id in option.needs if id not in errands)
    return replace(option, arrivals=arrivals, rounds=fetched, needs=needs)


def phase_of(there: tuple[Purse, ...], session: int) -> int:
    """The phase whose money is there in a session (from 0)."""
    return max(place for place, one in enumerate(there) if one.first_session <= session)
