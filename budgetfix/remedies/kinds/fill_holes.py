"""Fill old holes and marks, and touch them up.

Fits: patches of old holes in the survey, all of them together. Holes of nails and strips count as pins, all others as
plugs. Filler and touch-up paint from the catalogue, as shares of a tub and a tin; where they are not sold, from what
is at hand. Plug holes dry until the next session before they are touched up; pin holes are done in one go. The second
hole and each one more goes faster (0.7).
"""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction

from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.remedies.holes import counted, patches, repair
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, planned, set_on
from budgetfix.remedies.pictures import LADDER_MM
from budgetfix.room.items import Hung

PIN, PLUG, TOUCH_UP, AGAIN = (5, 8, 12), (10, 15, 25), 5, Fraction(7, 10)
TOUCH_UP_PHASE, DRYING = 13, 60
"""Minutes until small patches are dry enough to paint: the pack decides (common practice)."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    holes = patches(site)
    if not holes:
        return ()
    plugs, pins = counted(holes)
    changes = tuple(set_on("pictures", one.name, things=0) for one in holes)
    name = f"Fill and touch up {plugs + pins} old {'hole' if plugs + pins == 1 else 'holes'}"
    high = ("ladder",) if any(one.bottom + one.height > LADDER_MM for one in holes) else ()
    made = candidate(KIND, site, Offer(name, changes, _text(site, holes), "", repair(site, plugs, pins), hazards=high))
    return (replace(made, work=_work(made.work[0].text, plugs, pins)),)


def _text(site: Site, holes: tuple[Hung, ...]) -> str:
    where = "; ".join(
        f"{one.things} on wall {one.wall}, {site.words(one.from_left)} to {site.words(one.from_left + one.width)} from "
        f"the left corner, {site.words(one.bottom)} to {site.words(one.bottom + one.height)} above the floor"
        for one in holes
    )
    return f"Pull what sticks out, press filler in, wipe it smooth while damp, no sanding: {where}"


def _work(text: str, plugs: int, pins: int) -> tuple[Work, ...]:
    each = [PLUG] * plugs + [PIN] * pins
    low, likely, high = (Fraction(each[0][at]) + AGAIN * sum(one[at] for one in each[1:]) for at in range(3))
    late = TOUCH_UP if plugs else 0
    now = TOUCH_UP - late
    first = Work(
        text if late else f"{text}; touch up when dry to the touch", planned(low + now, likely + now, high + now),
        math.ceil(low) + now, math.ceil(likely) + now, math.ceil(high) + now, 1, KIND.phase,
    )  # fmt: skip
    touch = Work("Touch the filled holes up with the wall's colour", late, late, late, late, 1, TOUCH_UP_PHASE,
                 wait_minutes=DRYING)  # fmt: skip
    return (first, touch) if late else (first,)


KIND = Kind(
    "fill-holes", "Fill old holes and touch them up", ("old-holes-show",), (5, 8, 12), 3, _fit,
    whats=("filler", "paint"), leaves="nothing",
    done_when="from the door nobody sees where they were",
)  # fmt: skip
