"""Floors under crumbs: what the tool sized itself and does too little by itself is left out before framing."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from budgetfix.framing.exclusion import Exclusions
from budgetfix.framing.frame import Ground
from budgetfix.framing.measured import MeasuredTree
from budgetfix.inspection.inspect import Seen
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.registry import KINDS

LEAST_POINTS = 20
"""Common practice: nobody plans for less."""
WHOLE = frozenset(kind.kind for kind in KINDS if kind.whole_room)


@dataclass(frozen=True, slots=True)
class Alone:
    """What one candidate takes away by itself in the room as surveyed."""

    hazards: int
    points: int


def alone(
    base: Ground, candidates: Iterable[Candidate], at: Callable[[str], None] = lambda _: None
) -> tuple[dict[str, Alone], dict[str, dict[frozenset[str], Seen]]]:
    """For each changing candidate its own effect, and the inspections that it took (to warm the trees).

    `at`: told of each room as it is come to.
    """
    changing = {one.id: one for one in candidates if one.changes}
    memories: dict[str, dict[frozenset[str], Seen]] = {}
    sums = {id: [0, 0] for id in changing}
    if base.survey is None:
        return {}, {}
    absences = {judge.rule.slug: judge for judge in base.judged}
    free = Exclusions.of(changing, (), ())
    for block, seen in zip(base.blocks, base.seen, strict=True):
        at(block.room)
        tree = MeasuredTree(block, base.survey, base.brief, changing, free, absences, seen)
        for id in tree.touching(frozenset(), frozenset()):
            after = tree.look(frozenset({id}))
            sums[id][0] += seen.hazards - after.hazards
            sums[id][1] += seen.points - after.points
        memories[f"{block.room}/{block.name}"] = tree.memory
    return {id: Alone(hazards, points) for id, (hazards, points) in sums.items()}, memories


def without_crumbs(
    candidates: tuple[Candidate, ...], effects: Mapping[str, Alone], keep: Iterable[str]
) -> tuple[Candidate, ...]:
    """Drop own candidates that take away no hazard and under 20 points or under 1 point a minute by themselves.

    Never dropped: the user's, what answers a listed fault, what is in `keep`, what another candidate needs.
    """
    needed = {need for candidate in candidates for need in candidate.needs} | set(keep)
    return tuple(one for one in candidates if one.id in needed or not _crumb(one, effects))


def _crumb(candidate: Candidate, effects: Mapping[str, Alone]) -> bool:
    if not candidate.own or candidate.answers:
        return False
    effect = effects.get(candidate.id, Alone(0, 0))
    minutes = person_minutes(candidate)
    return effect.hazards <= 0 and (effect.points < LEAST_POINTS or effect.points < minutes)


def without_shadows(candidates: tuple[Candidate, ...], effects: Mapping[str, Alone]) -> tuple[Candidate, ...]:
    """Drop own candidates that another one makes needless.

    That is: what the user's catalog states as well (same kind, same things, by itself no better), and whole layouts of
    a room that do no more than one free move of what they move too.
    """
    theirs = [one for one in candidates if not one.own and one.changes]
    moves = [one for one in candidates if one.changes and not (one.uses or one.cost_minor or one.kind in WHOLE)]
    return tuple(
        one
        for one in candidates
        if not one.own
        or (
            not any(_shadows(it, one, effects) for it in theirs)
            and not (one.kind in WHOLE and any(_outdoes(it, one, effects) for it in moves))
        )
    )


def _outdoes(move: Candidate, layout: Candidate, effects: Mapping[str, Alone]) -> bool:
    """True where a layout gains less on top of a move than its further minutes ask for."""
    moved = {change.item for change in layout.changes}
    if any(change.item not in moved for change in move.changes):
        return False
    one, other = effects.get(move.id, Alone(0, 0)), effects.get(layout.id, Alone(0, 0))
    more = person_minutes(layout) - person_minutes(move)
    return one.hazards >= other.hazards and other.points - one.points < max(LEAST_POINTS, more)


def person_minutes(candidate: Candidate) -> int:
    """The planned minutes of everybody who works on it."""
    return sum(work.person_minutes for work in candidate.work)


def _shadows(theirs: Candidate, ours: Candidate, effects: Mapping[str, Alone]) -> bool:
    named = {change.item for change in theirs.changes}
    if theirs.kind != ours.kind or any(change.item not in named for change in ours.changes):
        return False
    one, other = effects.get(theirs.id, Alone(0, 0)), effects.get(ours.id, Alone(0, 0))
    return one.hazards >= other.hazards and one.points >= other.points
