"""Nothing to land on inside the home's own door.

How to measure. Within 6 ft (1830 mm) of the door: is there a surface for keys,
hooks for a coat, a mat for wet shoes?

Why: without them keys, coats and mud travel into the room.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from shapely.geometry import LineString

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.places import footprint

NEAR = Twin(72)
SURFACES = ("console table", "shoe cabinet", "sideboard", "dresser", "cabinet", "chest of drawers", "side table")
HOOKS = ("coat rack", "coat hooks", "wardrobe")


def _subjects(look: Look) -> tuple[str, ...]:
    doors = look.openings(whats=("door",))
    return tuple(door.name for door in doors if door.entry and door.wall in look.lines)


def _measure(look: Look, subject: str) -> Measured | None:
    door = look.opening(subject)
    if door is None:
        return None
    line, near = look.lines[door.wall], look.mm(NEAR)
    jambs = LineString([line.point(door.from_left), line.point(door.from_left + door.width)])
    x0, y0, x1, y1 = jambs.buffer(near).bounds
    pieces = [
        piece
        for piece in look.pieces(whats=(*SURFACES, *HOOKS), box=(x0, y0, x1, y1))
        if footprint(piece, look.lines).distance(jambs) <= near
    ]
    mats = [rug for rug in look.rugs(box=(x0, y0, x1, y1)) if footprint(rug, look.lines).distance(jambs) <= near]
    there = {
        "surface": any(piece.what in SURFACES and piece.surface for piece in pieces),
        "hooks": any(piece.what in HOOKS for piece in pieces),
        "mat": bool(mats),
    }
    missing = [word for word, found in there.items() if not found]
    severity = Fraction(len(missing), 3)
    return Measured(
        float(len(missing)), severity=severity, note="no " + ", no ".join(missing) if missing else "all there"
    )


RULE = Rule(
    slug="entry-no-landing",
    title="Nothing to land on at the entry",
    measures="which of surface, hooks and mat are missing within 6 ft (1830 mm) of the home's own door",
    unit="count",
    band=Band(high=0.0, bad_high=3.0),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="free floor",
    family_by_room=True,
    profiles={"handing-back": Fraction(0)},
    sound_words="surface, hooks and mat",
    bad_words="none of the three; each that is missing is a third",
)
