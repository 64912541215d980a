"""Rods and panels at a window: what the stack, the wall and the drops that are sold allow. Millimetres."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from budgetfix.catalog.models import Product
from budgetfix.inspection.look import Look
from budgetfix.inspection.windows import wall_beside
from budgetfix.remedies.kind import Site
from budgetfix.remedies.products import cheapest
from budgetfix.room.items import Curtain, Opening
from budgetfix.room.stretches import STACK_SHARE
from budgetfix.room.survey import Change, Value, moved

EYELET_HEAD_MM, CLEAR_MM = 40.0, 10.0
"""Cloth above the rod at an eyelet head, and how far a hem stays off the floor: rod = drop - head + 10 mm."""
UNDER_CEILING_MM = 60.0
"""A rod needs this much below the ceiling for its brackets."""
ABOVE_FRAME_MM = 25.0
LONGEST_HEM_MM, SHORTEST_HEM_MM = 20.0, -25.0
"""From where to where a hem is sound (the band of hem-off-floor)."""
ROUND = 1e-9
LEVEL_MM = 25.0
"""Heads of frames this near to each other are level (rods-out-of-line)."""
NEARLY_FULL = 0.95
"""A twentieth less cloth than the rule asks is let pass: shops sell few widths (common practice)."""


@dataclass(frozen=True, slots=True)
class Window:
    """A window, its curtain (a blank one, where it is bare), and the bare wall left and right of the frame."""

    window: Opening
    curtain: Curtain
    left: float
    right: float
    bare: bool = False


def windows_at(site: Site) -> tuple[Window, ...]:
    """The windows that a site names: by itself, by its curtain, or all dressed windows of `wall C`."""
    openings = [one for one in site.survey.openings if one.room == site.room and one.what == "window"]
    openings = sorted((one for one in openings if one.wall in site.lines), key=lambda one: one.name)
    dressed = {one.window: one for one in site.survey.curtains if one.room == site.room}
    found = []
    for window in openings:
        curtain = dressed.get(window.name)
        if curtain is not None and site.subject in (window.name, curtain.name, f"wall {window.wall}"):
            found.append(Window(window, curtain, *_beside(site, window, curtain)))
        elif curtain is None and site.subject == window.name:
            found.append(Window(window, _blank(window), *_beside(site, window, _blank(window)), bare=True))
    return tuple(found)


def window_at(site: Site) -> Window | None:
    """The one dressed window that a site names; None for a bare one, a wall, or anything else."""
    found = [one for one in windows_at(site) if not one.bare]
    return found[0] if len(found) == 1 else None


def bare_windows(site: Site) -> tuple[Opening, ...]:
    """The windows without blind and without cloth that a site is about: the one it names, else all of the room."""
    dressed = {name for one in site.survey.curtains for name in (one.window, one.also_window)}
    windows = [one for one in site.survey.openings if one.room == site.room and one.what == "window"]
    bare = [one for one in windows if one.wall in site.lines and not one.blind and one.name not in dressed]
    named = [one for one in bare if one.name == site.subject]
    others = () if any(one.name == site.subject for one in windows) else bare
    return tuple(sorted(named or others, key=lambda one: one.name))


def _blank(window: Opening) -> Curtain:
    return Curtain(
        name=f"curtain at {window.name}", room=window.room, window=window.name, rod_height=window.top + 100.0,
        rod_from_left=window.from_left, rod_width=window.width, panel_width=0.0, hem=CLEAR_MM,
    )  # fmt: skip


def pairs_at(site: Site) -> tuple[tuple[Window, Window], ...]:
    """Neighbouring windows of one wall, heads level, that a site is about, no door between; at least one is dressed.

    None that share a rod already.
    """
    walls: dict[str, list[Opening]] = {}
    for one in site.survey.openings:
        if one.room == site.room and one.wall in site.lines:
            walls.setdefault(one.wall, []).append(one)
    found = []
    for letter in sorted(walls):
        row = sorted(walls[letter], key=lambda one: (one.from_left, one.name))
        for left, right in pairwise(row):
            if {left.what, right.what} == {"window"} and abs(left.top - right.top) <= LEVEL_MM:
                two = (*windows_at(replace(site, subject=left.name)), *windows_at(replace(site, subject=right.name)))
                if len(two) == 2 and _meant(site, two) and not any(one.curtain.also_window for one in two):
                    found.append((two[0], two[1]))
    return tuple(found)


def _meant(site: Site, two: tuple[Window, ...]) -> bool:
    names = [name for one in two for name in (one.window.name, one.curtain.name)]
    meant = site.subject in (*names, f"wall {two[0].window.wall}")
    return meant and not all(one.bare for one in two)


def dress(at: Window, fields: dict[str, Value]) -> Change:
    """The change that sets fields of the curtain, or hangs it new at a bare window."""
    if at.bare:
        return Change("curtains", at.curtain.name, add=moved(at.curtain, **fields))
    return Change("curtains", at.curtain.name, tuple(sorted(fields.items())))


def _beside(site: Site, window: Opening, curtain: Curtain) -> tuple[float, float]:
    """Wall left and right of the frame as the rule sees it, however wide the new cloth will be."""
    wide = moved(curtain, stack=site.lines[window.wall].length)
    frame = (window.from_left, window.from_left + window.width)
    return wall_beside(Look(site.survey, site.room), window, wide, frame)


def stretch(site: Site, at: Window, panel_width: float, cloth: str, panels: int) -> tuple[float, float]:
    """(from_left, width) of the rod that the open cloth asks for, never more than the wall has, outwards to the tape.

    What a user's remedy has set holds: a width alone is laid with its middle over the window's middle.
    """
    stack = panel_width * max(1, panels // 2) * STACK_SHARE.get(cloth, 0.22)
    need = max(site.mm(8, 200), stack - site.mm(2, 50))
    left, right = min(need, at.left), min(need, at.right)
    left, right = min(at.left, left + need - right), min(at.right, right + need - left)
    start, end = at.window.from_left - left, at.window.from_left + at.window.width + right
    step = site.tape(site.mm(0.25, 5))
    start = max(math.floor(start / step + ROUND) * step, at.window.from_left - at.left)
    width = min(math.ceil(end / step - ROUND) * step, at.window.from_left + at.window.width + at.right) - start
    if site.said("rod_width", width) != width:
        width = site.said("rod_width", width)
        start = at.window.from_left + (at.window.width - width) / 2
    return site.said("rod_from_left", start), width


def rods_for(rods: tuple[Product, ...], width: float) -> Product | None:
    """The cheapest rod that extends to that width."""
    fits = [
        rod for rod in rods if (rod.width or 0.0) <= width + 0.1 and width <= (rod.width_to or rod.width or 0.0) + 0.1
    ]
    return min(fits, key=lambda rod: (rod.price_minor, rod.product), default=None)


def head(heading: str) -> float:
    """Cloth above the rod: 40 mm at eyelets, next to nothing at tabs, pockets, waves and pleats."""
    return EYELET_HEAD_MM if heading in ("", "eyelet") else 0.0


def top_of_wall(site: Site) -> float:
    """The highest that a rod can hang."""
    return site.survey.facts(site.room).ceiling - UNDER_CEILING_MM


def height_for(site: Site, at: Window, panels: Product, shorten: bool) -> float | None:
    """Where a rod hangs for a drop that is sold: the hem 10 mm off the floor; shortened cloth hangs lower.

    None where the drop is too long and cannot be shortened, or so short that the rod would sit on the frame.
    """
    height = (panels.drop or 0.0) - head(panels.heading) + CLEAR_MM
    if height > top_of_wall(site):
        if not shorten:
            return None
        height = top_of_wall(site)
    height = site.said("rod_height", site.tape(height))
    return height if height >= at.window.top + ABOVE_FRAME_MM else None


def too_long(panels: Product, height: float) -> bool:
    """True where the cloth would lie on the floor from that height, and has to be shortened."""
    return (panels.drop or 0.0) - head(panels.heading) - height > -SHORTEST_HEM_MM


def brackets(width: float) -> int:
    """Brackets that a rod needs: two to 48 in (1220 mm), three beyond, one more beyond 120 in (3050 mm)."""
    return 2 if width <= 1220 else 3 if width <= 3050 else 4


def panels_for(product: Product, rod_width: float, counts: tuple[int, ...] = (2, 4)) -> int | None:
    """How many panels are full enough for the rod: one pair, else two; None where the most is too little."""
    full = 1.8 if product.cloth == "sheer" or product.heading == "wave" else 1.9 if product.heading == "pleat" else 1.5
    wanted = full * NEARLY_FULL * rod_width - 0.1
    return next((panels for panels in counts if (product.width or 0.0) * panels >= wanted), None)


def same_use(at: Window, panels: Product) -> bool:
    """Sheers only in place of sheers: nobody wants to be seen where lined cloth hung, or where nothing hangs."""
    return panels.cloth != "sheer" or (at.curtain.cloth == "sheer" and not at.bare)


def hung_again(site: Site, curtain: Curtain, height: float) -> tuple[float, tuple[tuple[str, Fraction], ...]] | None:
    """(hem, goods) of the old panels from another height; None where the hem would not be sound.

    Cloth that lies on the floor is shortened with tape, if tape is sold.
    """
    hem = curtain.hem + height - curtain.rod_height
    if SHORTEST_HEM_MM <= hem <= LONGEST_HEM_MM:
        return hem, ()
    tape = cheapest(site, "hem tape")
    if hem < SHORTEST_HEM_MM and tape is not None:
        return CLEAR_MM, ((tape.product, Fraction(1)),)
    return None
