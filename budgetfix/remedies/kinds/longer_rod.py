"""Buy a longer rod, hung higher where the cloth allows, with the panels that go with it.

Fits: a rod in the catalogue that extends to the window plus the open cloth on both sides, as far as the wall goes. With new
panels the drop that is sold decides the height (rod = drop - 40 mm of head + 10 mm off the floor); a drop that is too long is
shortened with hem tape. With the old panels the rod stays at its height, so that the hem stays where it is.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.products import called, cheapest, of_sort
from budgetfix.remedies.rods import CLEAR_MM, Window, brackets, full_enough, height_for, rods_for, stretch, window_at
from budgetfix.room.survey import Change, Value

MOST = 4


def _fit(site: Site) -> tuple[Candidate, ...]:
    at = window_at(site)
    rods = of_sort(site, "rod")
    if at is None or not rods or at.curtain.also_window:
        return ()
    offers = [offer for offer in (_old_panels(site, at, rods),) if offer is not None]
    offers += [offer for panels in of_sort(site, "panels") for offer in [_new_panels(site, at, rods, panels)] if offer]
    return tuple(candidate(KIND, site, offer) for offer in offers[:MOST])


def _old_panels(site: Site, at: Window, rods: tuple[Product, ...]) -> Offer | None:
    curtain = at.curtain
    start, width = stretch(site, at, curtain.panel_width, curtain.cloth, curtain.panels)
    rod = rods_for(rods, width)
    if rod is None or width <= curtain.rod_width:
        return None
    change = set_on("curtains", curtain.name, rod_from_left=start, rod_width=width)
    return _offer(site, at, rod, (change,), f"{called(rod)} at the old height, old panels", "old", (start, width), ())


def _new_panels(site: Site, at: Window, rods: tuple[Product, ...], panels: Product) -> Offer | None:
    curtain = at.curtain
    if panels.width is None or panels.drop is None or curtain.length != "floor":
        return None
    tape = cheapest(site, "hem tape")
    height = height_for(site, at, panels.drop, tape is not None)
    start, width = stretch(site, at, panels.width, panels.cloth or "lined", 2)
    rod = rods_for(rods, width)
    if height is None or rod is None or not full_enough(panels, 2, width):
        return None
    shorten = panels.drop - 40.0 + CLEAR_MM > height + 5.0
    fields: dict[str, Value] = {
        "rod_from_left": start, "rod_width": width, "rod_height": height, "panels": 2, "panel_width": panels.width,
        "hem": CLEAR_MM, "heading": panels.heading or "eyelet", "cloth": panels.cloth or "lined", "stack": None,
    }  # fmt: skip
    uses = [(panels.product, Fraction(1))]
    if shorten and tape is not None:
        uses.append((tape.product, Fraction(1)))
    change = set_on("curtains", curtain.name, **fields)
    name = f"{called(rod)}, higher, with {called(panels)}"
    return _offer(site, at, rod, (change,), name, panels.product, (start, width), tuple(uses), height)


def _offer(
    site: Site, at: Window, rod: Product, changes: tuple[Change, ...], name: str, variant: str, spot: tuple[float, float],
    uses: tuple[tuple[str, Fraction], ...], height: float | None = None,
) -> Offer:  # fmt: skip
    start, width = spot
    up = at.curtain.rod_height if height is None else height
    text = (
        f"Mark the brackets: rod {site.words(up)} above the floor, from {site.words(start)} to "
        f"{site.words(start + width)} from the left corner of wall {at.window.wall}; drill, plug, screw, hang, steam, hem last"
    )
    people = 1 if width <= site.mm(48, 1220) else 2
    return Offer(
        name, changes, text, variant, ((rod.product, Fraction(1)), *uses), people, brackets(width) * 2, at.window.wall,
        accepts=f"any rod that reaches {site.words(width)}",
    )  # fmt: skip


KIND = Kind(
    "longer-rod", "Hang a longer rod, higher, with its panels",
    ("rod-hung-low", "rod-too-narrow", "rods-out-of-line", "panels-skimpy", "hem-off-floor", "curtain-near-heater",
     "window-bare"),
    (45, 75, 120), 9, _fit, people=2, holes=4, hazards=("drill", "ladder"), bought=True, whats=("rod", "panels", "hem tape"),
    done_when="open cloth stands beside the glass and the hems just clear the floor",
)  # fmt: skip
