"""What a lease adds to a plan's book: undoing it at the end, and what the landlord is told and asked."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class UndoRow:
    """One chosen remedy to be undone: what to do in words, new holes, person-minutes."""

    id: str
    name: str
    what: str
    plugs: int
    pins: int
    minutes: int


@dataclass(frozen=True, slots=True)
class Undoing:
    """All of it. `keep`: filler and paint to keep, by name; `counted`: they and the minutes are in the plan's sums.

    `lent`: things of the survey that the lease names as the landlord's; all else is the tenant's own.
    """

    rows: tuple[UndoRow, ...]
    keep: tuple[str, ...]
    counted: bool
    most_minutes: int | None = None
    ends: date | None = None
    lent: tuple[str, ...] = ()

    @property
    def minutes(self) -> int:
        """Person-minutes of everything."""
        return sum(row.minutes for row in self.rows)

    @property
    def plugs(self) -> int:
        """New plug holes."""
        return sum(row.plugs for row in self.rows)

    @property
    def pins(self) -> int:
        """New pin holes."""
        return sum(row.pins for row in self.rows)


@dataclass(frozen=True, slots=True)
class Work:
    """One piece of work as a landlord reads it; empty where there is nothing to say."""

    what: str
    where: str
    holes: str
    using: str
    made_good: str


@dataclass(frozen=True, slots=True)
class LandlordNote:
    """The note: work that is asked for, agreed already, told for information; and what stays as it is."""

    asked: tuple[Work, ...]
    agreed: tuple[Work, ...]
    told: tuple[Work, ...]
    kept: tuple[str, ...]
    """What of the landlord's is taken off, kept and put back."""
    untouched: tuple[str, ...]
    """What of the landlord's is not touched at all."""
    never: tuple[str, ...]
    """Classes of work that the lease forbids, none of which is done."""
    ends: date | None = None
