"""The screen and the bench that a site is about."""

from __future__ import annotations

from budgetfix.remedies.kind import Site
from budgetfix.room.items import Hung, Piece
from budgetfix.room.stretches import along_wall, overlap

AGAINST_MM = 150.0
"""A piece this near a wall stands before what hangs there."""


def screen_and_bench(site: Site) -> tuple[Hung, Piece] | None:
    """The screen that the site is about (by itself or by its bench), and its bench."""
    for screen in site.survey.pictures:
        if screen.what == "screen" and screen.room == site.room and site.subject in (screen.name, screen.on):
            bench = site.survey.named.get(screen.on, (None, None))[1]
            if isinstance(bench, Piece) and bench.wall == screen.wall:
                return screen, bench
    return None


def wall_screen(site: Site) -> Hung | None:
    """The screen on screws that the site is about, if it stands on nothing."""
    for screen in sorted(site.survey.pictures, key=lambda one: one.name):
        if screen.what == "screen" and screen.room == site.room and site.subject == screen.name:
            return screen if screen.fixing == "screws" and not screen.on and screen.wall in site.lines else None
    return None


def top_below(site: Site, hung: Hung) -> float:
    """The top of the tallest piece against the wall below a thing that hangs there; 0 over bare floor."""
    tops = [0.0]
    for piece in site.survey.furniture:
        if piece.room == site.room and piece.wall in site.lines and not piece.hangs:
            start, end, near = along_wall(piece, site.lines, hung.wall)
            beside = overlap((start, end), (hung.from_left, hung.from_left + hung.width))
            if near <= max(AGAINST_MM, hung.depth) and beside > 0:
                tops.append(piece.height)
    return max(tops)
