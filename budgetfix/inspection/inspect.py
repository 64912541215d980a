"""Rules to findings, findings to points."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from budgetfix.base.numbers import half_even
from budgetfix.brief.models import Brief
from budgetfix.inspection.again import Moved
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.judging import Block, Judge
from budgetfix.inspection.look import Look, Question
from budgetfix.inspection.rule import Measured, slope
from budgetfix.room.items import Item, Table
from budgetfix.room.survey import Survey

SHARES = (Fraction(1), Fraction(2, 3), Fraction(1, 3))
"""Of the same rule on several subjects of a room, worst first; the last share goes on."""
THIRD = Fraction(1, 3)


@dataclass(frozen=True, slots=True)
class Judged:
    """One rule on one subject: what was found before points are shared out (None: silent), and what was asked."""

    subject: str
    finding: Finding | None
    asked: tuple[Question, ...]


@dataclass(frozen=True, slots=True)
class Ruled:
    """One rule on all its subjects. `asked`: to tell the subjects."""

    judge: Judge
    asked: tuple[Question, ...]
    judged: tuple[Judged, ...]


@dataclass(frozen=True)
class Seen:
    """The findings of a block in one state of the room, and every question that was asked to get them.

    `ruled`: how they were come by, rule for rule; what a change does not touch need not be looked at again.
    """

    findings: tuple[Finding, ...]
    asked: tuple[Question, ...]
    ruled: tuple[Ruled, ...] = ()

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
    safety = rule.safety if measured.hazard is None else measured.hazard
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
        raw=100 * severity * (rule.weight if safety else judge.weight) * priority,
        certain=certain,
        safety=safety,
        family=None if safety else rule.family,
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
    room = Look(survey, block.room, lifted)
    return summed(tuple(rule_on_all(judge, room, brief) for judge in block.judges))


def look_at_all(blocks: Iterable[Block], survey: Survey, brief: Brief) -> tuple[Seen, ...]:
    """Each block looked at once in the survey; what one rule was answered the next need not look up again."""
    rooms: dict[str, Look] = {}
    found = []
    for block in blocks:
        room = rooms.setdefault(block.room, Look(survey, block.room))
        found.append(summed(tuple(rule_on_all(judge, room, brief) for judge in block.judges)))
    return tuple(found)


def rule_on_all(judge: Judge, room: Look, brief: Brief, old: Ruled | None = None, moved: Moved | None = None) -> Ruled:
    """One rule on all its subjects. `old` and `moved`: what was found before, taken over where nothing moved."""
    if old is not None and moved is not None and not moved.touches(old.asked):
        asked, subjects = old.asked, [one.subject for one in old.judged]
    else:
        lister = room.again()
        subjects = sorted(judge.rule.subjects(lister))
        asked = tuple(lister.asked)
    known = {} if old is None or moved is None else {one.subject: one for one in old.judged}
    judged = []
    for subject in subjects:
        one = known.get(subject)
        if one is None or moved is None or moved.touches(one.asked):
            look = room.again()
            found = judge_one(judge, look, subject, brief)
            if found is not None:
                found = replace(found, asked=(*asked, *look.asked))
            one = Judged(subject, found, tuple(look.asked))
        judged.append(one)
    return Ruled(judge, asked, tuple(judged))


def summed(ruled: tuple[Ruled, ...]) -> Seen:
    """The findings of a block with points shared out, and all that was asked."""
    asked: dict[Question, None] = {}
    findings = []
    for rule in ruled:
        asked.update(dict.fromkeys(rule.asked))
        for one in rule.judged:
            asked.update(dict.fromkeys(one.asked))
            if one.finding is not None:
                both = (*rule.asked, *one.asked)
                findings.append(one.finding if one.finding.asked == both else replace(one.finding, asked=both))
    return Seen(shared_out(findings), tuple(asked), ruled)


def look_at_moved(
    block: Block, survey: Survey, brief: Brief, before: Seen, moved: Moved, room: Look | None = None
) -> Seen:
    """As `look_at`, but only what asked about something that moved since `before` is judged again.

    `room`: a look at this state of the room that other blocks share.
    """
    if not moved.touches(before.asked) and not any(finding.kept for finding in before.findings):
        return before
    seen, old = room or Look(survey, block.room), {rule.judge.rule.slug: rule for rule in before.ruled}
    return summed(tuple(rule_on_all(judge, seen, brief, old.get(judge.rule.slug), moved) for judge in block.judges))


def shared_out(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Points by family share and subject share, in exact fractions, rounded once.

    Ties by slug, then subject. Safety findings have no families.
    """
    several = tuple(findings)
    order = sorted(
        (finding for finding in several if finding.raw),
        key=lambda finding: (-finding.raw, finding.rule, finding.subject),
    )
    family_seen: dict[tuple[str, str, str], int] = {}
    rule_seen: dict[tuple[str, str], int] = {}
    points: dict[tuple[str, str, str], int] = {}
    for finding in order:
        share = SHARES[0]
        if finding.family is not None:
            family = (finding.room, finding.family, finding.family_scope)
            share *= THIRD if family_seen.get(family, 0) else 1
            family_seen[family] = family_seen.get(family, 0) + 1
        rule = (finding.room, finding.rule)
        share *= SHARES[min(rule_seen.get(rule, 0), len(SHARES) - 1)]
        rule_seen[rule] = rule_seen.get(rule, 0) + 1
        points[(finding.room, finding.rule, finding.subject)] = half_even(finding.raw * share)
    in_order = sorted(several, key=lambda finding: (finding.room, finding.rule, finding.subject))
    return tuple(_worth(finding, points.get((finding.room, finding.rule, finding.subject), 0)) for finding in in_order)


def _worth(finding: Finding, points: int) -> Finding:
    return finding if finding.points == points else replace(finding, points=points)


def look_again(
    block: Block,
    survey: Survey,
    brief: Brief,
    before: Seen,
    removed: Iterable[tuple[Table, Item]],
    absences: Mapping[str, Judge],
    moved: Moved | None = None,
    room: Look | None = None,
) -> Seen:
    """A block in the changed room: what was taken away keeps its points unless its absence rule passes.

    `removed`: the things of the old survey that are gone. `absences`: every rule that is on, by slug. `moved`: what
    changed since `before`; without it everything is looked at again. `room`: a look that other blocks share.
    """
    after = look_at(block, survey, brief) if moved is None else look_at_moved(block, survey, brief, before, moved, room)
    gone = tuple(removed)
    if not gone:
        return after
    there = {(finding.rule, finding.subject) for finding in after.findings}
    asked = dict.fromkeys(after.asked)
    kept = list(after.findings)
    lines = Look(survey, block.room).lines
    for old in before.findings:
        silent = old.fault and (old.rule, old.subject) not in there and not _left_with(old, gone, absences)
        mine = [
            (table, item)
            for table, item in (gone if silent else ())
            if any(question.covers(table, item, lines) for question in old.asked)
        ]
        if mine:
            asked.update(dict.fromkeys(old.asked))
            if not _absence_passes(old, mine, survey, brief, absences, asked):
                kept.append(replace(old, kept=True))
    return Seen(shared_out(kept), tuple(asked), after.ruled)


def _left_with(old: Finding, gone: tuple[tuple[Table, Item], ...], judged: Mapping[str, Judge]) -> bool:
    """True where the thing that was the fault is gone, and the rule asks for nothing in its place."""
    return judged[old.rule].rule.gone_cures and any(item.name == old.subject for _, item in gone)


LINKS = ("over", "window", "also_window", "under")
"""Fields that name what a thing is there for."""


def _absence_passes(
    old: Finding,
    gone: Iterable[tuple[Table, Item]],
    survey: Survey,
    brief: Brief,
    absences: Mapping[str, Judge],
    asked: dict[Question, None],
) -> bool:
    """True where the absence rule finds nothing wrong: at what the gone things were there for, else in the room.

    Where it has nothing to say there, something else of the same sort must serve it now (one rod across two windows).
    """
    rule = absences[old.rule].rule
    judge = absences.get(rule.absence) if rule.absence else None
    if judge is None:
        return False
    seen = look_at(Block(old.room, judge.rule.slug, (judge,)), survey, brief)
    asked.update(dict.fromkeys(seen.asked))
    served = {(table, name) for table, item in gone for name in _links(item)}
    names = {name for _, name in served}
    left = [finding for finding in seen.findings if not served or finding.subject in names]
    if left:
        return not any(finding.fault for finding in left)
    look = Look(survey, old.room)
    still = {
        (table, name) for table in ("curtains", "pictures", "rugs") for one in _all(look, table) for name in _links(one)
    }
    asked.update(look.asked)
    return bool(served) and served <= still


def _links(item: Item) -> list[str]:
    return [name for field in LINKS if (name := getattr(item, field, ""))]


def _all(look: Look, table: str) -> tuple[Item, ...]:
    match table:
        case "curtains":
            return look.curtains()
        case "pictures":
            return look.hung()
        case _:
            return look.rugs()
