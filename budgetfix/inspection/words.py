"""A finding in words that people read: what was measured, what is sound, and the rule's manual page."""

from __future__ import annotations

import sys

from budgetfix.base.numbers import MeasureUnit
from budgetfix.base.tape import write_length
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.rule import Band, Edge, Rule, edge_mm


def figure(value: float, unit: MeasureUnit, of: str) -> str:
    """A figure in a measure's unit; lengths in the survey's unit `of` (in, cm, mm)."""
    match unit:
        case "mm":
            return write_length(value, of)
        case "ratio":
            return f"{value:.2f}"
        case "degree":
            return f"{value:.0f}°"
        case "count":
            return f"{value:.0f}"
        case "yes":
            return "yes" if value else "no"
        case _:
            return f"{value:.0f} {unit}"


def measured_words(finding: Finding, unit: str) -> str:
    """What was measured: `60 mm above the frame`; the note alone where the rule is yes or no, or a share of things."""
    if finding.unit == "yes":
        return finding.note or ("yes" if finding.value else "no")
    shown = figure(finding.value, finding.unit, unit)
    first = finding.note.split(";")[0].strip()
    if finding.unit in ("ratio", "count") and first[:1].isdigit():
        return first
    return f"{shown} {first}".strip() if len(first) <= SHORT else shown


SHORT = 26
"""Notes longer than this stay in the task list."""


def sound_words(finding: Finding, unit: str) -> str:
    """What would be sound: `8 in or more`, `0.55 to 0.90`, `fixed to the wall`."""
    edges = (finding.band.low, finding.band.high)
    if finding.unit != "yes" and edges != (None, None):
        return band_words(finding.band, finding.unit, unit)
    return _rule_words(finding.rule) or "as the room asks"


def _rule_words(slug: str) -> str:
    from budgetfix.inspection.registry import RULES

    return next((rule.sound_words for rule in RULES if rule.slug == slug), "")


def band_words(band: Band, unit: MeasureUnit, of: str) -> str:
    """A band in words, in the survey's unit."""
    metric = of != "in"
    low, high = edge_mm(band.low, metric), edge_mm(band.high, metric)
    if low is not None and high is not None:
        return f"{figure(low, unit, of)} to {figure(high, unit, of)}"
    if low is not None:
        return f"{figure(low, unit, of)} or more"
    if high is not None:
        return "none" if high == 0 and unit in ("mm", "count") else f"{figure(high, unit, of)} or less"
    return "as the room asks"


def _both(edge: Edge, unit: MeasureUnit) -> str:
    if edge is None:
        return "open"
    if unit != "mm":
        value = edge_mm(edge, True)
        return figure(value if value is not None else 0.0, unit, "mm")
    inches, metric = edge_mm(edge, False), edge_mm(edge, True)
    return f"{write_length(inches or 0.0, 'in')} ({write_length(metric or 0.0, 'mm')})"


def page(rule: Rule) -> str:
    """The manual page of a rule: its docstring, then its figures."""
    text = (sys.modules[rule.measure.__module__].__doc__ or "").strip()
    family = "safety: hazards are counted apart" if rule.safety else f"family: {rule.family or 'none'}"
    lines = [
        f"{rule.slug} - {rule.title}",
        "",
        text,
        "",
        f"Sound from {_both(rule.band.low, rule.unit)} to {_both(rule.band.high, rule.unit)}.",
        f"Glaring at {_both(rule.band.bad_low, rule.unit)} or {_both(rule.band.bad_high, rule.unit)}.",
        f"Weight {float(rule.weight):g} of 5; {family}.",
        "The brief may change the band or switch the rule off: "
        f"bands: {{{rule.slug}: {{sound: [low, high], glaring: limit}}}} or {{{rule.slug}: off}}.",
    ]
    if rule.off:
        lines.append("Off unless the brief switches it on.")
    return "\n".join(lines)
