"""Old paint: how much of it a task disturbs, and when the United States' rule for renovators applies.

Sources: 40 CFR 745.83 (minor repair and maintenance: 6 sq ft a room indoors, all work of 30 days together, no window
replaced), the agency's answer 23002-14294 on how to measure (a strip off an edge is its width times its length), and
15 USC 2681(17) (target housing: built before 1978). Nothing here says that work is safe or legal: it says when the
words of a caution change, and those defer to local codes. Elsewhere only "local rules" are named.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from budgetfix.base.twin import MM_PER_INCH
from budgetfix.room.survey import Household

TARGET_BEFORE = 1978
MINOR_SQ_FT, DAYS = 6.0, 30
MM2_PER_SQ_IN = MM_PER_INCH**2
MM2_PER_SQ_FT = 144 * MM2_PER_SQ_IN
NEAR_SQ_FT = 1e-6
PLUG_MM, PATCH_MM = 8.0, 50.0
"""A plug's hole, and the patch that is wiped and touched up around a filled hole (common practice)."""


@dataclass(frozen=True, slots=True)
class PaintWork:
    """Paint disturbed in one room on one day. `day` counts from any day; `window`: a window is replaced."""

    room: str
    day: int
    mm2: float
    window: bool = False


def target_housing(year: int) -> bool:
    """True for homes built before 1978 (the elderly, disabled and zero-bedroom exceptions are left to local codes)."""
    return year < TARGET_BEFORE


def strip_mm2(width_mm: float, length_mm: float) -> float:
    """A strip that is scraped, sanded or planed off: its width times the length of the edge."""
    return width_mm * length_mm


def holes_mm2(drilled: int, filled: int) -> float:
    """New plug holes, and old holes that are filled and touched up."""
    return math.pi / 4 * (drilled * PLUG_MM**2 + filled * PATCH_MM**2)


def sq_ft(mm2: float) -> float:
    """Square feet of square millimetres (1 sq ft = 0.09290304 square metres, exactly)."""
    return mm2 / MM2_PER_SQ_FT


def most_in_30_days(works: Iterable[PaintWork]) -> dict[str, float]:
    """By room, the most paint in square feet that is disturbed within any 30 days; day 1 and day 31 are apart."""
    by_room: dict[str, list[PaintWork]] = defaultdict(list)
    for work in works:
        by_room[work.room].append(work)
    return {
        room: max(sq_ft(sum(one.mm2 for one in mine if 0 <= one.day - first.day < DAYS)) for first in mine)
        for room, mine in sorted(by_room.items())
    }


def beyond_minor(works: Iterable[PaintWork]) -> tuple[str, ...]:
    """Rooms whose work is no minor repair: above 6 sq ft within 30 days, or a window replaced; sorted."""
    done = tuple(works)
    windows = {work.room for work in done if work.window}
    over = {room for room, area in most_in_30_days(done).items() if area > MINOR_SQ_FT + NEAR_SQ_FT}
    return tuple(sorted(windows | over))


def matters(household: Household) -> bool:
    """True where the home is from before 1978, and where nobody knows."""
    return household.before_1978 is not False


def disturbed_mm2(household: Household, drilled: int, filled: int, rubbed_mm2: float = 0.0) -> float:
    """Paint that a task disturbs; 0 in a home that is known to be younger."""
    return holes_mm2(drilled, filled) + rubbed_mm2 if matters(household) else 0.0


def old_paint_care(household: Household) -> str:
    """The caution on any task that drills, fills or rubs paint down; empty in a home that is known to be younger."""
    if not matters(household):
        return ""
    known = "Paint from before 1978" if household.before_1978 else "Old paint (before 1978; ask if not known)"
    law = "local rules come first." if household.metric else f"{US_LAW} Local codes come first."
    return f"{known} may hold lead: no sanding, no dry scraping{'; ' if household.metric else '. '}{law}"


US_LAW = "In the United States more than 6 sq ft a room in 30 days is for a certified renovator."
BEYOND = (
    "The paint work of this room adds up to more than 6 sq ft (0.56 m²) within 30 days: in the United States a "
    "certified renovator does it in a home from before 1978; elsewhere ask what local rules say."
)
"""The caution on every task of such a room."""
