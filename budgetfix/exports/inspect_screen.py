"""The terminal's words for an inspection: 79 columns, nothing that needs color."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from budgetfix.brief.models import ListedFault
from budgetfix.exports.lines import left, plain, wrapped
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


def inspect_text(seen: Inspection, *, unicode: bool = True) -> str:
    """Hazards first, then faults by points, then what to type next."""
    faults = [one for one in seen.findings if one.fault]
    size = f", {seen.room_words}" if seen.room_words else ""
    things = len({(one.room, one.subject) for one in seen.findings})
    lines = wrapped(f"{seen.title}{size}: {things} things judged by {seen.rules} rules.", 2)
    lines += [line for note in seen.notes for line in wrapped(note, 2)]
    lines += _listed_block(seen, faults)
    sound = sum(1 for one in seen.findings if not one.fault)
    count = len(faults) + len(seen.listed)
    lines += ["", f"{_count(count, 'fault')}, {seen.points:,} points, {_count(seen.hazards, 'hazard')}. "
              f"{_count(sound, 'check')} found nothing wrong."]  # fmt: skip
    if any(not one.certain for one in faults):
        lines.append("~ too close to call with a tape, or a figure was filled in for you.")
    if seen.asked:
        lines += ["", "MEASURE THESE NEXT"]
        lines += [line for words in seen.asked for line in wrapped(f"  {words}.", 4)]
    lines += _next(seen, faults)
    return plain("\n".join(lines), unicode)


def _listed_block(seen: Inspection, faults: list[Finding]) -> list[str]:
    safety = [one for one in faults if one.safety]
    looks = [one for one in faults if not one.safety]
    lines = []
    if safety or any(fault.safety for fault in seen.listed):
        lines += ["", "SAFETY", *_rows(safety, seen.unit), *_typed(seen.listed, True)]
    if looks or any(not fault.safety for fault in seen.listed):
        lines += ["", "LOOKS AND USE", *_rows(looks, seen.unit), *_typed(seen.listed, False)]
    if not lines:
        lines = ["", "Nothing is off by these rules."]
    return lines


def _row(points: str, *cells: str) -> list[str]:
    columns = [wrapped(cell, 0, width) for cell, width in zip(cells, WIDTHS, strict=True)]
    lines = []
    for at in range(max(map(len, columns))):
        parts = [
            left(column[at] if at < len(column) else "", width) for column, width in zip(columns, WIDTHS, strict=True)
        ]
        lines.append(f"{points if at == 0 else '':>5}  {' '.join(parts)}".rstrip())
    return lines


def _rows(faults: Iterable[Finding], unit: str) -> list[str]:
    lines = _row("", "fault", "on", "measured", "sound")
    for one in faults:
        measured = measured_words(one, unit) + ("" if one.certain else " ~")
        lines += _row(f"{one.points:,}", one.title, one.subject, measured, sound_words(one, unit))
    return lines


def _typed(listed: Iterable[ListedFault], safety: bool) -> list[str]:
    chosen = sorted((fault for fault in listed if fault.safety == safety), key=lambda one: (-one.points, one.fault))
    return [
        line
        for fault in chosen
        for line in _row(f"{fault.points:,}", fault.what or fault.fault, fault.where, "listed by you", "")
    ]


def _next(seen: Inspection, faults: list[Finding]) -> list[str]:
    lines = [""]
    if faults:
        worst = max(faults, key=lambda one: (one.points, one.rule))
        lines.append(f"Why is one of these a fault?   budgetfix rules {worst.rule}")
    lines.append(f"What to do about them?         budgetfix plan {seen.job}")
    return lines


def _count(number: int, word: str) -> str:
    return f"{number:,} {word}{'' if number == 1 else 's'}"
