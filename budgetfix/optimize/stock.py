"""One stock, several houses: who holds what on which day, and where that is more than there is."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import comb

Packs = tuple[tuple[str, int], ...]
"""(piece, packs), by piece: what is held, or the most that may be."""


@dataclass(frozen=True)
class Stock:
    """Packs of each piece, and the days on which each job holds its pieces: (first, last), both counted in.

    Days are whole numbers; None: on all days.
    """

    packs: Mapping[str, int]
    stays: tuple[tuple[int, int] | None, ...]

    def together(self, one: int, other: int) -> bool:
        """True where two jobs have a day in common."""
        here, there = self.stays[one], self.stays[other]
        return here is None or there is None or (here[0] <= there[1] and there[0] <= here[1])

    def there(self, job: int, day: int | None) -> bool:
        """True where a job holds its pieces on a day; on the day None only those do that hold them on all days."""
        stay = self.stays[job]
        return stay is None or (day is not None and stay[0] <= day <= stay[1])

    @property
    def days(self) -> tuple[int | None, ...]:
        """The days on which something comes to a house: no other day holds more. None where nothing is dated."""
        return tuple(sorted({stay[0] for stay in self.stays if stay is not None})) or (None,)


def in_order(stock: Stock) -> list[int]:
    """Jobs by their first day, those without dates first."""
    return sorted(range(len(stock.stays)), key=lambda at: (stock.stays[at] or (-1, -1), at))


@dataclass(frozen=True, slots=True)
class Conflict:
    """More packs of a piece than there are on a day (None: on all days), and the jobs that hold them."""

    day: int | None
    piece: str
    jobs: tuple[int, ...]


def conflicts(stock: Stock, held: Sequence[Packs]) -> list[Conflict]:
    """Every conflict, by day, then by piece."""
    maps = [dict(packs) for packs in held]
    found = []
    for day in stock.days:
        for piece in sorted(stock.packs):
            jobs = tuple(at for at, mine in enumerate(maps) if mine.get(piece, 0) and stock.there(at, day))
            if sum(maps[at][piece] for at in jobs) > stock.packs[piece]:
                found.append(Conflict(day, piece, jobs))
    return found


def left_over(stock: Stock, held: Mapping[int, Packs], job: int) -> Packs:
    """The packs of each piece that others leave to a job on every day of its own stay; those that all are, left out."""
    found = []
    maps = {other: dict(packs) for other, packs in held.items() if other != job and stock.together(other, job)}
    days = [day for day in stock.days if stock.there(job, day)] or [None]
    for piece, packs in sorted(stock.packs.items()):
        taken = max(sum(mine.get(piece, 0) for other, mine in maps.items() if stock.there(other, day)) for day in days)
        if taken:
            found.append((piece, max(0, packs - taken)))
    return tuple(found)


def within(packs: Packs, ceilings: Packs) -> bool:
    """True where nothing is held beyond its ceiling."""
    most = dict(ceilings)
    return all(count <= most.get(piece, count) for piece, count in packs)


def lower(ceilings: Packs, piece: str, most: int) -> Packs:
    """The same ceilings with one of them lower."""
    found = dict(ceilings)
    found[piece] = min(most, found.get(piece, most))
    return tuple(sorted(found.items()))


MOST_WAYS = 10
"""Ways to deal out a piece up to which each of them is told."""


def deals(packs: int, held: Sequence[int]) -> list[tuple[int, ...]]:
    """Ceilings of the jobs that hold too many packs on one day, so that every allocation keeps one of these tuples.

    Every way to deal out the packs; where those are many, for each job one that leaves it one pack less than it holds,
    and nothing asked of the others.
    """
    if comb(packs + len(held) - 1, packs) <= MOST_WAYS:
        return _dealt(packs, len(held))
    return [tuple(mine - 1 if place == less else packs for place, mine in enumerate(held)) for less in range(len(held))]


def _dealt(packs: int, count: int) -> list[tuple[int, ...]]:
    """Every way to deal out all of some packs; the first jobs get most first."""
    if count == 1:
        return [(packs,)]
    return [(mine, *rest) for mine in range(packs, -1, -1) for rest in _dealt(packs - mine, count - 1)]
