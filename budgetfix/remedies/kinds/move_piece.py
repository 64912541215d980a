"""Slide a piece that is in the way along its wall, or off it.

Fits: pieces whose absence would make the finding better (each is lifted out and the room measured again), if they are
not heaters, beds or fixed to the wall. The shortest slides that cure it and land on free floor are kept; if none
cures it, the one that helps most. Chairs that are pushed in go with their table. Heavy pieces take two people and
longer.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.remedies.moves import after, along_wall, edges, off_wall, with_chairs
from budgetfix.room.items import HEATERS, SEATS, TALL, Piece
from budgetfix.room.survey import Change

STEP_MM, REACH_MM = 100.0, 1500.0
STAYS = (*HEATERS, "bed", "fireplace")
HEAVY = (*SEATS, *TALL, "dining table", "desk", "screen bench")
LIGHT_MM = 700.0
"""Small pieces, below this width, are light whatever they are."""
HEAVY_MINUTES = (20, 40, 75)
MOST, CULPRITS = 2, 2


def _fit(site: Site) -> tuple[Candidate, ...]:
    if site.finding is None:
        return ()
    found: list[Candidate] = []
    for piece in _culprits(site):
        for number, changes in enumerate(_slides(site, piece)):
            found.append(candidate(KIND, site, _offer(site, piece, changes, number)))
    return tuple(found)


def _offer(site: Site, piece: Piece, changes: tuple[Change, ...], number: int) -> Offer:
    heavy = piece.heavy or (piece.what in HEAVY and piece.width >= LIGHT_MM)
    chairs = "; its chairs go with it" if len(changes) > 1 else ""
    text = f"Slide the {piece.name}: {edges(site, after(site, changes[0]))}{chairs}"
    variant = f"{piece.name}{f'~{number}' if number else ''}"
    return Offer(
        f"Slide the {piece.name} out of the way", changes, text, variant,
        people=2 if heavy else 1, minutes=HEAVY_MINUTES if heavy else None, hazards=("lifting",) if heavy else (),
    )  # fmt: skip


def _culprits(site: Site) -> list[Piece]:
    """Pieces without which the finding would be better, the worst first."""
    now = site.severity(())
    movable = [
        piece
        for piece in site.survey.furniture
        if piece.room == site.room and piece.wall in site.lines and not piece.fixed
    ]
    movable = [piece for piece in movable if piece.what not in STAYS and not piece.tucked and not piece.hangs]
    without = {piece.name: site.severity((), frozenset({piece.name})) for piece in movable}
    better = [piece for piece in movable if without[piece.name] < now]
    return sorted(better, key=lambda piece: (without[piece.name], piece.name))[:CULPRITS]


def _slides(site: Site, piece: Piece) -> list[tuple[Change, ...]]:
    now = site.severity(())
    best: list[tuple[Fraction, int, tuple[Change, ...]]] = []
    cures: list[tuple[Change, ...]] = []
    for order, change in enumerate(_ways(site, piece)):
        changes = with_chairs(site, piece, change)
        if not site.fits(changes):
            continue
        severity = site.severity(changes)
        if severity == 0:
            cures.append(changes)
            if len(cures) >= MOST:
                break
        elif severity < now:
            best.append((severity, order, changes))
    return cures or ([min(best, key=lambda one: one[:2])[2]] if best else [])


def _ways(site: Site, piece: Piece) -> Iterator[Change]:
    yield from along_wall(site, piece, STEP_MM, REACH_MM)
    if piece.gap > 0:
        yield from off_wall(site, piece, STEP_MM, REACH_MM / 2)


KIND = Kind(
    "move-piece", "Slide a piece out of the way",
    ("door-cannot-open", "walkway-too-narrow", "front-blocked", "radiator-blocked", "damp-gap", "exit-blocked",
     "chairs-boxed-in", "bed-side-tight", "alarm-crowded", "camera-sees-back"),
    (5, 10, 20), 6, _fit, done_when="the door opens wide and the way is free",
)  # fmt: skip
