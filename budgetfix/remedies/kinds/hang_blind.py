"""Hang a blind at a bare window.

Fits: a bare window, or one that glares on a screen; a blind in the catalogue from as wide as the frame to 8 in (200
mm) wider that finds wall enough, or one that is cut down to the frame (a width to which it can be cut is not asked:
the wider one is taken). Four screws. Cordless, or with its cord tied down: a free loop would be a hazard. Renters
ask first; the clamp rod needs no leave.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.remedies.rods import bare_windows
from budgetfix.room.items import Opening

WIDER_IN, WIDER_MM, ABOVE_MM = 8.0, 200.0, 50.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    found: list[Candidate] = []
    for window in bare_windows(site):
        found += best(KIND, site, _offers(site, window), 1)
    return tuple(found)


def _offers(site: Site, window: Opening) -> Iterator[Offer]:
    for product in of_sort(site, "blind"):
        over = (product.width or 0.0) - window.width
        at = site.tape(window.from_left - over / 2)
        fits = -0.1 <= over <= site.mm(WIDER_IN, WIDER_MM) + 0.1 and product.height is not None
        if not fits or at < 0 or at + (product.width or 0.0) > site.lines[window.wall].length:
            continue
        long_enough = (product.height or 0.0) >= window.top + ABOVE_MM - window.bottom - 0.1
        if long_enough:
            top = window.top + ABOVE_MM
            text = (
                f"Screw the brackets to wall {window.wall} {site.words(top)} above the floor, left edge of the blind "
                f"{site.words(at)} from the left corner; hang it level, tie any cord down"
            )
            use = ((product.product, Fraction(1)),)
            change = set_on("openings", window.name, blind=True, cord=0.0)
            accepts = f"{site.words(window.width)} to {site.words(window.width + site.mm(WIDER_IN, WIDER_MM))} wide"
            name = f"{called(product)} at the {window.name}"
            yield Offer(
                name, (change,), text, product.product, use, wall=window.wall, subject=window.name, accepts=accepts
            )


KIND = Kind(
    "hang-blind", "Hang a blind", ("window-bare", "screen-glare"), (30, 45, 75), 9, _fit, holes=4,
    hazards=("drill", "ladder", "cord"), tools=("drill", "ladder"), bought=True, whats=("blind",), leaves="plugs",
    done_when="it runs up and down freely, and no loop hangs free",
)  # fmt: skip
