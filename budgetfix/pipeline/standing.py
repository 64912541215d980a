"""Where pieces of a stock stand and until when: as days, as rows for the outputs, and in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from budgetfix.brief.van import Slot
from budgetfix.exports.lettering import month_day
from budgetfix.intake.job import Job
from budgetfix.optimize.stock import Packs, Stock
from budgetfix.outcome.portfolio import Piece, Run, Standing


@dataclass(frozen=True)
class Holding:
    """One job of a group: its house, and the packs that it holds."""

    house: str
    job: Job
    held: Packs
    alone: Packs = ()
    """What it would hold if it were the only one."""
    most: Packs = ()
    """What the others leave to it, where that is not all."""

    def missing(self, piece: str) -> int:
        """Packs of a piece that it would hold if it were the only one, and cannot have, since others hold them.

        What it could have, and yet leaves, it is better without now: then it misses nothing.
        """
        wanted, most = dict(self.alone).get(piece, 0), dict(self.most)
        return wanted - dict(self.held).get(piece, 0) if wanted > most.get(piece, wanted) else 0

    def words(self) -> str:
        """`in Elm Street until 4 July`."""
        stay = self.job.brief.stay
        return f"in {self.house} until {month_day(stay.until)}" if stay is not None else f"in {self.house} all the time"


def stay_of(job: Job) -> tuple[int, int] | None:
    """First and last day on which a job keeps pieces from others, as whole numbers; None: on all days."""
    stay = job.brief.stay
    return None if stay is None else (stay.first.toordinal(), stay.until.toordinal() + stay.turnaround_days)


def elsewhere(holdings: Sequence[Holding], stock: Stock, at: int, ceilings: Packs) -> dict[str, str]:
    """For each piece that one job cannot have as it likes: where its packs stand, by product."""
    found = {}
    for piece, most in ceilings:
        if most < stock.packs[piece]:
            others = [
                one.words()
                for other, one in enumerate(holdings)
                if other != at and dict(one.held).get(piece, 0) and stock.together(other, at)
            ]
            found[piece] = f"stands {' and '.join(others)}" if others else "is kept for the other houses"
    return found


def without_it(mine: Holding, where: Mapping[str, str]) -> tuple[str, ...]:
    """A note for each piece that a job would hold if it were the only one, and that others hold."""
    notes = []
    for piece, packs in mine.alone:
        less = mine.missing(piece)
        if less > 0:
            name = mine.job.catalog.product(piece).name or piece
            short = f"{less} of {packs} packs" if less < packs else "it"
            notes.append(f"{name} {where[piece]}: this plan does without {short}.")
    return tuple(notes)


def undated(holding: Holding) -> tuple[str, ...]:
    """A note where a job says no days and holds something of the stock."""
    if holding.job.brief.stay is not None or not holding.held:
        return ()
    return (f"{holding.house} has no `stay` in its brief, so it keeps its pieces from the other houses all the time.",)


def pieces(catalogs: Mapping[str, Sequence[Holding]]) -> tuple[Piece, ...]:
    """Every piece of each stock, by catalog and id, and where it stands in the order of days."""
    return tuple(
        Piece(
            one.product,
            one.name or one.product,
            one.place,
            one.weight_kg,
            one.stock,
            _stands(holdings, one.product),
            tuple(house.house for house in holdings if house.missing(one.product)),
        )
        for _, holdings in sorted(catalogs.items())
        for one in sorted(holdings[0].job.catalog.products, key=lambda product: product.product)
        if one.stock is not None
    )


def _stands(holdings: Sequence[Holding], piece: str) -> tuple[Standing, ...]:
    found = []
    for one in holdings:
        packs, stay = dict(one.held).get(piece, 0), one.job.brief.stay
        if packs:
            found.append(Standing(one.house, packs, stay.first if stay else None, stay.until if stay else None))
    return tuple(sorted(found, key=lambda one: (one.first or date.min, one.house)))


WAYS = {"out": "brings", "back": "takes back"}


def runs(holdings: Sequence[Holding]) -> tuple[Run, ...]:
    """Every slot of every van, by day and hour."""
    found = [
        _run(one, WAYS[name], slot)
        for one in holdings
        if one.job.brief.vans is not None
        for name, slot in one.job.brief.vans.slots
    ]
    return tuple(sorted(found, key=lambda run: (run.on, run.start_minute, run.van, run.house, run.way)))


def _run(one: Holding, way: str, slot: Slot) -> Run:
    products = {product.product: product for product in one.job.catalog.products}
    carried = [(products[piece], packs) for piece, packs in one.held]
    weights = [(product.weight_kg, packs) for product, packs in carried]
    return Run(
        slot.on,
        slot.start_minute,
        slot.end_minute,
        slot.van,
        one.house,
        way,
        tuple(sorted((product.name or product.product, packs, product.place) for product, packs in carried)),
        sum((each * packs for each, packs in weights if each is not None), Fraction(0)),
        sum(packs for each, packs in weights if each is None),
        slot.load_kg,
    )
