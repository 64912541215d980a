"""The candidates of the rest: the same list as the plan had, less what is done and what cannot stand beside it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace

from budgetfix.brief.lease import UNDO_LIMIT
from budgetfix.framing.frame import Ground, allowed, frame
from budgetfix.framing.on_hand import Pairs, covered
from budgetfix.inspection.inspect import Seen
from budgetfix.outcome.paces import learnt, paced
from budgetfix.outcome.remembering import AGAIN
from budgetfix.outcome.so_far import SoFar
from budgetfix.pipeline.candidates import Offered, crowded, offered, shared_spots
from budgetfix.pipeline.rest import Left
from budgetfix.pipeline.rest_done import left_of
from budgetfix.pipeline.rest_hours import after
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.clashes import clashes

UNENDED = "it is begun, and cannot be ended"
BARRED = {"returned": "it was given back", "sold out": "it is not to be had"}


@dataclass(frozen=True)
class Rested:
    """`first`: all that was on offer before anything was done; `offer`: what is left of it, framed on `base`."""

    base: Ground
    first: Offered
    offer: Offered


def rest_offer(before: Ground, now: Ground, left: Left, report: Callable[[str], None] | None = None) -> Rested:
    """The offer of the rest. `before`: the rooms before anything was done; `now`: as they stand, with `left.rest`.

    `report`: told, in words, how far this is in a house of several rooms.
    """
    first = offered(before, _again(left.so_far), report=report)
    halves = paced((left_of(one, left.done) for one in left.done.begun), learnt(left.job.brief.pace, ()))
    begun = {one.id: one for one in halves}
    pool = {**first.framed.candidates, **begun}
    gone = left.done.ids | set(left.loaded)
    barred = {**dict.fromkeys(left.rest.unended, UNENDED), **{id: BARRED[why] for id, why in left.goods.barred}}
    against = _against(before, pool, left)
    out = [(pool[id], words) for id, words in sorted(against.items()) if id not in gone]
    out += [(pool[id], barred[id]) for id in sorted(barred) if id in pool and id not in gone | set(against)]
    kept = {id: _costed(one, left, gone) for id, one in pool.items() if id not in gone | set(against) | set(barred)}
    taken = shared_spots(now.survey, kept.values())
    out += [(kept[id], words) for id, words in sorted(taken.items())]
    rest = tuple(one for id, one in sorted(kept.items()) if id not in taken)
    pairs = clashes(now.survey, rest) if now.survey is not None else ()
    earlier = (*left.rest.earliest, *_waiting(rest, pool, left))
    now = replace(now, rest=replace(left.rest, earliest=earlier, covered=_covered(rest, left)))
    framed = frame(now, rest, pairs, {} if left.done.done else _memories(first))
    never = tuple(one for one in (*first.never, *rest) if one.id not in framed.candidates and one.id not in gone)
    unsaid = {one.id for one, _ in out}
    blocked = (*(pair for pair in first.blocked if pair[0].id not in gone | unsaid), *out)
    faults = tuple(finding for seen in now.seen for finding in seen.findings if finding.fault)
    return Rested(now, first, Offered(framed, never, blocked, first.fitted, crowded(faults)))


def _covered(rest: tuple[Candidate, ...], left: Left) -> Pairs:
    """Who may have what is on hand; where nothing is told and orders are no later, goods wait as in a plan."""
    brief = left.job.brief
    dated = any(one.on is not None for one in brief.hours or ())
    later = dated and brief.ordered != left.so_far.remembered.ordered
    if not left.rest.told and not later:
        return ()
    bought = frozenset((id, product) for id, product, _ in left.rest.in_hand)
    chosen = frozenset(one.candidate.id for one in left.so_far.remembered.candidates if one.chosen)
    return covered(allowed(rest, brief).values(), left.job.catalog, bought, chosen)


def _again(so_far: SoFar) -> tuple[Candidate, ...]:
    """The free moves that the plan had on offer besides, as they were before the lease was told of them."""
    return tuple(_untold(one.candidate) for one in so_far.remembered.candidates if one.candidate.id.endswith(AGAIN))


def _untold(one: Candidate) -> Candidate:
    return replace(one, spends=tuple(pair for pair in one.spends if pair[0] != UNDO_LIMIT), later=())


def _waiting(rest: Iterable[Candidate], pool: Mapping[str, Candidate], left: Left) -> list[tuple[str, int, int]]:
    """(candidate, 0, first session) of what needs something that is done, where its own first step is still to do."""
    found = []
    for one in rest:
        first = pool[one.id].work[0] if one.work and 1 not in left.done.numbers(one.id) else None
        for need in pool[one.id].needs if first is not None else ():
            last = left.done.step(need, max(left.done.numbers(need), default=0)) if need in left.done.ids else None
            if last is not None and last.planned.task.step and first is not None:
                at = after(last, left.brief, first.wait_sessions, first.wait_minutes)
                found.append((one.id, 0, at))
    return found


def _memories(first: Offered) -> Mapping[str, dict[frozenset[str], Seen]]:
    """Inspections hold where nothing was done."""
    return {f"{tree.block.room}/{tree.block.name}": dict(tree.memory) for tree in first.framed.trees}


def _against(before: Ground, pool: Mapping[str, Candidate], left: Left) -> dict[str, str]:
    """Why what cannot stand beside something that is done, or stays begun, is out, by id."""
    found: dict[str, str] = {}
    half = {one.candidate.id: one.candidate for one in left.done.begun if one.candidate.id in left.rest.unended}
    there = {**half, **{one.candidate.id: one.candidate for one in left.done.done}}
    if not there:
        return found
    every = {**pool, **there}
    pairs = clashes(before.survey, every.values()) if before.survey is not None else ()
    apart = {frozenset(pair) for pair in pairs}
    for id, one in pool.items():
        if id in there:
            continue
        rivals = [other for other in there.values() if frozenset((id, other.id)) in apart or _rivals(one, other)]
        if rivals:
            found[id] = f"instead of it: {rivals[0].name}, which is {'begun' if rivals[0].id in half else 'done'}"
    return found


def _rivals(one: Candidate, other: Candidate) -> bool:
    group = bool(one.pick_one) and one.pick_one == other.pick_one
    return group or one.id in other.excludes or other.id in one.excludes


def _costed(one: Candidate, left: Left, gone: Iterable[str]) -> Candidate:
    """A candidate without what is paid for it, and without needs that are met."""
    paid = one.id in left.goods.paid_for
    met = frozenset(gone)
    needs = tuple(need for need in one.needs if need not in met)
    if not paid and needs == one.needs:
        return one
    return replace(one, cost_minor=0 if paid else one.cost_minor, needs=needs)
