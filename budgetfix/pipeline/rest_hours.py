"""The sessions that are left, and how much of them: those that are gone keep their numbers and have no minutes."""

from __future__ import annotations

from datetime import date
from math import floor

from budgetfix.brief.models import Brief, Hours
from budgetfix.framing.options import sessions
from budgetfix.optimize.setting_up import wholes
from budgetfix.outcome.so_far import PlannedStep, SoFar, StepBack
from budgetfix.pipeline.rest_done import Done

DAY = 24 * 60
Used = dict[tuple[int, str], int]
"""Minutes by session, from 0, and person."""


def place_of(step: PlannedStep, brief: Brief) -> int | None:
    """The session, from 0, in which a step was planned; None where it was in none, or the brief has it no longer."""
    hours = brief.hours or ()
    if step.on is not None:
        return next(
            (at for at, one in enumerate(hours) if (one.on, one.start_minute) == (step.on, step.start_minute)), None
        )
    number = step.task.session
    return number - 1 if number is not None and number <= len(hours) else None


def whole_of(step: PlannedStep, brief: Brief) -> tuple[date | None, int | None]:
    """What tells the whole session of a step from others: parts that the van cuts are one."""
    place = place_of(step, brief)
    if place is None:
        return step.on, step.task.session
    return None, wholes(sessions(brief) or ())[place]


def live_from(so_far: SoFar, brief: Brief, day: date) -> int:
    """The first session that is not gone: by date; among those without dates, the last one with a tick."""
    hours = brief.hours or ()
    places = [place_of(one.planned, brief) for one in so_far.done]
    ticked = max((at for at in places if at is not None and hours[at].on is None), default=0)
    for at, one in enumerate(hours):
        if (one.on is None and at >= ticked) or (one.on is not None and one.on >= day):
            return at
    return len(hours)


def hours_left(so_far: SoFar, brief: Brief, live: int) -> tuple[Hours, ...] | None:
    """The sessions with what is left of them: real minutes come off where they were typed, else planned ones.

    Real minutes come off the hours as typed, of the rest of which the brief's load holds; planned ones off that.
    """
    if brief.hours is None:
        return None
    real: Used = {}
    planned: Used = {}
    for back in so_far.steps:
        at = place_of(back.planned, brief)
        used = planned if back.real_minutes is None else real
        if at is not None and at >= live:
            for person, minutes in taken(back):
                used[at, person] = used.get((at, person), 0) + minutes
    return tuple(
        _left(one, at, brief, real, planned) if at >= live else _gone(one) for at, one in enumerate(brief.hours)
    )


def taken(back: StepBack) -> list[tuple[str, int]]:
    """(person, minutes) that a step has taken: nothing where it is not done and no minutes were typed."""
    if back.real_minutes is None and not back.done:
        return []
    task = back.planned.task
    minutes = task.minutes if back.real_minutes is None else back.real_minutes
    helped = min(task.help_minutes, minutes)
    return [
        (name, helped if place and task.help_minutes else minutes) for place, name in enumerate(back.planned.people)
    ]


def _left(one: Hours, at: int, brief: Brief, real: Used, planned: Used) -> Hours:
    minutes, typed = [], []
    for person, loaded, whole in zip(brief.people, one.minutes, one.typed_minutes, strict=True):
        took, due = real.get((at, person.name), 0), planned.get((at, person.name), 0)
        there = floor((whole - took) * brief.load) if took and one.before_load else loaded - took
        minutes.append(max(0, there - due))
        typed.append(max(0, whole - took - due))
    return one if tuple(minutes) == one.minutes else _with(one, tuple(minutes), tuple(typed))


def _with(one: Hours, minutes: tuple[int, ...], typed: tuple[int, ...]) -> Hours:
    return Hours(**{**dict(one), "minutes": minutes, "before_load": typed if one.before_load else ()})


def _gone(one: Hours) -> Hours:
    nothing = tuple(0 for _ in one.minutes)
    return _with(one, nothing, nothing)


def earliest(done: Done, brief: Brief) -> tuple[tuple[str, int, int], ...]:
    """(candidate, place of a step among those left, first session), both from 0, of what waits for a done step."""
    found = []
    for planned in done.begun:
        id = planned.candidate.id
        numbers = done.numbers(id)
        left = [(number, work) for number, work in enumerate(planned.candidate.work, start=1) if number not in numbers]
        for place, (number, work) in enumerate(left):
            before = done.step(id, number - 1)
            if before is not None:
                found.append((id, place, after(before, brief, work.wait_sessions, work.wait_minutes)))
    return tuple(found)


def after(before: StepBack, brief: Brief, wait_sessions: int, wait_minutes: int) -> int:
    """First session, from 0, for what waits for a step that is done; 0 where the brief has no hours.

    A wait in minutes counts from the end of the session of that step, as it does in a plan.
    """
    there = sessions(brief) or ()
    place = place_of(before.planned, brief)
    if place is None:
        return _by_date(before.planned, brief, wait_minutes)
    number = wholes(there)
    least = place
    if wait_sessions > 0:
        due = number[place] + wait_sessions
        least = next((at for at in range(len(there)) if number[at] >= due), len(there))
    if wait_minutes <= 0:
        return least
    ready = there[place].end_minute + wait_minutes
    later = range(max(least, place + 1), len(there))
    return next((at for at in later if there[at].start_minute >= ready), len(there))


def _by_date(step: PlannedStep, brief: Brief, wait_minutes: int) -> int:
    """For a step whose session the brief lists no longer; without dates its wait is over."""
    if step.on is None or wait_minutes <= 0:
        return 0
    ready = step.on.toordinal() * DAY + step.start_minute + step.task.minutes + wait_minutes
    hours = brief.hours or ()
    return next(
        (at for at, one in enumerate(hours) if one.on and one.on.toordinal() * DAY + one.start_minute >= ready),
        len(hours),
    )


def session_from(on: date | None, day: int, brief: Brief) -> int:
    """First session on or after a date, or, among those without dates, a day; the number of sessions for none."""
    hours = brief.hours or ()
    for at, one in enumerate(hours):
        if one.on is not None and on is not None:
            if one.on >= on:
                return at
        elif one.day >= day:
            return at
    return len(hours)
