"""The screen and the bench that a site is about."""

from __future__ import annotations

from budgetfix.remedies.kind import Site
from budgetfix.room.items import Hung, Piece


def screen_and_bench(site: Site) -> tuple[Hung, Piece] | None:
    """The screen that the site is about (by itself or by its bench), and its bench."""
    for screen in site.survey.pictures:
        if screen.what == "screen" and screen.room == site.room and site.subject in (screen.name, screen.on):
            bench = site.survey.named.get(screen.on, (None, None))[1]
            if isinstance(bench, Piece) and bench.wall == screen.wall:
                return screen, bench
    return None
