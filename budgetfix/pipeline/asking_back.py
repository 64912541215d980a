"""Which of the figures that were filled in by a default matter most: at most three are asked back.

Each is put to a low and a high value that is common in homes, and the room is inspected anew.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from budgetfix.base.tape import write_length
from budgetfix.forms.survey_form import FORM_OF
from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.measured import changed_by, gone
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.guard import too_much_worse
from budgetfix.inspection.inspect import Seen, look_again, look_at_all
from budgetfix.room.figures import refigured, sort_of, stands
from budgetfix.room.overlaps import overlaps
from budgetfix.room.survey import Survey

MOST = 3
"""People who are asked for more measure nothing."""
SHARES = (1.0, 0.5, 0.25)
"""Where a value cannot be (another thing stands there), one nearer to the default is tried."""


@dataclass(frozen=True)
class End:
    """One end of what is common: the value, the survey with it, and what is found in it."""

    value: float
    survey: Survey
    seen: tuple[Seen, ...]


@dataclass(frozen=True)
class Figure:
    """One figure that was filled in; `heading` as in the form, lengths in mm."""

    item: str
    field: str
    heading: str
    length: bool
    room: str
    taken: float
    ends: tuple[End, ...]


@dataclass(frozen=True)
class Asked:
    """A figure with what hangs on it: points, and whether the plan no longer fits the room at one of the ends."""

    figure: Figure
    swing: int
    breaks: bool = False


def figures(base: Ground) -> tuple[Figure, ...]:
    """Every figure that a default filled in, by thing and field, where a room can be otherwise at all."""
    if base.survey is None:
        return ()
    found = [_figure(base, base.survey, item, field) for item, field in sorted(base.survey.guessed)]
    return tuple(one for one in found if one is not None and one.ends)


def _figure(base: Ground, survey: Survey, item: str, field: str) -> Figure | None:
    table, what, room = sort_of(survey, item, field)
    column = next(column for column in FORM_OF[table or "rooms"] if column.field == field)
    usual = column.usual_for(what, survey.household.metric)
    if usual is None:
        return None
    low, taken, high = usual
    nearest = [_nearest(survey, room, item, field, taken, end) for end in (low, high)]
    ends = tuple(End(*one, _looked(base, one[1], room)) for one in nearest if one is not None)
    return Figure(item, field, column.heading, column.kind == "length", room, taken, ends)


def _nearest(survey: Survey, room: str, item: str, field: str, taken: float, end: float) -> tuple[float, Survey] | None:
    """The value nearest to the end at which a room can be, and the survey with it."""
    for share in SHARES:
        value = taken + (end - taken) * share
        other = refigured(survey, item, field, value)
        if stands(other, room, survey):
            return value, other
    return None


def marked(base: Ground, found: Iterable[Figure]) -> Ground:
    """The same ground, every finding uncertain that a filled-in figure would change."""
    doubtful: set[tuple[str, str]] = set()
    for figure in found:
        doubtful |= _doubtful(base, figure)
    seen = tuple(
        replace(one, findings=tuple(_unsure(finding, doubtful) for finding in one.findings)) for one in base.seen
    )
    return replace(base, seen=seen)


def _unsure(finding: Finding, doubtful: set[tuple[str, str]]) -> Finding:
    return replace(finding, certain=False) if (finding.room, finding.id) in doubtful else finding


def _doubtful(base: Ground, figure: Figure) -> set[tuple[str, str]]:
    """(room, id) of the findings that come out otherwise, or not at all, at one of the ends."""
    was = {(one.room, one.id): _said(one) for seen in base.seen for one in seen.findings if one.room == figure.room}
    changed: set[tuple[str, str]] = set()
    for end in figure.ends:
        now = {(one.room, one.id): _said(one) for seen in end.seen for one in seen.findings}
        changed |= {key for key, said in was.items() if now.get(key) != said}
    return changed


def _said(finding: Finding) -> tuple[object, ...]:
    return finding.value, finding.severity, finding.band, finding.safety


def _looked(base: Ground, survey: Survey, room: str) -> tuple[Seen, ...]:
    return look_at_all((block for block in base.blocks if block.room == room), survey, base.brief)


def _in_room(base: Ground, room: str) -> tuple[Seen, ...]:
    return tuple(seen for block, seen in zip(base.blocks, base.seen, strict=True) if block.room == room)


def _sum(seen: Iterable[Seen]) -> int:
    return sum(one.points + one.hazards for one in seen)


def asked_of_room(base: Ground, found: Iterable[Figure]) -> tuple[Asked, ...]:
    """The figures on which most points of the room as surveyed hang, most first."""
    asked = []
    for figure in found:
        was = _sum(_in_room(base, figure.room))
        sums = [was, *(_sum(end.seen) for end in figure.ends)]
        asked.append(Asked(figure, max(sums) - min(sums)))
    return _most(asked)


def asked_of_plan(base: Ground, framed: Framed, chosen: Iterable[str]) -> tuple[Asked, ...]:
    """The figures on which most of what a plan takes away hangs, or its fitting at all, most first."""
    ids, asked = tuple(chosen), []
    for figure in figures(base):
        assert base.survey is not None
        taken = End(figure.taken, base.survey, _in_room(base, figure.room))
        was, *ends = [_outcome(base, framed, ids, figure.room, end) for end in (taken, *figure.ends)]
        sums = [was[0], *(gained for gained, _ in ends)]
        asked.append(Asked(figure, max(sums) - min(sums), was[1] and not all(fits for _, fits in ends)))
    return _most(asked)


def _outcome(base: Ground, framed: Framed, ids: tuple[str, ...], room: str, end: End) -> tuple[int, bool]:
    """(points and hazard points that the set takes away in that room, whether guard and spots allow it)."""
    later = changed_by(end.survey, framed.candidates, ids)
    away, absences = gone(end.survey, later, room), {judge.rule.slug: judge for judge in base.judged}
    fits = set(overlaps(later, room)) <= set(overlaps(end.survey, room))
    gained = 0
    blocks = [block for block in base.blocks if block.room == room]
    for block, before in zip(blocks, end.seen, strict=True):
        after = look_again(block, later, base.brief, before, away, absences)
        gained += _sum([before]) - _sum([after])
        fits = fits and not too_much_worse(before, after, base.brief.may_worsen)
    return gained, fits


def _most(asked: Iterable[Asked]) -> tuple[Asked, ...]:
    """At most three; nothing hangs on the rest that anybody would notice."""
    matter = (one for one in asked if one.swing or one.breaks)
    order = sorted(matter, key=lambda one: (not one.breaks, -one.swing, one.figure.item, one.figure.field))
    return tuple(order[:MOST])


def words(asked: Asked, survey: Survey) -> str:
    """One sentence: what was taken, between which values it usually lies, and what hangs on it."""
    figure, unit = asked.figure, survey.household.unit
    values = [end.value for end in figure.ends] + [figure.taken]
    low, taken, high = (_shown(value, figure, unit) for value in (min(values), figure.taken, max(values)))
    of = figure.item if figure.item not in ("", figure.room) or len(survey.rooms) > 1 else "the room"
    points = f"up to {asked.swing:,} point{'' if asked.swing == 1 else 's'} hang{'s' if asked.swing == 1 else ''} on it"
    clashes = "the plan might not fit" if asked.breaks else ""
    what = " and ".join(part for part in (points if asked.swing else "", clashes) if part)
    return f"{figure.heading.lower()} of {of}: {taken} was assumed; between {low} and {high} {what}"


def _shown(value: float, figure: Figure, unit: str) -> str:
    return write_length(value, unit) if figure.length else f"{value:,.0f}"


__all__ = ["MOST", "Asked", "End", "Figure", "asked_of_plan", "asked_of_room", "figures", "marked", "words"]
