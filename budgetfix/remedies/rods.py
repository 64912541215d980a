"""Rods and panels at a window: what the stack, the wall and the drops that are sold allow. Millimetres."""

from __future__ import annotations

from dataclasses import dataclass

from budgetfix.catalog.models import Product
from budgetfix.remedies.kind import Site
from budgetfix.room.items import Curtain, Opening
from budgetfix.room.stretches import STACK_SHARE

HEAD_MM, CLEAR_MM = 40.0, 10.0
"""Cloth above the rod at an eyelet head, and how far a hem stays off the floor: rod = drop - head + 10 mm."""
UNDER_CEILING_MM = 60.0
"""A rod needs this much below the ceiling for its brackets."""
HEADINGS = ("eyelet", "tab", "pocket", "wave", "pleat")


@dataclass(frozen=True, slots=True)
class Window:
    """A window, its curtain, and the bare wall left and right of the frame."""

    window: Opening
    curtain: Curtain
    left: float
    right: float


def window_at(site: Site) -> Window | None:
    """The window that a site names, by itself or by its curtain."""
    for curtain in site.survey.curtains:
        if curtain.room == site.room and site.subject in (curtain.name, curtain.window):
            opening = site.survey.named.get(curtain.window, (None, None))[1]
            if isinstance(opening, Opening) and opening.wall in site.lines:
                return Window(opening, curtain, *_beside(site, opening))
    return None


def _beside(site: Site, window: Opening) -> tuple[float, float]:
    others = [one for one in site.survey.openings if one.room == site.room and one.wall == window.wall]
    end = window.from_left + window.width
    before = max(
        (one.from_left + one.width for one in others if one.from_left + one.width <= window.from_left), default=0.0
    )
    after = min((one.from_left for one in others if one.from_left >= end), default=site.lines[window.wall].length)
    return window.from_left - before, after - end


def stretch(site: Site, at: Window, panel_width: float, cloth: str, panels: int) -> tuple[float, float]:
    """(from_left, width) of the rod that the open cloth asks for: never more than the wall has."""
    stack = panel_width * max(1, panels // 2) * STACK_SHARE.get(cloth, 0.22)
    need = max(site.mm(8, 200), stack - site.mm(2, 50))
    left, right = min(need, at.left), min(need, at.right)
    left, right = min(at.left, left + need - right), min(at.right, right + need - left)
    start = site.tape(at.window.from_left - left)
    return start, site.tape(left + at.window.width + right)


def rods_for(rods: tuple[Product, ...], width: float) -> Product | None:
    """The cheapest rod that extends to that width."""
    fits = [
        rod for rod in rods if (rod.width or 0.0) <= width + 0.1 and width <= (rod.width_to or rod.width or 0.0) + 0.1
    ]
    return min(fits, key=lambda rod: (rod.price_minor, rod.product), default=None)


def height_for(site: Site, at: Window, drop: float, shorten: bool) -> float | None:
    """Where a rod hangs for a drop that is sold: the hem 10 mm off the floor; shortened cloth hangs lower.

    None where the rod would leave the wall above the frame, or sit lower than the frame.
    """
    top = site.survey.facts(site.room).ceiling - UNDER_CEILING_MM
    height = drop - HEAD_MM + CLEAR_MM
    if height > top:
        if not shorten:
            return None
        height = top
    return site.tape(height) if height >= at.window.top + 25.0 else None


def brackets(width: float) -> int:
    """Brackets that a rod needs: two to 48 in (1220 mm), three beyond, one more beyond 120 in (3050 mm)."""
    return 2 if width <= 1220 else 3 if width <= 3050 else 4


def full_enough(product: Product, panels: int, rod_width: float) -> bool:
    """True where the cloth is at least one and a half times the rod (sheers 1.8)."""
    least = 1.8 if product.cloth == "sheer" else 1.5
    return (product.width or 0.0) * panels >= least * rod_width - 0.1
