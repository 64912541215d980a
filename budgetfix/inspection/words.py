"""A finding in words that people read: what was measured, what is sound, and the rule's manual page."""

from __future__ import annotations

import sys

from budgetfix.base.numbers import MeasureUnit
from budgetfix.base.tape import write_length
from budgetfix.base.twin import Twin
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


def _pair(low: Edge, high: Edge, unit: MeasureUnit, between: str) -> str:
    """Two edges, lengths in both units: `4 to 10 in (100 to 250 mm)`; an edge that is None is left out."""
    edges = [edge for edge in (low, high if high != low else None) if edge is not None]
    if unit != "mm" and not any(isinstance(edge, Twin) for edge in edges):
        shown = [figure(edge, unit, "mm") if isinstance(edge, float) and edge else "0" for edge in edges]
        return between.join([*(one.removesuffix("°").removesuffix(f" {unit}") for one in shown[:-1]), *shown[-1:]])
    if not any(edge_mm(edge, True) for edge in edges):
        return "0"
    inches, metric = ([write_length(edge_mm(edge, of == "mm") or 0.0, of) for edge in edges] for of in ("in", "mm"))
    spans = [between.join([*(one.rpartition(" ")[0] for one in each[:-1]), each[-1]]) for each in (inches, metric)]
    return f"{spans[0]} ({spans[1]})"


def _range(low: Edge, high: Edge, unit: MeasureUnit) -> str:
    if low is None and high is None:
        return "as the room asks"
    if high is not None and not edge_mm(high, True) and (low is None or not edge_mm(low, True)):
        return "none" if unit in ("count", "ratio") else "0"
    less = " or fewer" if unit == "count" else " or less"
    side = " or more" if high is None else less if low is None else ""
    return _pair(low, high, unit, " to ") + side


def _banded(band: Band, unit: MeasureUnit) -> str:
    """One band in a line: sound, aim where there is one, glaring where a number says it."""
    words = f"Sound: {_range(band.low, band.high, unit)}."
    if band.aim != (None, None):
        words += f" Aim: {_range(*band.aim, unit)}."
    if (band.bad_low, band.bad_high) != (None, None):
        words += f" Glaring: {_pair(band.bad_low, band.bad_high, unit, ' and ')}."
    return words


def _figures(rule: Rule) -> list[str]:
    """What is measured; then each band in a line of its own, or sound, aim and glaring one below the other."""
    band, unit = rule.band, rule.unit
    lines = [f"Measured: {rule.measures}."]
    if rule.shown:
        return lines + [f"{where}. {_banded(each, unit)}" for where, each in rule.shown]
    lines.append(f"Sound: {rule.sound_words or _range(band.low, band.high, unit)}.")
    if rule.aim_words or (band.aim != (None, None) and unit != "yes"):
        lines.append(f"Aim: {rule.aim_words or _range(*band.aim, unit)}.")
    lines.append(f"Glaring: {rule.bad_words or _pair(band.bad_low, band.bad_high, unit, ' and ')}.")
    return lines + [f"In the profile {name}. {_banded(each, unit)}" for name, each in sorted(rule.bands.items())]


def _weights(rule: Rule) -> str:
    """Weight and family; what a profile makes of the weight."""
    factors = [f"{name} {f'x {float(by):.2g}' if by else 'off'}" for name, by in rule.profiles.items()]
    family = "safety: hazards are counted apart" if rule.safety else f"family: {rule.family or 'none'}"
    said = f"Weight {float(rule.weight):g} of 5; {family}."
    return f"{said} By profile: {', '.join(factors)}." if factors else said


def basis_of(rule: Rule) -> str:
    """The last paragraph of a rule's page, on one line: its sources named in full, or common practice."""
    return " ".join(_text(rule).rpartition("Basis:")[2].split())


def _text(rule: Rule) -> str:
    return (sys.modules[rule.measure.__module__].__doc__ or "").strip()


def page(rule: Rule) -> str:
    """The manual page of a rule: its docstring with its figures before the reasons, and what the brief may change."""
    what, _, why = _text(rule).partition("\n\nWhy:")
    lines = [f"{rule.slug} - {rule.title}", "", what, "", *_figures(rule), "", f"Why:{why}", "", _weights(rule)]
    switch = "on" if rule.off else "off"
    if rule.unit != "yes":
        lines.append(f"The brief may change the band: bands: {{{rule.slug}: {{sound: [low, high], glaring: limit}}}}")
    lines.append(f"The brief may switch it {switch}: bands: {{{rule.slug}: {switch}}}")
    if rule.absence:
        lines.append(f"What is taken away keeps its points unless {rule.absence} passes.")
    if rule.gone_cures:
        lines.append("What has left the room is cured.")
    if rule.off:
        lines.append("Off unless the brief switches it on.")
    return "\n".join(lines)
