"""The rules as they hold for one brief: bands merged, switched off or on, weights with profile and priority."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from budgetfix.brief.models import BandChange, Brief
from budgetfix.inspection.rule import Band, Rule


@dataclass(frozen=True)
class Judge:
    """One rule with the band that holds, and its weight for the profile. `fixed`: the brief set the band."""

    rule: Rule
    band: Band
    weight: Fraction
    fixed: bool = False


@dataclass(frozen=True)
class Block:
    """The findings of one room that share points: a family, or one rule. Looked at together."""

    room: str
    name: str
    judges: tuple[Judge, ...]


def merged(band: Band, change: BandChange | None) -> Band:
    """The one place where a brief's band overrides a rule's."""
    if change is None:
        return band
    sound = change.sound if change.sound is not None else (band.low, band.high)
    bad_low, bad_high = change.glaring if change.glaring is not None else (band.bad_low, band.bad_high)
    return replace(band, low=sound[0], high=sound[1], bad_low=bad_low, bad_high=bad_high)


def judges(rules: Iterable[Rule], brief: Brief) -> tuple[Judge, ...]:
    """The rules that are on, in the order of their slugs."""
    changes = {change.rule: change for change in brief.bands}
    found = []
    for rule in sorted(rules, key=lambda rule: rule.slug):
        change = changes.get(rule.slug)
        wanted = not rule.off if change is None or change.switch is None else change.switch
        factor = Fraction(1) if rule.safety else rule.profiles.get(brief.profile, Fraction(1))
        if wanted and factor > 0:
            fixed = change is not None and (change.sound is not None or change.glaring is not None)
            found.append(
                Judge(rule, merged(rule.bands.get(brief.profile, rule.band), change), rule.weight * factor, fixed)
            )
    return tuple(found)


def blocks(rooms: Iterable[str], judged: tuple[Judge, ...]) -> tuple[Block, ...]:
    """For each room: one block a family, one a rule without family. Safety has no families."""
    found = []
    for room in rooms:
        named: dict[str, list[Judge]] = {}
        for judge in judged:
            family = None if judge.rule.safety else judge.rule.family
            named.setdefault(family or judge.rule.slug, []).append(judge)
        found += [Block(room, name, tuple(group)) for name, group in sorted(named.items())]
    return tuple(found)
