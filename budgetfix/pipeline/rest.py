"""The rest of a job: what is left of its money, hours, limits, faults and wishes after what was paid and done.

A pure function of the job, of what was read back from its workbook, and of the day. What comes out is a job like any
other, with a small record of what framing must know besides.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from fractions import Fraction

from budgetfix.brief.models import Brief, ListedFault
from budgetfix.framing.rest import Rest
from budgetfix.intake.job import Job
from budgetfix.outcome.learning import paces_of
from budgetfix.outcome.paces import Paces
from budgetfix.outcome.so_far import SoFar
from budgetfix.pipeline.rest_done import Done, done_of
from budgetfix.pipeline.rest_goods import Goods, goods_of, sold_out, without
from budgetfix.pipeline.rest_hours import earliest, hours_left, live_from
from budgetfix.pipeline.rest_money import Paid, brief_left, incomes_left, paid_of
from budgetfix.pipeline.rest_on_top import with_orders
from budgetfix.pipeline.rest_room import room_before, room_now
from budgetfix.pipeline.rest_van import past_costs, van_left
from budgetfix.remedies.candidate import Candidate


@dataclass(frozen=True)
class Left:
    """`job`: the rest. `first`: the job as it was before anything was done, on which candidates are offered.

    `so_far`: what was read back, every line with the sum that it counts with. `loaded`: remedies that a van's window
    held and that are over. `day`: the day of replanning.
    """

    job: Job
    first: Job
    rest: Rest
    so_far: SoFar
    done: Done
    paid: Paid
    goods: Goods
    day: date
    whole: Job
    """The whole job, as its files have it now."""
    loaded: tuple[str, ...] = ()
    paces: Paces = field(default_factory=Paces)
    """How quick the household is, by what the brief says and what the done steps took."""

    @property
    def brief(self) -> Brief:
        """The brief of the whole job."""
        return self.whole.brief


def rest_of(job: Job, so_far: SoFar, day: date) -> Left:
    """What is left of a job on a day."""
    done = done_of(so_far)
    paid = paid_of(so_far, done, job.brief, job.catalog, past_costs(job.brief, day))
    brief = job.brief
    live = live_from(so_far, brief, day)
    goods = goods_of(so_far, paid, done, brief, job.catalog, live)
    van = van_left(brief, goods.catalog, paid, day)
    hours = brief.hours or ()
    rest = Rest(
        told=bool(so_far.told or any(one.done or one.real_minutes is not None for one in so_far.steps)),
        live=live if brief.hours is not None else 0,
        day=hours[live].day if live < len(hours) and live and hours[live].on is None else 0,
        prepaid=goods.hire.prepaid,
        held=goods.hire.held,
        in_hand=goods.in_hand,
        arriving=goods.arriving,
        sold_out=goods.sold_out,
        earliest=earliest(done, brief),
        begun=tuple(id for id in done.begun_ids if id not in dict(goods.barred)),
        done=tuple(one.candidate for one in done.done),
        whole=tuple(one.candidate for one in done.begun),
        origin=room_before(job.survey, done.done) if job.survey is not None and done.done else None,
    )
    paces = paces_of(brief, so_far)
    pace = paces.pace if paces.learnt else brief.pace
    left = {
        "hours": hours_left(so_far, brief, live),
        "limits": _limits(brief, rest.done),
        "must": tuple(name for name in brief.must if name not in _met(rest.done, van.loaded)),
        "ordered": max(day, brief.ordered) if brief.ordered_typed and brief.ordered is not None else day,
        "pace": pace,
        "paid_work": paid.ahead,
        "incomes": incomes_left(brief, paid, day, live),
    }
    survey = None if job.survey is None else room_now(job.survey, done.done)
    now = replace(
        job,
        survey=survey,
        brief=Brief(**{**dict(brief_left(van.brief, paid)), **left}),
        catalog=with_orders(van.catalog, paid.orders),
        faults=tuple(_faults(job.faults, rest.done)),
    )
    first = replace(
        job,
        survey=rest.origin or job.survey,
        brief=Brief(**{**dict(brief), "pace": pace}),
        catalog=without(job.catalog, dict(sold_out(so_far))),
    )
    settled = replace(so_far, lines=paid.lines)
    return Left(now, first, rest, settled, done, paid, goods, day, job, van.loaded, paces)


def _met(done: Iterable[Candidate], loaded: Iterable[str]) -> frozenset[str]:
    """Ids and pick-one names that are there already."""
    return frozenset(name for one in done for name in (one.id, one.pick_one) if name) | frozenset(loaded)


def _limits(brief: Brief, done: Iterable[Candidate]) -> tuple[tuple[str, Fraction], ...]:
    """What is left of each limit, never below 0."""
    spent: dict[str, Fraction] = {}
    for one in done:
        for name, amount in one.spends:
            spent[name] = spent.get(name, Fraction(0)) + amount
    return tuple((name, max(Fraction(0), most - spent.get(name, Fraction(0)))) for name, most in brief.limits)


def _faults(faults: Iterable[ListedFault], done: Iterable[Candidate]) -> list[ListedFault]:
    """Listed faults with the reliefs of what is done; those of which nothing is left are over."""
    left: dict[str, Fraction] = {}
    for one in done:
        for fault, relief in one.answers:
            left[fault] = left.get(fault, Fraction(1)) * (1 - relief)
    found = [_fault(fault, left) for fault in faults]
    return [fault for fault in found if fault.left or fault.fault not in left]


def _fault(fault: ListedFault, left: Mapping[str, Fraction]) -> ListedFault:
    return ListedFault(**{**dict(fault), "left": left[fault.fault]}) if fault.fault in left else fault
