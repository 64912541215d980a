"""A quote for a client, and the costing behind it, as records. Money in minor units."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from budgetfix.brief.quote import QuoteWords
from budgetfix.brief.stay import Stay
from budgetfix.brief.van import Photographs, Vans


@dataclass(frozen=True, slots=True)
class QuoteLine:
    """One thing that is done, in the client's words, and all that the client pays for it. `id` is never shown."""

    id: str
    words: str
    price_minor: int


@dataclass(frozen=True, slots=True)
class QuoteRoom:
    """The lines of one room, or of the whole job (`room` empty)."""

    room: str
    lines: tuple[QuoteLine, ...]

    @property
    def sum_minor(self) -> int:
        return sum(line.price_minor for line in self.lines)


@dataclass(frozen=True, slots=True)
class QuoteOption:
    """One of the options. `name`: Essential, Recommended or Complete. Rooms in the survey's order, the whole job last.

    `taken`: things that are taken down or carried out; `moved`: things that are moved; `holes`: new ones in walls.
    """

    letter: str
    name: str
    rooms: tuple[QuoteRoom, ...]
    taken: tuple[str, ...] = ()
    moved: tuple[str, ...] = ()
    holes: int = 0

    @property
    def total_minor(self) -> int:
        return sum(room.sum_minor for room in self.rooms)


@dataclass(frozen=True, slots=True)
class Quote:
    """All options of one job, cheapest first. `recommended`: the letter of the one that is advised."""

    title: str
    currency: str
    made: date | None
    until: date | None
    options: tuple[QuoteOption, ...]
    recommended: str
    words: QuoteWords
    stay: Stay | None = None
    vans: Vans | None = None
    photographs: Photographs | None = None
    days: tuple[date, ...] = ()
    """Days on which there is work in the home."""
    starts: tuple[int, ...] = ()
    """The minute of each of these days at which it begins; 0 where the brief says no hour."""


@dataclass(frozen=True, slots=True)
class CostRow:
    """One line of money seen from inside. `out_minor`: what leaves the till for it; the rest is margin."""

    id: str
    sort: str
    """bought, stock, hire, tool, work, van, fixed, delivery or tax."""
    name: str
    use: str
    source: str
    packs: int | None
    shelf_minor: int | None
    markup: str
    client_minor: int
    out_minor: int
    minutes: int | None = None
    days: int = 0
    place: str = ""
    weight_kg: float | None = None

    @property
    def margin_minor(self) -> int:
        return self.client_minor - self.out_minor


@dataclass(frozen=True, slots=True)
class VanLoad:
    """What one slot carries of what it may carry."""

    name: str
    on: date
    start_minute: int
    end_minute: int
    load_kg: float
    most_kg: float | None


@dataclass(frozen=True, slots=True)
class Costing:
    """The whole bill of the plan from inside. `rate_minor`: what an hour of one person is charged at."""

    rows: tuple[CostRow, ...]
    loads: tuple[VanLoad, ...]
    rate_minor: int | None
    options: tuple[tuple[str, str, int, int], ...]
    """(letter, name, what the client pays, margin) of each option of the quote."""
