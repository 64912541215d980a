"""What was paid of an earlier plan, line by line, and what that leaves.

A line counts as paid where somebody says so, and where it cannot be otherwise: goods and tools of work that is done,
pay for it, the delivery and the tax of an order of which anything was bought. Each gets the sum that it counts with.

A sum that somebody typed is the real one of the whole line, and settles it: pay that was typed is not asked for again
for the steps that it was planned for, done or not. Of a delivery or a tax see `rest_on_top`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date

from budgetfix.brief.incomes import Income, capped, left_after, running_minor, with_held
from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog
from budgetfix.outcome.so_far import LineBack, PlannedLine, SoFar
from budgetfix.pipeline.rest_done import Done
from budgetfix.pipeline.rest_on_top import cut, on_top, open_orders
from budgetfix.pipeline.rest_used import with_used

TICKED = ("product", "tool", "hire", "remedy")


@dataclass(frozen=True)
class Paid:
    """`lines`: all of them, each with the sum that it counts with. `due_minor`: what those were planned at."""

    lines: tuple[LineBack, ...] = ()
    spent_minor: int = 0
    due_minor: int = 0
    counted: tuple[str, ...] = ()
    """Ids of lines that count as paid though nobody said so, and are not on top of others."""
    summed: tuple[str, ...] = ()
    """Ids of lines that count as bought because a sum was typed there, without a tick."""

    ahead: tuple[str, ...] = ()
    """Ids of remedies and errands whose pay somebody says is paid, though not all of that work is done."""
    orders: tuple[tuple[str, str], ...] = ()
    """(delivery or tax, shop) of orders of which that is paid and nothing was had yet."""

    @property
    def over_minor(self) -> int:
        """What was paid above plan, net, never below 0."""
        return max(0, self.spent_minor - self.due_minor)

    def by_kind(self, *kinds: str) -> tuple[LineBack, ...]:
        """The lines of some kinds."""
        return tuple(one for one in self.lines if one.planned.line.kind in kinds)


def paid_of(so_far: SoFar, done: Done, brief: Brief, catalog: Catalog, past: frozenset[str] = frozenset()) -> Paid:
    """Every line as it counts. `past`: names of fixed costs that are over, such as a van that has been.

    Sums that an earlier rest worked out are worked out again: only what somebody typed is settled.
    """
    typed = [_unworked(one) for one in so_far.lines]
    ticks = {one.planned.id: one.planned.task.person_minutes for one in so_far.done}
    lines = [_ticked(one, done, ticks) for one in with_used(typed, done, catalog)]
    lines = [_worked(one, ticks, brief, past) for one in lines]
    lines = [on_top(one, lines, catalog) for one in lines]
    lines = [_marked(was, one) for was, one in zip(typed, lines, strict=True)]
    told = {one.planned.id for one in typed if one.state is not None or one.paid_minor is not None}
    counted = [one for one in lines if one.paid_minor is not None or one.state == "bought"]
    return Paid(
        tuple(lines),
        sum(one.paid_minor or 0 for one in counted),
        sum(due_minor(one) for one in counted),
        tuple(one.planned.id for one in counted if one.planned.line.kind in TICKED and one.planned.id not in told),
        tuple(one.planned.id for one in typed if _sum_alone(one)),
        tuple(one.planned.line.of for one in typed if _ahead(one, ticks)),
        open_orders(lines),
    )


def _ahead(one: LineBack, ticks: Mapping[str, int]) -> bool:
    """True where somebody says that pay is paid, the whole of it, and steps that it is for are still to do."""
    said = one.planned.line.kind == "labour" and (one.state == "bought" or one.paid_minor is not None)
    return said and any(id not in ticks for id in one.planned.steps)


def _unworked(one: LineBack) -> LineBack:
    """A line as somebody typed it: without a sum that was worked out and stands there as it was."""
    worked = one.planned.worked_minor
    if worked is None:
        return one
    paid = None if one.paid_minor == worked else one.paid_minor
    return LineBack(replace(one.planned, worked_minor=None), one.state, paid)


def _marked(typed: LineBack, one: LineBack) -> LineBack:
    """A line that remembers of its sum that nobody typed it."""
    if typed.paid_minor is not None or one.paid_minor is None:
        return one
    return replace(one, planned=replace(one.planned, worked_minor=one.paid_minor))


def _sum_alone(one: LineBack) -> bool:
    return one.state is None and one.paid_minor is not None and one.planned.line.kind in TICKED


def due_minor(one: LineBack) -> int:
    """What a counted line was to cost; what was given back, or could not be had, was to cost nothing for nothing."""
    return 0 if one.state in ("returned", "sold out") else one.planned.line.line_minor


def _ticked(one: LineBack, done: Done, ticks: Mapping[str, int]) -> LineBack:
    """Goods, tools and remedies' own costs, with the sum that they count with."""
    line = one.planned.line
    if line.kind not in TICKED:
        return one
    if one.state is None and (one.paid_minor is not None or _used(one.planned, done, ticks)):
        one = replace(one, state="bought")
    if one.state is None:
        return one
    otherwise = line.line_minor if one.state == "bought" else 0
    return replace(one, paid_minor=otherwise if one.paid_minor is None else one.paid_minor)


def _used(planned: PlannedLine, done: Done, ticks: Mapping[str, int]) -> bool:
    """True where work that is done cannot have been done without it.

    A tool, or its hire, was there for the steps of the plan that it stands in: what was done before had another one.
    Of goods see `rest_used`.
    """
    if planned.line.kind in ("tool", "hire"):
        return any(id in ticks for id in planned.steps)
    return planned.line.kind == "remedy" and planned.line.of in done.ids


def _worked(one: LineBack, ticks: Mapping[str, int], brief: Brief, past: frozenset[str]) -> LineBack:
    """Pay for work that is done, as far as it is; fixed costs that are over; of the others what was typed."""
    line = one.planned.line
    if one.paid_minor is not None or line.kind not in ("labour", "fixed"):
        return one
    if one.state == "bought":
        return replace(one, paid_minor=line.line_minor)
    whole = bool(one.planned.steps) and all(id in ticks for id in one.planned.steps)
    if line.kind == "fixed":
        over = whole or line.of in past or line.name in past
        return replace(one, paid_minor=line.line_minor) if over else one
    if whole:
        return replace(one, paid_minor=line.line_minor)
    return _paid_part(one, ticks, brief)


def _paid_part(one: LineBack, ticks: Mapping[str, int], brief: Brief) -> LineBack:
    """Pay cut to the steps that are done of those that it was planned for; the others are planned anew."""
    ids = tuple(id for id in one.planned.steps if id in ticks)
    pay = brief.labour_minor(sum(ticks[id] for id in ids))
    return one if not pay else cut(replace(one, planned=replace(one.planned, steps=ids)), pay)


def brief_left(brief: Brief, paid: Paid) -> Brief:
    """The brief with the money that is left: what was paid above plan comes off what was held back first.

    Where more is spent than there was, nothing is left, and what has to be paid whatever is chosen goes on top.
    """
    if not any(one.paid_minor is not None for one in paid.lines):
        return brief
    gone = {one.planned.line.name for one in paid.by_kind("fixed") if one.paid_minor is not None}
    fixed = tuple(one for one in brief.fixed if one.name not in gone)
    if brief.budget_minor is None:
        return Brief(**{**dict(brief), "fixed": fixed})
    still = sum(one.cost_minor for one in fixed)
    money = max(brief.budget_minor - paid.spent_minor, still, 0)
    held = min(max(0, brief.held_back_minor() - paid.over_minor), money - still)
    left = {"budget_minor": money, "contingency_minor": held, "contingency_share": 0 * brief.contingency_share}
    return Brief(**{**dict(brief), **left, "fixed": fixed})


def incomes_left(brief: Brief, paid: Paid, day: date, live: int) -> tuple[Income, ...]:
    """What is left of money that comes by date: all that has come as one income, less what was paid.

    Of each running sum is held back what the plan held back of it, less what was paid above plan.
    `live`: the first session (from 0) that is not gone, for incomes that name sessions.
    """
    left = brief_left(brief, paid)
    if not brief.incomes or left.budget_minor is None:
        return ()
    when = live + 1 if brief.incomes[0].on is None else day
    come = capped(left_after(brief.incomes, when, paid.spent_minor), left.budget_minor)
    if not brief.held_back_minor() or left == brief:
        return come
    held = [max(0, brief.held_back_of(minor) - paid.over_minor) for minor in running_minor(brief.incomes)]
    return with_held(come, brief.incomes, held)
