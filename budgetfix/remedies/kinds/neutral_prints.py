"""Put neutral prints into frames that show faces or names.

Fits: frames of the room marked as personal; prints in the catalogue, one a frame. The frames stay where they hang, so
no wall becomes bare and no hole shows; the photographs go into an envelope with the household's name, for the owners
to keep. Nothing is thrown away, and the owners are asked first.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.products import called, of_sort

EACH = (5, 8, 12)
"""Minutes a frame: our judgement."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    return best(KIND, site, _offers(site), 1)


def _offers(site: Site) -> Iterator[Offer]:
    names = sorted(one.name for one in site.survey.pictures if one.room == site.room and one.personal)
    for product in of_sort(site, "print") if names else ():
        text = (
            f"Ask the owners; open the frames of {', '.join(names)}, put the photographs into a marked envelope, put a "
            "print into each, hang each back on its own pin"
        )
        changes = tuple(set_on("pictures", name, personal=False) for name in names)
        low, likely, high = (each * len(names) for each in EACH)
        uses = ((product.product, Fraction(len(names))),)
        name = f"{called(product)}: change what is in {len(names)} {'frame' if len(names) == 1 else 'frames'}"
        yield Offer(name, changes, text, product.product, uses, minutes=(low, likely, high))


KIND = Kind(
    "neutral-prints", "Put neutral prints into personal frames", ("personal-things",), (5, 8, 12), 11, _fit,
    bought=True, whats=("print",), done_when="no face and no name is in view, and the photographs are safe",
)  # fmt: skip
