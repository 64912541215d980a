"""Rules to findings, findings to points."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from budgetfix.base.numbers import half_even
from budgetfix.brief.models import Brief
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.judging import Block, Judge
from budgetfix.inspection.look import Look, Question
from budgetfix.inspection.rule import Measured, slope
from budgetfix.room.items import Item, Table
from budgetfix.room.survey import Survey

SHARES = (Fraction(1), Fraction(2, 3), Fraction(1, 3))
"""Of the same rule on several subjects of a room, worst first; the last share goes on."""
THIRD = Fraction(1, 3)


@dataclass(frozen=True)
class Seen:
    """The findings of a block in one state of the room, and every question that was asked to get them."""

    findings: tuple[Finding, ...]
    asked: tuple[Question, ...]

    @property
    def hazards(self) -> int:
        return sum(finding.points for finding in self.findings if finding.safety)

    @property
    def points(self) -> int:
        return sum(finding.points for finding in self.findings if not finding.safety)


def judge_one(judge: Judge, look: Look, subject: str, brief: Brief) -> Finding | None:
    """One rule on one subject; None where the rule is silent."""
    rule = judge.rule
    measured = rule.measure(look, subject)
    if measured is None:
        return None
    fixed = judge.fixed and not measured.own_band
    band = judge.band if fixed or measured.band is None else measured.band
    metric = look.household.metric
    severity = _severity(judge, measured, measured.value, look)
    certain = not measured.uncertain
    if certain and measured.give > 0 and measured.severity is None:
        ends = [slope(measured.value + give, band, rule.unit, metric) > 0 for give in (-measured.give, measured.give)]
        certain = ends == [severity > 0] * 2
    priority = brief.priority(rule.slug, *([rule.family] if rule.family and not rule.safety else []), subject)
    return Finding(
        rule=rule.slug,
        title=rule.title,
        subject=subject,
        room=look.room,
        value=measured.value,
        unit=rule.unit,
        band=band,
        severity=severity,
        raw=100 * severity * judge.weight * priority,
        certain=certain,
        safety=rule.safety,
        family=None if rule.safety else rule.family,
        family_scope=look.room if rule.family_by_room else subject,
        basis=rule.basis,
        note=measured.note,
    )


def _severity(judge: Judge, measured: Measured, value: float, look: Look) -> Fraction:
    fixed = judge.fixed and not measured.own_band
    if measured.severity is not None and not fixed:
        return min(Fraction(3), measured.severity)
    band = judge.band if fixed or measured.band is None else measured.band
    return slope(value, band, judge.rule.unit, look.household.metric)


def look_at(block: Block, survey: Survey, brief: Brief, lifted: frozenset[str] = frozenset()) -> Seen:
    """All findings of a block (sound ones too), with points shared out."""
    asked: dict[Question, None] = {}
    findings: list[Finding] = []
    for judge in block.judges:
        lister = Look(survey, block.room, lifted)
        subjects = sorted(judge.rule.subjects(lister))
        asked.update(lister.asked)
        for subject in subjects:
            look = Look(survey, block.room, lifted)
            found = judge_one(judge, look, subject, brief)
            asked.update(look.asked)
            if found is not None:
                findings.append(replace(found, asked=(*lister.asked, *look.asked)))
    return Seen(shared_out(findings), tuple(asked))


def shared_out(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Points by family share and subject share, in exact fractions, rounded once.

    Ties by slug, then subject. Safety findings have no families.
    """
    order = sorted(findings, key=lambda finding: (-finding.raw, finding.rule, finding.subject))
    family_seen: dict[tuple[str, str, str], int] = {}
    rule_seen: dict[tuple[str, str], int] = {}
    points: dict[tuple[str, str, str], int] = {}
    for finding in order:
        share = Fraction(1)
        if finding.family is not None:
            family = (finding.room, finding.family, finding.family_scope)
            share *= THIRD if family_seen.get(family, 0) else 1
            family_seen[family] = family_seen.get(family, 0) + 1
        rule = (finding.room, finding.rule)
        share *= SHARES[min(rule_seen.get(rule, 0), len(SHARES) - 1)]
        rule_seen[rule] = rule_seen.get(rule, 0) + 1
        points[(finding.room, finding.rule, finding.subject)] = half_even(finding.raw * share)
    in_order = sorted(findings, key=lambda finding: (finding.room, finding.rule, finding.subject))
    return tuple(replace(finding, points=points[(finding.room, finding.rule, finding.subject)]) for finding in in_order)


def look_again(
    block: Block,
    survey: Survey,
    brief: Brief,
    before: Seen,
    removed: Iterable[tuple[Table, Item]],
    absences: Mapping[str, Judge],
) -> Seen:
    """A block in the changed room: what was taken away keeps its points unless its absence rule passes.

    `removed`: the things of the old survey that are gone. `absences`: every rule that is on, by slug.
    """
    after = look_at(block, survey, brief)
    gone = tuple(removed)
    if not gone:
        return after
    there = {(finding.rule, finding.subject) for finding in after.findings}
    asked = dict.fromkeys(after.asked)
    kept = list(after.findings)
    lines = Look(survey, block.room).lines
    for old in before.findings:
        silent = old.fault and (old.rule, old.subject) not in there
        if silent and any(question.covers(table, item, lines) for question in old.asked for table, item in gone):
            asked.update(dict.fromkeys(old.asked))
            if not _absence_passes(old, survey, brief, absences, asked):
                kept.append(replace(old, kept=True))
    return Seen(shared_out(kept), tuple(asked))


def _absence_passes(
    old: Finding, survey: Survey, brief: Brief, absences: Mapping[str, Judge], asked: dict[Question, None]
) -> bool:
    rule = absences[old.rule].rule
    judge = absences.get(rule.absence) if rule.absence else None
    if judge is None:
        return False
    seen = look_at(Block(old.room, judge.rule.slug, (judge,)), survey, brief)
    asked.update(dict.fromkeys(seen.asked))
    return bool(seen.findings) and not any(finding.fault for finding in seen.findings)
