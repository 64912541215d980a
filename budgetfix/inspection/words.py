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
    """What was measured: `60 mm above the frame`; the note alone where the rule is yes or no, or a share of things.

    Figures below 0 are turned round: `2 in short of the screen` for -2 in past it.
    """
    if finding.unit == "yes":
        return finding.note or ("yes" if finding.value else "no")
    first = finding.note.split(";")[0].strip()
    value, first = _turned(finding.value, first)
    shown = figure(value, finding.unit, unit)
    if first.startswith(("no ", "a ")) or (finding.unit in ("ratio", "count") and first[:1].isdigit()):
        return first
    return f"{shown} {first}".strip() if len(first) <= SHORT and not first[:1].isdigit() else shown


def _turned(value: float, words: str) -> tuple[float, str]:
    first, _, rest = words.partition(" ")
    if value < -0.05 and first in TURNED:
        return -value, f"{TURNED[first]} {rest}"
    return value, words


TURNED = {"past": "short of", "above": "below", "below": "above", "off": "on", "beyond": "short of"}
"""What a figure below 0 is called."""
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
        start, end = figure(low, unit, of), figure(high, unit, of)
        return f"{start.removesuffix(f' {of}').removesuffix('°')} to {end}"
    if low is not None:
        return f"{figure(low, unit, of)} or more"
    if high is not None:
        return "none" if high == 0 and unit in ("mm", "count", "ratio") else f"{figure(high, unit, of)} or less"
    return "as the room asks"


def _both(edge: Edge, unit: MeasureUnit) -> str:
    """An edge in inches and in millimetres, or the figure alone."""
    inches, metric = edge_mm(edge, False), edge_mm(edge, True)
    if unit != "mm":
        return figure(metric or 0.0, unit, "mm")
    return f"{write_length(inches or 0.0, 'in')} ({write_length(metric or 0.0, 'mm')})" if metric else "0"


def _figures(rule: Rule) -> list[str]:
    """The band of a rule, a line for what is sound, one for what is glaring, one for the aim."""
    band, unit = rule.band, rule.unit
    if unit == "yes":
        return [f"Sound: {rule.sound_words or 'no'}."]
    shown = {edge: _both(edge, unit) for edge in (band.low, band.high, *band.aim, band.bad_low, band.bad_high)}
    lines = [f"Sound: {_range(shown, band.low, band.high)}."]
    glaring = [shown[edge] for edge in (band.bad_low, band.bad_high) if edge is not None]
    lines += [f"Glaring: {' and '.join(glaring)}."] if glaring else []
    return lines + ([f"Aim: {_range(shown, *band.aim)}."] if band.aim != (None, None) else [])


def _range(shown: dict[Edge, str], low: Edge, high: Edge) -> str:
    if low is not None and high is not None:
        return f"{shown[low]} to {shown[high]}"
    if low is not None:
        return f"{shown[low]} or more"
    return f"{shown[high]} or less" if high is not None else "as the room asks"


def page(rule: Rule) -> str:
    """The manual page of a rule: its docstring, then its figures and what the brief may change."""
    text = (sys.modules[rule.measure.__module__].__doc__ or "").strip()
    family = "safety: hazards are counted apart" if rule.safety else f"family: {rule.family or 'none'}"
    lines = [f"{rule.slug} - {rule.title}", "", text, "", *_figures(rule)]
    if rule.why and "Why:" not in text:
        lines.append(f"Why: {rule.why}")
    lines.append(f"Weight {float(rule.weight):g} of 5; {family}.")
    if rule.unit != "yes":
        lines.append(f"The brief may change the band: bands: {{{rule.slug}: {{sound: [low, high], glaring: limit}}}}")
    switch = "on" if rule.off else "off"
    lines.append(f"The brief may switch it {switch}: bands: {{{rule.slug}: {switch}}}")
    if rule.absence:
        lines.append(f"What is taken away keeps its points unless {rule.absence} passes.")
    if rule.off:
        lines.append("Off unless the brief switches it on.")
    return "\n".join(lines)
