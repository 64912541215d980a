"""Slide a piece that is in the way along its wall, or off it.

Fits: pieces whose absence would make the finding better (each is lifted out and the room measured again), if they are not
heaters, beds or fixed to the wall. The shortest slides that cure it and land on free floor are kept; if none cures it, the
one that helps most.
"""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.remedies.moves import after, along_wall, edges, off_wall
from budgetfix.room.items import HEATERS, Piece
from budgetfix.room.survey import Change

STEP_MM, REACH_MM = 100.0, 1500.0
STAYS = (*HEATERS, "bed", "fireplace")
MOST = 2


def _fit(site: Site) -> tuple[Candidate, ...]:
    if site.finding is None:
        return ()
    offers: list[Offer] = []
    for piece in _culprits(site):
        for number, change in enumerate(_slides(site, piece)):
            text = f"Slide the {piece.name}: {edges(site, after(site, change))}"
            name = f"Slide the {piece.name} out of the way"
            people = 2 if piece.heavy else None
            offers.append(Offer(name, (change,), text, f"{piece.name}{f'~{number}' if number else ''}", people=people))
    return tuple(candidate(KIND, site, offer) for offer in offers)


def _culprits(site: Site) -> list[Piece]:
    """Pieces without which the finding would be better, the worst first."""
    now = site.severity(())
    movable = [
        piece
        for piece in site.survey.furniture
        if piece.room == site.room and piece.wall in site.lines and piece.what not in STAYS and not piece.fixed
    ]
    without = {piece.name: site.severity((), frozenset({piece.name})) for piece in movable if not piece.tucked}
    better = [piece for piece in movable if without.get(piece.name, now) < now]
    return sorted(better, key=lambda piece: (without[piece.name], piece.name))[:3]


def _slides(site: Site, piece: Piece) -> list[Change]:
    now = site.severity(())
    best: list[tuple[object, Change]] = []
    cures: list[Change] = []
    for change in _ways(site, piece):
        if not site.fits((change,)):
            continue
        severity = site.severity((change,))
        if severity == 0:
            cures.append(change)
            if len(cures) >= MOST:
                break
        elif severity < now:
            best.append((severity, change))
    if cures:
        return cures
    return [min(best, key=lambda one: (one[0], len(best)))[1]] if best else []


def _ways(site: Site, piece: Piece) -> Iterator[Change]:
    yield from along_wall(site, piece, STEP_MM, REACH_MM)
    if piece.gap > 0:
        yield from off_wall(site, piece, STEP_MM, REACH_MM / 2)


KIND = Kind(
    "move-piece", "Slide a piece out of the way",
    ("door-cannot-open", "walkway-too-narrow", "front-blocked", "radiator-blocked", "damp-gap", "exit-blocked",
     "chairs-boxed-in", "bed-side-tight", "alarm-crowded"),
    (5, 10, 20), 6, _fit, hazards=("lifting",), done_when="the door opens wide and the way is free",
)  # fmt: skip
