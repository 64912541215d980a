"""Undoing at the end of a lease: minutes, filler and paint, and what a remedy leaves behind.

All figures are our judgement of the trade, shipped as defaults (common practice):

| what was done | to undo it, minutes |
| --- | --- |
| anything that leaves plugs | take it down 10, then 12 for each hole: take out the plug, fill, touch up |
| pins | take it down 3, then 7 for each hole |
| strips | 5 for each thing that hangs on them, pulled slowly along the wall |
| what peels off | 10 |
| painting, hard-wired work and whatever else asks leave | as long as doing it took |
| a thing of the landlord's, or a part of it, that is kept | half as long as its replacement took, to put it back |

Each remedy whose holes are filled takes 5 more for its touch-up. Goods: a small tub of filler and a small tin of paint
do 25 plug holes each, four pin holes count as one (`holes`).
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from budgetfix.catalog.models import Catalog, Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.holes import PINS_A_PLUG, PLUGS_A_TIN, PLUGS_A_TUB

DOWN_PLUGS, EACH_PLUG, DOWN_PINS, EACH_PIN, EACH_STRIP, PEEL, TOUCH_UP = 10, 12, 3, 7, 5, 10, 5
BACK_SHARE = Fraction(1, 2)
UNCOUNTED_PLUGS = 2
"""Plug holes of a remedy that leaves plugs and does not say how many."""
ASKS_LEAVE_MARKS = 40
"""What painting or hard-wired work leaves behind, in pin holes: as much as ten plug holes."""


@dataclass(frozen=True, slots=True)
class Undone:
    """What undoing one remedy takes. `plugs`, `pins`: new holes to fill; `words`: what to do, sentence by sentence."""

    minutes: int
    words: tuple[str, ...]
    plugs: int = 0
    pins: int = 0

    @property
    def fills(self) -> Fraction:
        """Holes to fill, in plug holes."""
        return self.plugs + Fraction(self.pins, PINS_A_PLUG)


def holes_of(one: Candidate) -> tuple[int, int]:
    """(plug holes, pin holes) that a remedy makes."""
    spends = dict(one.spends)
    plugs, pins = (math.ceil(spends.get(name, Fraction(0))) for name in ("holes", "pins"))
    if one.leaves == "plugs" and not plugs:
        plugs = UNCOUNTED_PLUGS
    if one.leaves == "pins" and not pins:
        pins = hung(one)
    return plugs, pins


def hung(one: Candidate) -> int:
    """Things that a remedy hangs up, at least one."""
    return max(1, sum(change.table == "pictures" and not change.remove for change in one.changes))


def marks(one: Candidate) -> int:
    """What a remedy leaves behind, in pin holes; strips and what peels off leave nothing."""
    plugs, pins = holes_of(one)
    return plugs * PINS_A_PLUG + pins + (ASKS_LEAVE_MARKS if one.leaves == "asks leave" else 0)


def undone(one: Candidate, kept: Iterable[str] = ()) -> Undone:
    """What undoing takes. `kept`: what is put back, in words, for example "the old cloth"."""
    plugs, pins = holes_of(one)
    work = sum(step.person_minutes for step in one.work)
    back = tuple(kept)
    minutes, words = Fraction(0), []
    if plugs:
        minutes += DOWN_PLUGS + plugs * EACH_PLUG
        words.append(f"take it off the wall, take out {_some(plugs, 'plug')}, fill and touch up")
    if pins:
        minutes += (0 if plugs else DOWN_PINS) + pins * EACH_PIN
        words.append(f"take out {_some(pins, 'pin')}, fill and touch up")
    if one.leaves == "strips":
        minutes += EACH_STRIP * hung(one)
        words.append("pull the strips slowly along the wall")
    if one.leaves == "peels off":
        minutes += PEEL
        words.append("peel it off slowly")
    if one.leaves == "asks leave":
        minutes += work
        words.append("make it good as agreed in writing")
    if back:
        minutes += work * BACK_SHARE
        words.append(f"put {' and '.join(back)} back")
    minutes += TOUCH_UP if plugs or pins else 0
    return Undone(math.ceil(minutes), tuple(words), plugs, pins)


def _some(count: int, what: str) -> str:
    return f"{count} {what}{'' if count == 1 else 's'}"


def goods_to_keep(one: Undone, catalog: Catalog) -> tuple[tuple[str, Fraction], ...]:
    """Filler and paint to keep for it, as shares of a tub and a tin, by product; what is not sold is left out."""
    goods = ((_cheapest(catalog, "filler"), PLUGS_A_TUB), (_cheapest(catalog, "paint"), PLUGS_A_TIN))
    return tuple(
        sorted((product.product, one.fills / enough) for product, enough in goods if product is not None and one.fills)
    )


def _cheapest(catalog: Catalog, what: str) -> Product | None:
    return min(catalog.of(what), key=lambda product: (product.price_minor, product.product), default=None)
