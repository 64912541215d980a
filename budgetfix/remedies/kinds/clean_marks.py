"""Clean scuffs, strips left behind, stains and painted patches off the walls, and touch up what stays.

Fits: marks in the survey that are no holes, all of a room together. Scuffs come off with a damp sponge (2 to 5 minutes
each), strips with a warm cloth and a slow pull (5 to 12), stains and old patches are touched up (10 to 20): touch-up
paint from the catalogue, a twenty-fifth of a tin each; where it is not sold, from what is at hand. The second mark and
each one more goes faster (0.7).
"""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction

from budgetfix.remedies.candidate import Candidate, Work, planned
from budgetfix.remedies.holes import PLUGS_A_TIN
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.pictures import LADDER_MM
from budgetfix.remedies.products import cheapest
from budgetfix.room.items import Hung

MINUTES = {"scuff": (2, 3, 5), "strip left": (5, 8, 12)}
PAINTED = (10, 15, 20)
"""Of a stain or a patch."""
AGAIN = Fraction(7, 10)
WIPED = {"scuff": "wipe with a damp sponge, no scrubbing", "strip left": "warm it and pull slowly along the wall"}
TOUCHED = "touch up with the wall's colour, feathered out"


def _fit(site: Site) -> tuple[Candidate, ...]:
    found = [one for one in site.survey.pictures if one.room == site.room and one.what == "mark" and one.things]
    marks = sorted((one for one in found if one.wall in site.lines), key=lambda one: one.name)
    marks = [one for one in marks if one.name == site.subject] or marks
    if not marks:
        return ()
    count, paint = sum(one.things for one in marks), cheapest(site, "paint")
    touched = sum(one.things for one in marks if one.group not in MINUTES)
    uses = ((paint.product, Fraction(touched, PLUGS_A_TIN)),) if paint is not None and touched else ()
    changes = tuple(set_on("pictures", one.name, things=0) for one in marks)
    high = ("ladder",) if any(one.bottom + one.height > LADDER_MM for one in marks) else ()
    name = f"Clean {count} {'mark' if count == 1 else 'marks'} off the walls"
    made = candidate(KIND, site, Offer(name, changes, _text(site, marks), "", uses, hazards=high))
    return (replace(made, work=(_timed(made, marks), *made.work[1:])),)


def _text(site: Site, marks: list[Hung]) -> str:
    where = "; ".join(
        f"{one.things} x {one.group} on wall {one.wall}, {site.words(one.from_left)} from the left corner, "
        f"{site.words(one.bottom)} above the floor: {WIPED.get(one.group, TOUCHED)}"
        for one in marks
    )
    return f"Try it first where nobody looks. {where}"


def _timed(made: Candidate, marks: list[Hung]) -> Work:
    each = sorted((MINUTES.get(one.group, PAINTED) for one in marks for _ in range(one.things)), reverse=True)
    low, likely, high = (Fraction(each[0][at]) + AGAIN * sum(one[at] for one in each[1:]) for at in range(3))
    minutes = planned(low, likely, high)
    return replace(made.work[0], minutes=minutes, low=math.ceil(low), likely=math.ceil(likely), high=math.ceil(high))


KIND = Kind(
    "clean-marks", "Clean marks off the walls", ("old-holes-show",), (2, 5, 12), 3, _fit,
    whats=("paint",), leaves="nothing",
    done_when="from the door nobody sees where they were",
)  # fmt: skip
