"""One plan as one HTML file that needs nothing else: no network, no other file, no script to be read or printed.

What may run or style is named by its SHA-256 in a content policy; all else is barred by the viewer itself.
"""

from __future__ import annotations

import base64
import hashlib
import json
import re
from dataclasses import dataclass
from importlib.resources import files
from itertools import groupby

from jinja2 import Environment, StrictUndefined

from budgetfix.base.fingerprint import fingerprint
from budgetfix.exports import lettering, palette
from budgetfix.exports.by_person import workers
from budgetfix.exports.chance_words import chance_lines, in_time
from budgetfix.exports.drawings.picture import Picture
from budgetfix.exports.fair_words import fair_lines
from budgetfix.exports.more_words import next_lines
from budgetfix.exports.page import words
from budgetfix.exports.page.rows import hazard_row
from budgetfix.exports.page.stops import Lists, StopView, all_stops, as_data, stop_view
from budgetfix.exports.plan_book_faults import DOUBT, RISE
from budgetfix.inspection.registry import RULES
from budgetfix.inspection.words import page as rule_page
from budgetfix.outcome.book import PlanBook, Stop, Sums

NAMES = ("INK", "QUIET", "TEAL", "WHITE", "STRAW", "LINE", "WARN", "WARN_GROUND", "BAR", "AMBER")
"""Colours of the palette that the style sheet knows as `--ink`, `--warn-ground`, ..."""


@dataclass(frozen=True, slots=True)
class Bar:
    """One bar of the picture above the slider: a place from 0, and a height from 0 to 100."""

    place: int
    height: float


def plan_page(book: PlanBook, pictures: tuple[Picture, ...] = ()) -> bytes:
    """The page of a plan as UTF-8; the drawings are of the book's own plan. Same book, same bytes."""
    lists = Lists()
    stops = all_stops(book)
    own = next(at for at, stop in enumerate(stops) if stop.this_one)
    mine = stop_view(book, stops[own], lists)
    views = [mine if stop.this_one else stop_view(book, stop, lists) for stop in stops]
    environment = Environment(autoescape=True, trim_blocks=True, lstrip_blocks=True, undefined=StrictUndefined)
    made = environment.from_string(read_part("page.html.j2")).render(
        book=book,
        pairs=_pairs(pictures),
        words=words,
        lettering=lettering,
        style=_style(),
        script=read_part("page.js"),
        data=_data(book, own, views, lists),
        mine=mine,
        hazards=[hazard_row(book, row) for row in book.faults if row.safety],
        own=own,
        stops=views,
        jumps=_jumps(book, stops, own),
        bars=_bars(views),
        lists=lists,
        why=_reasons(lists),
        more=next_lines(book),
        both=fair_lines(book),
        sure=chance_lines(book) if book.chances is not None and book.chances.said else (),
        in_time=in_time(book),
        remarks=_remarks(stops),
        people=_people(stops),
    )
    return _with_policy(made).encode("utf-8")


def _people(stops: tuple[Stop, ...]) -> list[str]:
    """Whoever works in any of the plans; empty where nobody shares the work."""
    found = [workers(stop.tasks, stop.sessions) for stop in stops]
    return list(dict.fromkeys(name for names in found for name in names))


def _pairs(pictures: tuple[Picture, ...]) -> list[list[Picture]]:
    """Before and after of one room and view, side by side."""
    return [list(pair) for _, pair in groupby(pictures, key=lambda one: (one.room, one.view))]


def read_part(name: str) -> str:
    """A template, style sheet or script of this folder."""
    return files("budgetfix.exports.page").joinpath(name).read_text("utf-8").replace("\r\n", "\n")


def _style() -> str:
    """The style sheet with the palette's colours in front."""
    return f"{colors()}\n{read_part('page.css')}"


def colors() -> str:
    """The palette as properties of a style sheet."""
    named = "".join(f"--{name.lower().replace('_', '-')}:{getattr(palette, name)};" for name in NAMES)
    return f":root{{{named}}}"


def _data(book: PlanBook, own: int, views: list[StopView], lists: Lists) -> str:
    """JSON that can stand inside a script element: nothing in it ends the element or a line."""
    made = {
        "job": job_of(book),
        "own": own,
        "now": [[now.after, now.points, now.state, now.look] for now in lists.now.places],
        "stops": [as_data(view) for view in views],
    }
    text = json.dumps(made, ensure_ascii=False, separators=(",", ":"))
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")


def job_of(book: PlanBook) -> str:
    """What tells jobs apart where ticks are kept: the room and its faults, not the plan, which may be made anew."""
    known = sorted({row.fault for row in book.faults if row.state != "new"})
    cells = [("title", book.title), ("room", book.room_words), ("currency", book.currency)]
    return fingerprint([*cells, *(("fault", fault) for fault in known)])


def _jumps(book: PlanBook, stops: tuple[Stop, ...], own: int) -> list[tuple[str, int]]:
    """Short ways to stops that have a name."""
    named = (("Free plan", book.free), ("Nine tenths as good", book.recommended))
    found = [(name, at) for name, sums in named for at, stop in enumerate(stops) if at != own and _same(stop, sums)]
    return [*found, ("This plan", own)]


def _same(stop: Stop, sums: Sums | None) -> bool:
    return sums is not None and (stop.sums.spent_minor, stop.sums.chosen) == (sums.spent_minor, sums.chosen)


def _bars(views: list[StopView]) -> list[Bar]:
    """Points taken away at each stop, against the most."""
    most = max(1, *(view.improvement for view in views))
    return [Bar(at, round(100 * max(0, view.improvement) / most, 1)) for at, view in enumerate(views)]


def _reasons(lists: Lists) -> dict[str, str]:
    """By rule: what is off, and why that matters, from its manual page."""
    asked = {row.rule for row in lists.faults.places}
    reasons = {}
    for rule in RULES:
        if rule.slug in asked:
            parts = [" ".join(part.split()) for part in rule_page(rule).split("\n\n")]
            reasons[rule.slug] = " ".join([parts[1], *(part for part in parts if part.startswith("Why:"))])
    return reasons


def _remarks(stops: tuple[Stop, ...]) -> list[str]:
    """What signs in the table of faults mean, as far as any plan shows them."""
    rows = [row for stop in stops for row in stop.faults]
    doubt = [DOUBT] if any(not row.certain for row in rows) else []
    shrinks = any(row.state in ("better", "still there") and row.points_after > row.points_before for row in rows)
    return [*doubt, *([RISE] if shrinks else [])]


def _with_policy(html: str) -> str:
    """The page with the hash of each of its own styles and scripts in its content policy."""
    style, script = (
        " ".join(dict.fromkeys(sha256_source(text) for text in re.findall(rf"<{tag}>(.*?)</{tag}>", html, re.DOTALL)))
        for tag in ("style", "script")
    )
    return html.replace("@STYLES@", style, 1).replace("@SCRIPTS@", script, 1)


def sha256_source(text: str) -> str:
    """How a content policy names one style or script."""
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode('utf-8')).digest()).decode('ascii')}'"
