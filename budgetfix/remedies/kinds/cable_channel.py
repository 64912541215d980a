"""Run the cables of a wall screen down the wall in a channel that is stuck on.

Fits: a screen on the wall, on no bench, with cable in view; channels in the catalogue, as many as the cable is long.
It is stuck to sound paint and peels off again; your lease decides. Paint it with the wall's colour if you have it.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Hung

USUAL_MM = 1000.0
"""Length of one channel where the catalogue does not say (common practice)."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    screen = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(screen, Hung) or screen.on or screen.cables <= 0:
        return ()
    return best(KIND, site, (_offer(site, screen, product) for product in of_sort(site, "cable channel")), 1)


def _offer(site: Site, screen: Hung, product: Product) -> Offer:
    pieces = max(1, math.ceil(screen.cables / (product.width or USUAL_MM) - 1e-9))
    at, down = screen.from_left + screen.width / 2, max(0.0, screen.bottom - screen.cables)
    text = (
        f"Wipe wall {screen.wall}, stick the channel straight down from the screen's lower edge "
        f"({site.words(screen.bottom)} above the floor) to {site.words(down)}, {site.words(at)} from the left corner; "
        "press as the pack says, wait, lay the cables in, clip the lid on"
    )
    use = ((product.product, Fraction(pieces)),)
    change = set_on("pictures", screen.name, cables=0.0)
    return Offer(f"{called(product)} below the {screen.name}", (change,), text, product.product, use, wall=screen.wall)


KIND = Kind(
    "cable-channel", "Hide a wall screen's cables in a channel", ("cables-on-show",), (10, 20, 30), 10, _fit,
    hazards=("strips", "cord"), bought=True, whats=("cable channel",), leaves="peels off",
    done_when="from the door no cable is seen",
)  # fmt: skip
