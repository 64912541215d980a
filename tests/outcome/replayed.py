"""A plan played out draw by draw, coded a second time from the words alone, with a generator of its own.

It shares nothing with `budgetfix.outcome.playing` and `draws` but the plan's data.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from random import Random
from statistics import NormalDist

from budgetfix.optimize.problem import Option, Session

Key = tuple[str, int]
DAY = 1440


@dataclass(frozen=True)
class Piece:
    """One step on the list: where it is planned, who does it, its three figures and its planned minutes."""

    option: str
    step: int
    session: int
    people: tuple[str, ...]
    figures: tuple[float, float, float]
    minutes: int
    help: int = 0

    @property
    def key(self) -> Key:
        return self.option, self.step


@dataclass
class Household:
    """Sessions as they are really there, minutes as typed."""

    people: tuple[str, ...]
    sessions: Sequence[Session]
    options: Mapping[str, Option]
    setup: int = 0
    last: int | None = None
    numbers: list[int] = field(default_factory=list)
    fetched: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """The rounds of shops that must be over before an option's goods are there, by option."""

    def __post_init__(self) -> None:
        for session in self.sessions:
            before = self.numbers[-1] if self.numbers else -1
            self.numbers.append(before if session.continues else before + 1)

    @property
    def count(self) -> int:
        return len(self.sessions) if self.last is None else min(len(self.sessions), self.last + 1)

    def hours(self) -> list[dict[str, float]]:
        """Minutes of each person in each session after setting up, which goes on in the next part where it must."""
        found, carried = [], 0
        for session in self.sessions:
            carried = carried if session.continues else self.setup
            pairs = zip(self.people, session.minutes, strict=True)
            found.append({name: max(0.0, there - carried) for name, there in pairs})
            carried = max(0, carried - max(session.minutes, default=0))
        return found


@dataclass(frozen=True)
class Outcome:
    """One draw: the session of each step that found one, and whether something was put off from each session."""

    where: Mapping[Key, int]
    over: tuple[bool, ...]


def figure(random: Random, shared: float, figures: tuple[float, float, float]) -> float:
    """One figure of one draw: half of its variance is shared by all of them."""
    low, likely, high = figures
    if low == high:
        return likely
    share = NormalDist().cdf(math.sqrt(0.5) * shared + math.sqrt(0.5) * random.gauss(0, 1))
    if share < (likely - low) / (high - low):
        return low + math.sqrt(share * (high - low) * (likely - low))
    return high - math.sqrt((1 - share) * (high - low) * (high - likely))


def one_draw(home: Household, pieces: Sequence[Piece], minutes: Mapping[Key, float]) -> Outcome:
    """Sessions in order; what was put off first; begun where all is given, else put off."""
    where: dict[Key, int] = {}
    by_key = {piece.key: piece for piece in pieces}
    over: list[bool] = []
    waiting: list[Piece] = []
    hours = home.hours()
    for at in range(home.count):
        left, rest = hours[at], []
        for piece in [*waiting, *(one for one in pieces if one.session == at)]:
            parts = [minutes[piece.key] * share for share in shares(piece)]
            enough = all(left[name] >= part - 1e-9 for name, part in zip(piece.people, parts, strict=True))
            if enough and open_to(home, piece, at) and ready(home, by_key, where, piece, at):
                where[piece.key] = at
                for name, part in zip(piece.people, parts, strict=True):
                    left[name] -= part
            else:
                rest.append(piece)
        waiting = rest
        over.append(bool(waiting))
    return Outcome(where, tuple(over))


def shares(piece: Piece) -> list[float]:
    """How much of a step each of its people is there for: a helper for as large a part as planned."""
    if not piece.help:
        return [1.0] * len(piece.people)
    return [1.0, piece.help / piece.minutes if piece.minutes else 0.0]


def open_to(home: Household, piece: Piece, at: int) -> bool:
    """Goods are there, it is not too late, and the session is not too quiet."""
    option = home.options[piece.option]
    step = option.steps[piece.step]
    if at < option.first_session or at < step.first_session:
        return False
    if option.last_session is not None and at > option.last_session:
        return False
    return not (step.loud and home.sessions[at].quiet)


def ready(home: Household, by_key: Mapping[Key, Piece], where: Mapping[Key, int], piece: Piece, at: int) -> bool:
    """All that comes before is done long enough ago, by the same people where it is the same session."""
    option = home.options[piece.option]
    step = option.steps[piece.step]
    wanted = [*option.needs, *home.fetched.get(piece.option, ())]
    needed = [(need, len(home.options[need].steps) - 1) for need in wanted if need in home.options]
    before = [(piece.option, piece.step - 1)] if piece.step else [key for key in needed if key[1] >= 0]
    for key in before:
        if key not in where:
            return False
        there = where[key]
        stayed = by_key[key].people[:1] if by_key[key].help else by_key[key].people
        if there == at and not set(piece.people) <= set(stayed):
            return False
        if home.numbers[at] < home.numbers[there] + step.wait_sessions:
            return False
        over = home.sessions[there].end_minute + step.wait_minutes
        if step.wait_minutes and home.sessions[at].start_minute < over:
            return False
        days = [home.sessions[one].start_minute // DAY for one in (there, at)]
        if option.one_day and piece.step and days[0] != days[1]:
            return False
    return True


def gone(home: Household, pieces: Sequence[Piece], where: Mapping[Key, int]) -> frozenset[str]:
    """Options with a step that found no session, or that need such a one."""
    off = {piece.option for piece in pieces if piece.key not in where}
    while True:
        before = {id: {*option.needs, *home.fetched.get(id, ())} for id, option in home.options.items()}
        more = {id for id, needed in before.items() if id not in off and off & needed}
        if not more:
            return frozenset(off)
        off |= more


@dataclass
class Counted:
    """What came of many draws."""

    draws: int
    fits: int = 0
    all_placed: int = 0
    """Draws in which every step found a session; `fits`: and nothing needs what has none."""
    unplaced: Counter[str] = field(default_factory=Counter)
    gone: Counter[str] = field(default_factory=Counter)
    over: Counter[int] = field(default_factory=Counter)


def counted(home: Household, pieces: Sequence[Piece], draws: int, seed: int) -> Counted:
    """Many draws with a generator of their own."""
    random, found = Random(seed), Counted(draws)
    for _ in range(draws):
        shared = random.gauss(0, 1)
        outcome = one_draw(home, pieces, {piece.key: figure(random, shared, piece.figures) for piece in pieces})
        off = gone(home, pieces, outcome.where)
        found.fits += not off
        found.gone.update(off)
        unplaced = {piece.option for piece in pieces if piece.key not in outcome.where}
        found.all_placed += not unplaced
        found.unplaced.update(unplaced)
        found.over.update(at for at, late in enumerate(outcome.over) if late)
    return found
