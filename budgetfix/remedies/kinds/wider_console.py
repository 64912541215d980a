"""Buy a bench that is wider than the screen, or of another height, and stand the screen on it.

Fits: a bench in the catalogue at least 8 in (200 mm) wider than the screen that finds room at the wall: middle on the
screen's middle if that is free, else shifted as little as needed. The screen goes up or down with it.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.remedies.screens import screen_and_bench
from budgetfix.room.items import Hung, Piece
from budgetfix.room.survey import Change

STEP_MM = 50.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    found = screen_and_bench(site)
    if found is None:
        return ()
    screen, bench = found
    least = screen.width + site.mm(8, 200)
    offers = []
    for product in of_sort(site, "console"):
        if (product.width or 0.0) < least - 0.1 or product.height is None:
            continue
        changes = _placed(site, screen, bench, product)
        if changes is not None:
            at = dict(changes[0].set)["from_left"]
            text = (
                f"Clear the old bench, stand the new one with its left edge {site.words(float(at or 0))} from the left "
                f"corner of wall {bench.wall}, its top {site.words(product.height)} above the floor; lift the screen "
                "over with two people, tie the cables"
            )
            use = ((product.product, Fraction(1)),)
            wide = f"{site.words(least)} wide or more"
            offers.append(
                Offer(f"{called(product)} under the screen", changes, text, product.product, use, accepts=wide)
            )
    return best(KIND, site, offers, 3)


def _placed(site: Site, screen: Hung, bench: Piece, product: Product) -> tuple[Change, ...] | None:
    wide = site.said("width", product.width or 0.0)
    deep = site.said("depth", product.depth or bench.depth)
    tall = site.said("height", product.height or bench.height)
    middle = screen.from_left + screen.width / 2
    slack = (wide - screen.width) / 2
    for count in range(int(slack / STEP_MM) + 1):
        for way in (1.0, -1.0):
            at = site.tape(middle - wide / 2 + way * count * STEP_MM)
            if at < 0 or at + wide > site.lines[bench.wall].length:
                continue
            changes = (
                set_on("furniture", bench.name, from_left=at, width=wide, depth=deep, height=tall),
                set_on("pictures", screen.name, bottom=screen.bottom + tall - bench.height),
            )
            if site.fits(changes):
                return changes
    return None


KIND = Kind(
    "wider-console",
    "Stand the screen on a wider bench",
    ("console-too-narrow", "screen-feet-overhang", "screen-off-eye-level"),
    (60, 100, 160),
    8,
    _fit,
    people=2,
    hazards=("lifting", "cord"),
    bought=True,
    whats=("console",),
    follows=True,
    fills=("from_left", "width", "depth", "height"),
    done_when="the bench is wider than the screen on both sides and the screen is strapped",
)
