"""The sessions in which each step can stand at all: arithmetic on waits, goods and hours, no solver."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import accumulate

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Option, Step

Key = tuple[str, int]
Window = tuple[int, int]
"""First and last session; the last is before the first where there is none."""


def windows(facts: Facts, sure: Iterable[str] = ()) -> dict[Key, Window]:
    """First and last session of each step, by (option id, step).

    `sure`: options that are chosen for certain; only they push what they need to earlier sessions.
    """
    first = _firsts(facts)
    last = _lasts(facts, frozenset(sure))
    found = {key: (first[key], last[key]) for key in first}
    for option in facts.options:
        if option.one_day and facts.horizon:
            found |= _within_a_day(facts, option, found)
    return found


def _within_a_day(facts: Facts, option: Option, found: dict[Key, Window]) -> dict[Key, Window]:
    """The windows of an option whose steps all stand on one day; none where no day holds them."""
    held = {day: _on(facts, option, found, day) for day in sorted(set(facts.days))}
    fits = {day: places for day, places in held.items() if places is not None}
    if not fits:
        return {(option.id, index): (facts.horizon, -1) for index in range(len(option.steps))}
    last = max(session for session, day in enumerate(facts.days) if day == max(fits))
    earliest = fits[min(fits)]
    return {
        (option.id, index): (session, min(last, found[option.id, index][1])) for index, session in enumerate(earliest)
    }


def _on(facts: Facts, option: Option, found: dict[Key, Window], day: int) -> list[int] | None:
    """The earliest session of one day for each step, waits kept; None where they do not all fit."""
    here = [session for session, of in enumerate(facts.days) if of == day]
    if _person_minutes(option.steps) > sum(sum(facts.minutes[session]) for session in here):
        return None
    places: list[int] = []
    for index, step in enumerate(option.steps):
        ready = facts.next_session(option.steps[index - 1], step, places[-1]) if places else here[0]
        least = max(ready, found[option.id, index][0])
        place = next((session for session in here if session >= least and facts.fitting(step, session)), None)
        if place is None:
            return None
        places.append(place)
    return places


def _firsts(facts: Facts) -> dict[Key, int]:
    found: dict[Key, int] = {}
    behind = _closure(facts.needs)
    room = list(accumulate(sum(row) for row in facts.minutes))
    for id in _needed_first(facts):
        option = facts.by_id[id]
        ahead = sum(_person_minutes(facts.by_id[one].steps) for one in behind[id])
        earliest = option.first_session
        for need in facts.needs[id]:
            steps = facts.by_id[need].steps
            if steps and option.steps:
                earliest = max(earliest, _next(facts, steps[-1], option.steps[0], found[need, len(steps) - 1]))
        for index, step in enumerate(option.steps):
            if index:
                earliest = _next(facts, option.steps[index - 1], step, found[id, index - 1])
            ahead += step.person_minutes
            earliest = max(earliest, step.first_session)
            earliest = max(earliest, next((t for t, sum_ in enumerate(room) if sum_ >= ahead), facts.horizon))
            found[id, index] = _fit_from(facts, step, earliest)
            earliest = found[id, index]
    return found


def _lasts(facts: Facts, sure: frozenset[str]) -> dict[Key, int]:
    found: dict[Key, int] = {}
    after = _inverse(facts.needs, sure)
    behind = _closure(after)
    room = list(accumulate(sum(row) for row in reversed(facts.minutes)))
    for id in reversed(_needed_first(facts)):
        option = facts.by_id[id]
        following = sum(_person_minutes(facts.by_id[one].steps) for one in behind[id])
        latest = facts.horizon - 1 if option.last_session is None else min(option.last_session, facts.horizon - 1)
        for other in after[id]:
            steps = facts.by_id[other].steps
            if steps and option.steps:
                latest = min(latest, _last_before(facts, option.steps[-1], steps[0], found[other, 0]))
        for index in reversed(range(len(option.steps))):
            step = option.steps[index]
            if index + 1 < len(option.steps):
                latest = _last_before(facts, step, option.steps[index + 1], found[id, index + 1])
            following += step.person_minutes
            behind_end = next((t for t, sum_ in enumerate(room) if sum_ >= following), facts.horizon)
            latest = min(latest, facts.horizon - 1 - behind_end)
            found[id, index] = _fit_back(facts, step, latest)
            latest = found[id, index]
    return found


def _next(facts: Facts, before: Step, step: Step, session: int) -> int:
    return facts.next_session(before, step, session) if session < facts.horizon else facts.horizon


def _fit_from(facts: Facts, step: Step, earliest: int) -> int:
    return next((t for t in range(earliest, facts.horizon) if facts.fitting(step, t)), facts.horizon)


def _fit_back(facts: Facts, step: Step, latest: int) -> int:
    return next((t for t in range(min(latest, facts.horizon - 1), -1, -1) if facts.fitting(step, t)), -1)


def _last_before(facts: Facts, before: Step, step: Step, session: int) -> int:
    return next(
        (t for t in range(min(session, facts.horizon - 1), -1, -1) if facts.next_session(before, step, t) <= session),
        -1,
    )


def _person_minutes(steps: Iterable[Step]) -> int:
    return sum(step.person_minutes for step in steps)


def person_minutes(option: Option) -> int:
    """Minutes of one option, counted for each person at work."""
    return _person_minutes(option.steps)


def _needed_first(facts: Facts) -> list[str]:
    """Ids in an order in which what is needed comes before what needs it; circles are cut open."""
    order: list[str] = []
    state: dict[str, int] = {}
    for start in facts.by_id:
        stack = [start]
        while stack:
            id = stack[-1]
            if state.get(id) is None:
                state[id] = 1
                stack.extend(need for need in facts.needs[id] if need not in state)
                continue
            stack.pop()
            if state[id] == 1:
                state[id] = 2
                order.append(id)
    return order


def _closure(edges: dict[str, tuple[str, ...]]) -> dict[str, frozenset[str]]:
    """Everything that can be reached from each id."""
    found: dict[str, frozenset[str]] = {}
    for start in edges:
        seen: set[str] = set()
        stack = list(edges[start])
        while stack:
            id = stack.pop()
            if id not in seen:
                seen.add(id)
                stack.extend(edges[id])
        found[start] = frozenset(seen)
    return found


def _inverse(needs: dict[str, tuple[str, ...]], sure: frozenset[str]) -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {id: [] for id in needs}
    for id, wanted in needs.items():
        if id in sure:
            for need in wanted:
                found[need].append(id)
    return {id: tuple(others) for id, others in found.items()}
