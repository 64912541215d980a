"""The rooms as they stand after a plan, as somebody would survey them then, and what a tape would not find there."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from budgetfix.base.numbers import half_even
from budgetfix.brief.models import Brief, ListedFault
from budgetfix.outcome.book import FaultRow
from budgetfix.room.items import TABLES, Item, Light
from budgetfix.room.survey import Survey, moved

LINKS = ("over", "on", "at", "under", "socket", "also_window")
"""Fields that name another thing, and may stand empty."""
TAKEN = "It was taken away, and nothing stands for it: {}"


def as_surveyed(before: Survey, after: Survey) -> Survey:
    """The survey after a plan: what the plan set was measured, and nothing belongs to a thing that is gone."""
    there = after.named
    tables = {table: tuple(_unlinked(item, there) for item in after.table(table)) for table in TABLES}
    guessed = frozenset(pair for pair in after.guessed if _still_guessed(before, after, *pair))
    kept = {name: getattr(after, name) for name in Survey.model_fields}
    return Survey.model_validate({**kept, **tables, "guessed": guessed})


def _unlinked(item: Item, there: Mapping[str, object]) -> Item:
    gone = {name: "" for name in LINKS if getattr(item, name, "") and getattr(item, name) not in there}
    return moved(item, **gone) if gone else item


def _still_guessed(before: Survey, after: Survey, name: str, field: str) -> bool:
    """True for a figure that is as it was taken for lack of a measured one."""
    if any(facts.room == name for facts in after.rooms) and field == "ceiling":
        return True
    was, now = _thing(before, name), _thing(after, name)
    if was is None or now is None or getattr(was, "what", "") != getattr(now, "what", ""):
        return False
    if isinstance(now, Light) and field in ("from_left", "gap"):
        return was == now and _thing(before, now.on) == _thing(after, now.on)
    return bool(getattr(was, field) == getattr(now, field))


def _thing(survey: Survey, name: str) -> Item | None:
    return survey.named.get(name, (None, None))[1]


def still_listed(faults: Iterable[ListedFault], rows: Iterable[FaultRow], brief: Brief) -> tuple[ListedFault, ...]:
    """What a survey cannot show: listed faults with the points that are left, and what was taken away uncured.

    Those with nothing left stand there too, since a catalogue may name them. Points are whole: under a priority above
    1 those that are left may lie between two of them, and the nearer is taken.
    """
    listed = {fault.fault: fault for fault in faults}
    found = []
    for row in rows:
        if row.kept:
            found.append(_taken(row))
        elif row.listed:
            found.append(_with_points(listed[row.fault], row.points_after, brief.priority(row.fault)))
    return tuple(sorted(found, key=lambda fault: fault.fault))


def _taken(row: FaultRow) -> ListedFault:
    return ListedFault(
        fault=row.fault, points=row.points_after, what=TAKEN.format(row.title), where=row.subject, safety=row.safety
    )


def _with_points(fault: ListedFault, left: int, priority: Fraction) -> ListedFault:
    points = half_even(left / priority) if priority else fault.points
    return ListedFault(fault=fault.fault, points=points, what=fault.what, where=fault.where, safety=fault.safety)
