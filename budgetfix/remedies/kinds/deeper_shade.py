"""Put a deeper shade on a pendant that hangs too high.

Fits: a pendant over a table, too high; a shade in the catalogue whose depth brings the lower edge nearer. The shade
that is there is taken to be 8 in (200 mm) deep: measure it, and add the difference. The lamp stays in its holder, so
no wire is touched.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.remedies.better import better
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.lamps import pendant_at
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Light, Piece

USUAL_IN, USUAL_MM = 8.0, 200.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    found = pendant_at(site)
    if found is None or found[1] is None or found[0].bottom <= 0:
        return ()
    return best(KIND, site, _offers(site, found[0], found[1]), 2)


def _offers(site: Site, light: Light, table: Piece) -> Iterator[Offer]:
    usual = site.mm(USUAL_IN, USUAL_MM)
    for product in of_sort(site, "shade"):
        deeper = (product.height or 0.0) - usual
        change = set_on("lights", light.name, bottom=site.tape(light.bottom - deeper))
        if deeper <= 0 or not better(site, (change,)):
            continue
        bottom = site.tape(light.bottom - deeper)
        text = (
            f"Switch off and let it cool; put the shade on the {light.name}: lower edge {site.words(bottom)} above the "
            f"floor, {site.words(bottom - table.height)} above the {table.name}"
        )
        use = ((product.product, Fraction(1)),)
        accepts = f"about {site.words(product.height or 0.0)} deep, for the watts of the lamp in it"
        yield Offer(f"{called(product)} on the {light.name}", (change,), text, product.product, use, accepts=accepts)


KIND = Kind(
    "deeper-shade", "Put a deeper shade on a pendant", ("pendant-off-height",), (10, 15, 20), 12, _fit,
    hazards=("lamp", "ladder"), tools=("ladder",), bought=True, whats=("shade",), leaves="nothing",
    done_when="nobody at the table looks into the lamp",
)  # fmt: skip
