"""From minute to minute: when each step of one session begins, so that nobody is in two places.

Two people who begin together always get through: first what both do, then what each does alone, since a step shares a
session with the one before it only where its people did that one as well. Within that the working order is kept as far
as it goes, and nobody waits longer than a breather. Among three or more people the same rule may find no way; then
there are no times, rather than wrong ones.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

BREATHER = 15
"""Minutes of waiting, all people together, for which the working order is kept (common practice: time for tea)."""


@dataclass(frozen=True, slots=True)
class Piece:
    """One step, or the part of it that the same people do. `after`: places in the working order that come before it."""

    people: tuple[str, ...]
    minutes: int
    after: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class _State:
    """What has its place: the minute at which each person is free, begins by place, and minutes waited."""

    free: Mapping[str, int]
    begins: Mapping[int, int]
    waited: int = 0


Order = Callable[[int], tuple[int, ...]]


def laid_out(pieces: tuple[Piece, ...], there: Mapping[str, int], setup: int = 0) -> tuple[int, ...] | None:
    """The minute, from the start of the session, at which each piece begins; None where no way was found.

    `pieces` stand in working order. `there`: minutes of each person, of which the first `setup` go to setting up.
    """
    session = _Session(pieces, there)
    empty = _State(dict.fromkeys(there, setup), {})
    for joint_order in session.joint_orders():
        whole = session.rest(empty, joint_order)
        if whole is not None:
            done = session.in_working_order(empty, whole, joint_order)
            return tuple(done.begins[place] for place in range(len(pieces)))
    return None


@dataclass(frozen=True)
class _Session:
    """The pieces of one session and the minutes of its people."""

    pieces: tuple[Piece, ...]
    there: Mapping[str, int]

    def joint_orders(self) -> tuple[Order, ...]:
        """Orders to try for what several do at once: the working order, the longest first, the most people first."""
        pieces = self.pieces
        return (
            lambda place: (place,),
            lambda place: (-pieces[place].minutes, place),
            lambda place: (-len(pieces[place].people), -pieces[place].minutes, place),
            lambda place: (min((self.there[one] for one in pieces[place].people), default=0), place),
        )

    def in_working_order(self, state: _State, whole: _State, joint_order: Order) -> _State:
        """Step by step the first in the working order after which the rest still fits, with no more waiting."""
        most = max(BREATHER, whole.waited)
        while len(state.begins) < len(self.pieces):
            tried = ((after, self.rest(after, joint_order)) for after in self.next_states(state))
            kept = next(((after, rest) for after, rest in tried if rest is not None and rest.waited <= most), None)
            if kept is None:
                return whole
            state, whole = kept
        return state

    def next_states(self, state: _State) -> Iterator[_State]:
        """One ready piece more, the first in working order first."""
        return (self.put(state, place) for place in self.ready(state))

    def rest(self, state: _State, joint_order: Order) -> _State | None:
        """All that is left, joint pieces first and the gaps before them filled; None where it does not fit."""
        while len(state.begins) < len(self.pieces):
            ready = self.ready(state)
            joint = sorted((place for place in ready if len(self.pieces[place].people) > 1), key=joint_order)
            state = self.put(self.filled(state, joint[0]), joint[0]) if joint else self.put(state, ready[0])
        fits = all(minute <= self.there[one] for one, minute in state.free.items() if self.works(one))
        return state if fits else None

    def works(self, person: str) -> bool:
        """Whether somebody has anything to do in the session: who has not, does not set up either."""
        return any(person in piece.people for piece in self.pieces)

    def filled(self, state: _State, place: int) -> _State:
        """While others are still busy, the people of a joint piece do what is short enough to fit in."""
        for person in self.pieces[place].people:
            for other in self.ready(state):
                begin = self.begin(state, place)
                mine = self.pieces[other]
                if mine.people == (person,) and self.begin(state, other) + mine.minutes <= begin:
                    state = self.put(state, other)
        return state

    def ready(self, state: _State) -> list[int]:
        """Places whose predecessors have their time, in working order."""
        left = (place for place in range(len(self.pieces)) if place not in state.begins)
        return [place for place in left if all(one in state.begins for one in self.pieces[place].after)]

    def begin(self, state: _State, place: int) -> int:
        """The earliest minute for a piece: its people are free, and what comes before it is over."""
        piece = self.pieces[place]
        free = [state.free[one] for one in piece.people]
        over = [state.begins[one] + self.pieces[one].minutes for one in piece.after]
        return max((*free, *over), default=0)

    def put(self, state: _State, place: int) -> _State:
        """One piece more has its place."""
        begin, piece = self.begin(state, place), self.pieces[place]
        waited = sum(begin - state.free[one] for one in piece.people)
        free = {**state.free, **dict.fromkeys(piece.people, begin + piece.minutes)}
        return _State(free, {**state.begins, place: begin}, state.waited + waited)
