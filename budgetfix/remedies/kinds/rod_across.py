"""Hang one rod across two neighbouring windows and the wall between, with panels for both.

Fits: two windows of one wall, no door between, their heads within 1 in (25 mm) of each other, at least one dressed; a
rod in the catalogue that extends over both and the open cloth at the ends; floor-length panels. Four panels: one at
each end, two before the wall between; six or eight where four are too thin for the rod, two of them at each end. The
drop that is sold decides the height, as for one window; what is too long is shortened with hem tape. Brackets: three
beyond 48 in (1220 mm), one of them in the middle, four beyond 120 in (3050). The second old rod goes, with
its cloth; where both windows have the same cloth, full enough for the rod, a candidate hangs all four old panels.
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
    pairs_at,
    panels_for,
    rods_for,
    same_use,
    stretch,
    too_long,
)
from budgetfix.room.stretches import STACK_SHARE
from budgetfix.room.survey import Change, Value, moved

COUNTS, CHEAP, SAME_MM = (4, 6, 8), 2, 25.0


@dataclass(frozen=True, slots=True)
class Across:
    """A rod over two windows as it will hang: `count` panels, `ends` of them at each end."""

    rod: Product
    panels: Product
    count: int
    ends: int
    start: float
    width: float
    height: float

    @property
    def stack(self) -> float:
        """Open cloth at each end."""
        return (self.panels.width or 0.0) * self.ends * STACK_SHARE.get(self.panels.cloth or "lined", 0.22)


def _fit(site: Site) -> tuple[Candidate, ...]:
    found: list[Candidate] = []
    for left, right in pairs_at(site):
        here = replace(site, subject=left.window.name)
        offers = sorted(_offers(here, left, right), key=lambda one: (goods_minor(here, one.uses), one.variant))
        found += [candidate(KIND, here, offer) for offer in offers[:CHEAP]]
    return tuple(found)


def _both(left: Window, right: Window) -> Window:
    """The two windows and the wall between as one window."""
    end = right.window.from_left + right.window.width
    whole = moved(left.window, width=end - left.window.from_left, top=max(left.window.top, right.window.top))
    return Window(whole, left.curtain, left.left, right.right, left.bare)


def _offers(site: Site, left: Window, right: Window) -> Iterator[Offer]:
    both, tape = _both(left, right), cheapest(site, "hem tape")
    dressed = [at for at in (left, right) if not at.bare]
    old = _old_panels(left, right)
    sold = of_sort(site, "panels") if all(at.curtain.length == "floor" for at in dressed) else ()
    for panels in (*([old] if old is not None else []), *sold):
        if panels.width is None or panels.drop is None or not all(same_use(at, panels) for at in dressed):
            continue
        height = height_for(site, both, panels, tape is not None)
        hung = None if height is None else _hung(site, both, panels, height, COUNTS[:1] if panels is old else COUNTS)
        if hung is None:
            continue
        uses = [] if panels is old else [(panels.product, Fraction(hung.count, 2))]
        hem = hung.height + head(panels.heading) - panels.drop
        if tape is not None and too_long(panels, hung.height):
            uses.append((tape.product, Fraction(1)))
            hem = CLEAR_MM
        yield _offer(site, left, right, hung, hem, tuple(uses))


def _old_panels(left: Window, right: Window) -> Product | None:
    """The two pairs that hang there, where they are of one sort, length and width; None where they are not."""
    one, other = left.curtain, right.curtain
    drops = [at.rod_height - at.hem for at in (one, other)]
    alike = (one.heading, one.cloth, one.length, one.panels) == (other.heading, other.cloth, "floor", 2)
    near = abs(drops[0] - drops[1]) <= SAME_MM and abs(one.panel_width - other.panel_width) <= SAME_MM
    if left.bare or right.bare or not alike or not near:
        return None
    wide, drop = min(one.panel_width, other.panel_width), min(drops) + head(one.heading)
    return Product(
        product="old panels", name="the old panels", price_minor=0, width=wide, drop=drop, heading=one.heading,
        cloth=one.cloth,
    )  # fmt: skip


def _hung(site: Site, both: Window, panels: Product, height: float, counts: tuple[int, ...] = COUNTS) -> Across | None:
    """The rod with the least cloth that is full enough; None where no rod reaches or the most panels are too thin."""
    rods = of_sort(site, "rod")
    for ends, some in ((1, counts[:1]), (2, counts[1:])):
        start, width = stretch(site, both, panels.width or 0.0, panels.cloth or "lined", 2 * ends)
        count = panels_for(panels, width, some)
        rod = rods_for(rods, width)
        if count is not None and rod is not None:
            return Across(rod, panels, count, ends, start, width, height)
    return None


def _offer(
    site: Site, left: Window, right: Window, hung: Across, hem: float, uses: tuple[tuple[str, Fraction], ...]
) -> Offer:
    panels, full = hung.panels, hung.count * (hung.panels.width or 0.0) / hung.width
    fields: dict[str, Value] = {
        "rod_from_left": hung.start, "rod_width": hung.width, "rod_height": hung.height, "panels": hung.count,
        "panel_width": panels.width, "hem": hem, "heading": panels.heading or "eyelet", "length": "floor",
        "cloth": panels.cloth or "lined", "stack": hung.stack, "also_window": right.window.name,
    }  # fmt: skip
    changes = [dress(left, fields)]
    if not right.bare:
        changes.append(Change("curtains", right.curtain.name, remove=True))
    count = brackets(hung.width)
    text = (
        f"Take both rods down; mark {count} brackets in one line, {site.words(hung.height)} above the floor, from "
        f"{site.words(hung.start)} to {site.words(hung.start + hung.width)} from the left corner of wall "
        f"{left.window.wall}, one at each end and the others evenly between; drill, plug, screw; hang {hung.count} "
        f"panels ({full:.1f} times the rod): {hung.ends} at each end, {hung.count - 2 * hung.ends} before the wall "
        f"between; steam, hem {site.words(hem)} above the floor last"
    )
    name = f"{called(hung.rod)} across {left.window.name} and {right.window.name}, {hung.count} of {called(panels)}"
    return Offer(
        name, tuple(changes), text, f"{right.window.name}~{panels.product}", ((hung.rod.product, Fraction(1)), *uses),
        people=2, holes=2 * count, wall=left.window.wall, accepts=f"any rod that reaches {site.words(hung.width)}",
    )  # fmt: skip


KIND = Kind(
    "rod-across", "Hang one rod across two windows",
    ("rods-out-of-line", "rod-hung-low", "rod-too-narrow", "panels-skimpy"), (70, 110, 170), 9, _fit, people=2,
    holes=6, hazards=("drill", "ladder"), tools=("drill", "ladder"), bought=True, whats=("rod", "panels", "hem tape"),
    leaves="plugs", follows=True,
    fills=("rod_from_left", "rod_width", "rod_height", "panels", "panel_width", "hem", "heading", "cloth", "stack",
           "also_window", "length"),
    done_when="one line runs over both windows and the hems just clear the floor",
)  # fmt: skip
