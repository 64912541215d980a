"""Buy a longer rod, hung higher where the cloth allows, with the panels that go with it.

Fits: a rod in the catalogue that extends to the window plus the open cloth on both sides, as far as the wall goes.
With new panels the drop that is sold decides the height (rod = drop - 40 mm of eyelet head + 10 mm off the floor); a
drop that is too long is shortened with hem tape; where one pair is too thin for the rod, two pairs are hung. With the
old panels the rod stays at its height, so that the hem stays where it is. Two plugs a bracket: two brackets to 48 in
(1220 mm), three beyond.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, goods_minor
from budgetfix.remedies.products import called, cheapest, of_sort
from budgetfix.remedies.rods import (
    CLEAR_MM,
    Window,
    brackets,
    dress,
    head,
    height_for,
    panels_for,
    rods_for,
    same_use,
    stretch,
    too_long,
    windows_at,
)
from budgetfix.room.survey import Value

CHEAP = 3


@dataclass(frozen=True, slots=True)
class Hung:
    """A rod as it will hang: its product, from where, how wide, how high."""

    rod: Product
    start: float
    width: float
    height: float


def _fit(site: Site) -> tuple[Candidate, ...]:
    rods = of_sort(site, "rod")
    found: list[Candidate] = []
    for at in windows_at(site):
        if rods and not at.curtain.also_window:
            here = replace(site, subject=at.window.name)
            old, new = list(_old_panels(here, at, rods)), list(_new_panels(here, at, rods))
            found += [candidate(KIND, here, offer) for offer in [*old, *_few(here, new)]]
    return tuple(found)


def _few(site: Site, offers: list[Offer]) -> list[Offer]:
    """The cheapest three, and the one with most cloth: the same whichever fault of the window is looked at."""
    by_cost = sorted(offers, key=lambda offer: (goods_minor(site, offer.uses), offer.variant))
    apart: dict[object, Offer] = {}
    for offer in by_cost:
        apart.setdefault(offer.changes, offer)
    cheap = list(apart.values())
    full = max(cheap, key=lambda offer: _cloth(offer), default=None)
    return [offer for offer in cheap if offer in cheap[:CHEAP] or offer is full]


def _cloth(offer: Offer) -> float:
    """Flat width of all panels."""
    change = offer.changes[0]
    fields = dict(change.set) if change.add is None else dict(change.add)
    return float(fields["panels"] or 0) * float(fields["panel_width"] or 0)


def _old_panels(site: Site, at: Window, rods: tuple[Product, ...]) -> Iterator[Offer]:
    curtain = at.curtain
    start, width = stretch(site, at, curtain.panel_width, curtain.cloth, curtain.panels)
    rod = rods_for(rods, width)
    if at.bare or rod is None or width <= curtain.rod_width:
        return
    hung = Hung(rod, start, width, curtain.rod_height)
    name = f"{called(rod)} at the old height, old panels"
    yield _offer(site, at, hung, {"rod_from_left": start, "rod_width": width}, name, "old panels", ())


def _new_panels(site: Site, at: Window, rods: tuple[Product, ...]) -> Iterator[Offer]:
    tape = cheapest(site, "hem tape")
    for panels in of_sort(site, "panels") if at.curtain.length == "floor" else ():
        if panels.width is None or panels.drop is None or not same_use(at, panels):
            continue
        height = height_for(site, at, panels, tape is not None)
        for pairs in (1, 2):
            start, width = stretch(site, at, panels.width, panels.cloth or "lined", 2 * pairs)
            rod = rods_for(rods, width)
            if height is None or rod is None or panels_for(panels, width) != 2 * pairs:
                continue
            uses = [(panels.product, Fraction(pairs))]
            hem = height + head(panels.heading) - panels.drop
            if tape is not None and too_long(panels, height):
                uses.append((tape.product, Fraction(1)))
                hem = CLEAR_MM
            two = "two of " if pairs == 2 else ""
            name = f"{called(rod)}, higher, with {two}{called(panels)} ({at.window.name})"
            hung = Hung(rod, start, width, height)
            yield _offer(site, at, hung, _fields(hung, panels, pairs, hem), name, panels.product, tuple(uses))
            break


def _fields(hung: Hung, panels: Product, pairs: int, hem: float) -> dict[str, Value]:
    return {
        "rod_from_left": hung.start, "rod_width": hung.width, "rod_height": hung.height, "panels": 2 * pairs,
        "panel_width": panels.width, "hem": hem, "heading": panels.heading or "eyelet",
        "cloth": panels.cloth or "lined", "stack": None,
    }  # fmt: skip


def _offer(
    site: Site, at: Window, hung: Hung, fields: dict[str, Value], name: str, variant: str,
    uses: tuple[tuple[str, Fraction], ...],
) -> Offer:  # fmt: skip
    text = (
        f"Mark the brackets: rod {site.words(hung.height)} above the floor, from {site.words(hung.start)} to "
        f"{site.words(hung.start + hung.width)} from the left corner of wall {at.window.wall}; "
        "drill, plug, screw, hang, steam, hem last"
    )
    return Offer(
        name, (dress(at, fields),), text, variant, ((hung.rod.product, Fraction(1)), *uses),
        people=1 if hung.width <= site.mm(48, 1220) else 2, holes=brackets(hung.width) * 2, wall=at.window.wall,
        accepts=f"any rod that reaches {site.words(hung.width)}",
    )  # fmt: skip


KIND = Kind(
    "longer-rod", "Hang a longer rod, higher, with its panels",
    ("rod-hung-low", "rod-too-narrow", "rods-out-of-line", "panels-skimpy", "hem-off-floor", "curtain-near-heater",
     "window-bare"),
    (45, 75, 120), 9, _fit, people=2, holes=4, hazards=("drill", "ladder"), tools=("drill", "ladder"), bought=True,
    whats=("rod", "panels", "hem tape"),
    fills=("rod_from_left", "rod_width", "rod_height", "panels", "panel_width", "hem", "heading", "cloth", "stack"),
    leaves="plugs", done_when="open cloth stands beside the glass and the hems just clear the floor",
)  # fmt: skip
