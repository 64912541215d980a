"""The terminal's words for an inspection: 79 columns, nothing that needs color."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from budgetfix.brief.models import ListedFault
from budgetfix.exports.lines import WIDTH, left, plain, wrapped
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.words import measured_words, sound_words

WIDTHS = (21, 13, 19, 16)
"""Columns of fault, on, measured and sound; what is longer goes on below, so that nothing is cut."""


@dataclass(frozen=True)
class Inspection:
    """What `inspect` shows."""

    title: str
    room_words: str
    findings: tuple[Finding, ...]
    listed: tuple[ListedFault, ...]
    points: int
    hazards: int
    rules: int
    unit: str
    job: str
    notes: tuple[str, ...] = ()
    asked: tuple[str, ...] = ()
    """Sentences on the figures that were left blank and on which most hangs."""


def inspect_text(seen: Inspection, *, unicode: bool = True, width: int = WIDTH) -> str:
    """Hazards first, then faults by points, then what to type next. Below 79 columns each fault is a paragraph."""
    faults = [one for one in seen.findings if one.fault]
    size = f", {seen.room_words}" if seen.room_words else ""
    things = len({(one.room, one.subject) for one in seen.findings})
    lines = wrapped(f"{seen.title}{size}: {things} things judged by {seen.rules} rules.", 2)
    lines += [line for note in seen.notes for line in wrapped(note, 2)]
    lines += _listed_block(seen, faults, width)
    sound = sum(1 for one in seen.findings if not one.fault)
    count = len(faults) + len(seen.listed)
    lines += ["", f"{_count(count, 'fault')}, {seen.points:,} points, {_count(seen.hazards, 'hazard')}. "
              f"{_count(sound, 'check')} found nothing wrong."]  # fmt: skip
    if any(not one.certain for one in faults):
        lines.append("~ too close to call with a tape, or a figure was filled in for you.")
    if seen.asked:
        lines += ["", "MEASURE THESE NEXT"]
        lines += [line for words in seen.asked for line in wrapped(f"  {words}.", 4)]
    lines += _next(seen, faults, width)
    return plain("\n".join(lines), unicode)


def _listed_block(seen: Inspection, faults: list[Finding], width: int) -> list[str]:
    safety = [one for one in faults if one.safety]
    looks = [one for one in faults if not one.safety]
    lines = []
    if safety or any(fault.safety for fault in seen.listed):
        lines += ["", "SAFETY", *_rows(safety, seen.unit, width), *_typed(seen.listed, True, width)]
    if looks or any(not fault.safety for fault in seen.listed):
        lines += ["", "LOOKS AND USE", *_rows(looks, seen.unit, width), *_typed(seen.listed, False, width)]
    if not lines:
        lines = ["", "Nothing is off by these rules."]
    return lines


def _row(width: int, points: str, *cells: str) -> list[str]:
    if width < WIDTH:
        fault, on, measured, sound = cells
        below = [part for part in (f"{on}: {measured}" if on else measured, f"sound: {sound}" if sound else "") if part]
        return wrapped(f"{points:>5}  {fault}", 7, width) + wrapped(f"       {'; '.join(below)}", 7, width)
    columns = [wrapped(cell, 0, width) for cell, width in zip(cells, WIDTHS, strict=True)]
    lines = []
    for at in range(max(map(len, columns))):
        parts = [
            left(column[at] if at < len(column) else "", width) for column, width in zip(columns, WIDTHS, strict=True)
        ]
        lines.append(f"{points if at == 0 else '':>5}  {' '.join(parts)}".rstrip())
    return lines


def _rows(faults: Iterable[Finding], unit: str, width: int) -> list[str]:
    lines = _row(width, "", "fault", "on", "measured", "sound") if width >= WIDTH else []
    for one in faults:
        measured = measured_words(one, unit) + ("" if one.certain else " ~")
        lines += _row(width, f"{one.points:,}", one.title, one.subject, measured, sound_words(one, unit))
    return lines


def _typed(listed: Iterable[ListedFault], safety: bool, width: int) -> list[str]:
    chosen = sorted((fault for fault in listed if fault.safety == safety), key=lambda one: (-one.points, one.fault))
    return [
        line
        for fault in chosen
        for line in _row(width, f"{fault.points:,}", fault.what or fault.fault, fault.where, "listed by you", "")
    ]


def _next(seen: Inspection, faults: list[Finding], width: int) -> list[str]:
    """On a narrow terminal a command has a line of its own, so that it can be copied."""
    asked = []
    if faults:
        worst = max(faults, key=lambda one: (one.points, one.rule))
        asked.append(("Why is one of these a fault?", f"budgetfix rules {worst.rule}"))
    asked.append(("What to do about them?", f"budgetfix plan {seen.job}"))
    if width < WIDTH:
        return ["", *(line for why, command in asked for line in (why, f"  {command}"))]
    return ["", *(f"{why:<31}{command}" for why, command in asked)]


def _count(number: int, word: str) -> str:
    return f"{number:,} {word}{'' if number == 1 else 's'}"
