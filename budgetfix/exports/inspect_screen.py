"""The terminal's words for an inspection: 79 columns, nothing that needs color."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from budgetfix.brief.models import ListedFault
from budgetfix.exports.lines import left, plain, right, wrapped
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.words import measured_words, sound_words

HEADS = f"{'':7}{left('fault', 23)}{left('on', 15)}{left('measured', 18)}sound"


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
    lines += _next(seen, faults)
    return plain("\n".join(lines), unicode)


def _listed_block(seen: Inspection, faults: list[Finding]) -> list[str]:
    safety = [one for one in faults if one.safety]
    looks = [one for one in faults if not one.safety]
    lines = []
    if safety or any(fault.safety for fault in seen.listed):
        lines += ["", "SAFETY", HEADS, *_rows(safety, seen.unit), *_typed(seen.listed, True)]
    if looks or any(not fault.safety for fault in seen.listed):
        lines += ["", "LOOKS AND USE", HEADS, *_rows(looks, seen.unit), *_typed(seen.listed, False)]
    if not lines:
        lines = ["", "Nothing is off by these rules."]
    return lines


def _rows(faults: Iterable[Finding], unit: str) -> list[str]:
    return [
        f"{right(f'{one.points:,}', 5)}  {left(one.title, 22)} {left(one.subject, 14)} "
        f"{left(measured_words(one, unit), 17)} {left(sound_words(one, unit), 14).rstrip()}"
        f"{'' if one.certain else ' ~'}"
        for one in faults
    ]


def _typed(listed: Iterable[ListedFault], safety: bool) -> list[str]:
    chosen = [fault for fault in listed if fault.safety == safety]
    return [
        f"{right(f'{fault.points:,}', 5)}  {left(fault.what or fault.fault, 42)} "
        f"{left(fault.where or 'listed by you', 28)}".rstrip()
        for fault in sorted(chosen, key=lambda fault: (-fault.points, fault.fault))
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
