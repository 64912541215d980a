"""Setting up: the first minutes of a session, once for all its parts, for everybody who works in any of them."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import accumulate

from budgetfix.optimize.problem import Placed, Problem, Session


def wholes(sessions: Iterable[Session]) -> tuple[int, ...]:
    """For each session the number of the one that it is a part of, from 0."""
    numbers = accumulate(0 if session.continues else 1 for session in sessions)
    return tuple(number - 1 for number in numbers)


def setups(problem: Problem) -> tuple[int, ...]:
    """Minutes of setting up in each session; what is too long for the first part goes on in the next."""
    found: list[int] = []
    left = 0
    for session in problem.sessions or ():
        left = left if session.continues else problem.setup_minutes
        found.append(left)
        left = max(0, left - max(session.minutes, default=0))
    return tuple(found)


def set_up(problem: Problem, placed: Iterable[Placed]) -> tuple[dict[str, int], ...]:
    """Minutes of setting up in each session, by person; 0 for whoever works in no part of it."""
    sessions = problem.sessions or ()
    whole = wholes(sessions)
    busy = {(whole[one.session], name) for one in placed if one.session is not None for name in one.people}
    return tuple(
        {
            name: min(setup, there) if (number, name) in busy else 0
            for name, there in zip(problem.people, session.minutes, strict=True)
        }
        for session, setup, number in zip(sessions, setups(problem), whole, strict=True)
    )
