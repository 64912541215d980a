"""The sessions that are left, and how much of them: those that are gone keep their numbers and have no minutes."""

from __future__ import annotations

from datetime import date

from budgetfix.brief.models import Brief, Hours
from budgetfix.framing.options import sessions
from budgetfix.optimize.setting_up import wholes
from budgetfix.outcome.so_far import PlannedStep, SoFar, StepBack
from budgetfix.pipeline.rest_done import Done

DAY = 24 * 60


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
    """The sessions with what is left of them: real minutes come off where they were typed, else planned ones."""
    if brief.hours is None:
        return None
    used: dict[tuple[int, str], int] = {}
    for back in so_far.steps:
        at = place_of(back.planned, brief)
        if at is not None and at >= live:
            for person, minutes in taken(back):
                used[at, person] = used.get((at, person), 0) + minutes
    names = [person.name for person in brief.people]
    return tuple(_left(one, names, at, used) if at >= live else _gone(one) for at, one in enumerate(brief.hours))


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


def _left(one: Hours, names: list[str], at: int, used: dict[tuple[int, str], int]) -> Hours:
    minutes, typed = (
        tuple(max(0, there - used.get((at, name), 0)) for name, there in zip(names, all_there, strict=True))
        for all_there in (one.minutes, one.typed_minutes)
    )
    return one if minutes == one.minutes else _with(one, minutes, typed)


def _with(one: Hours, minutes: tuple[int, ...], typed: tuple[int, ...]) -> Hours:
    return Hours(**{**dict(one), "minutes": minutes, "before_load": typed if one.before_load else ()})


def _gone(one: Hours) -> Hours:
    nothing = tuple(0 for _ in one.minutes)
    return _with(one, nothing, nothing)


def earliest(done: Done, brief: Brief) -> tuple[tuple[str, int], ...]:
    """(candidate, first session) of each begun one: its next step stands no earlier than its wait allows."""
    found = []
    for planned in done.begun:
        numbers = done.numbers(planned.candidate.id)
        for number, work in enumerate(planned.candidate.work, start=1):
            before = done.step(planned.candidate.id, number - 1)
            if number not in numbers and before is not None:
                found.append((planned.candidate.id, after(before, brief, work.wait_sessions, work.wait_minutes)))
                break
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
