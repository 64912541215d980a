"""What could be done about the faults found: candidates, their clashes, and no crumbs."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from budgetfix.framing.crumbs import alone, without_crumbs, without_shadows
from budgetfix.framing.frame import Framed, Ground, allowed, frame
from budgetfix.inspection.finding import Finding
from budgetfix.outcome.paces import learnt, paced
from budgetfix.outcome.remembering import AGAIN
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.clashes import clashes, needed
from budgetfix.remedies.fit import candidates
from budgetfix.remedies.kinds.put_back import put_back
from budgetfix.remedies.leases import Under
from budgetfix.remedies.registry import KINDS
from budgetfix.room.overlaps import overlaps
from budgetfix.room.survey import Change, Survey


@dataclass(frozen=True)
class Offered:
    """The candidates of one job, framed. `never`: those that the brief rules out."""

    framed: Framed
    never: tuple[Candidate, ...]
    blocked: tuple[tuple[Candidate, str], ...] = ()
    """What cannot be, and why: the user's own that would share a spot, and what the lease or the landlord rules out."""
    fitted: tuple[Candidate, ...] = ()
    """Everything that was fitted to the faults as surveyed, before anything was left out."""
    crowded: tuple[str, ...] = ()
    """Rooms with a fault that another layout might answer."""


def offered(
    base: Ground,
    more: tuple[Candidate, ...] = (),
    known: Offered | None = None,
    report: Callable[[str], None] | None = None,
) -> Offered:
    """Fit every kind to the faults found, drop crumbs, frame.

    `more`: candidates fitted again on a chosen room. `known`: an earlier offer, whose fittings and inspections hold.
    `report`: told, in words, how far this is in a house of several rooms.
    """
    faults = tuple(finding for seen in base.seen for finding in seen.findings if finding.fault)
    at = _room_by_room(base.survey, report, "Fitting remedies")
    fitted = (
        (*candidates(base.survey, base.catalog, base.brief, faults, at=at), *_back(base))
        if known is None
        else known.fitted
    )
    ids = {one.id for one in fitted}
    everything = (*fitted, *(one for one in more if one.id not in ids))
    taken = shared_spots(base.survey, everything)
    everything = _leased(base, tuple(one for one in everything if one.id not in taken))
    effects, memories = alone(base, everything, _room_by_room(base.survey, report, "Trying each remedy by itself"))
    for tree in known.framed.trees if known is not None else ():
        memories.setdefault(f"{tree.block.room}/{tree.block.name}", {}).update(tree.memory)
    keep = (*base.brief.must, *(one.id for one in more))
    kept = without_crumbs(without_shadows(everything, effects), effects, keep)
    ruled_out = _ruled_out(base, kept)
    kept = tuple(one for one in kept if one.id not in {out.id for out, _ in ruled_out})
    against = clashes(base.survey, kept) if base.survey is not None else ()
    framed = frame(base, paced(kept, learnt(base.brief.pace, ())), against, memories)
    return Offered(
        framed,
        tuple(one for one in kept if one.id not in framed.candidates),
        (*_told(fitted, taken), *ruled_out),
        fitted,
        crowded(faults),
    )


def _room_by_room(survey: Survey | None, report: Callable[[str], None] | None, what: str) -> Callable[[str], None]:
    """Tells which room of how many something is at."""
    rooms = [facts.room for facts in survey.rooms] if survey is not None else []
    if report is None or len(rooms) < 2:
        return lambda _: None
    tell, place = report, {room: number for number, room in enumerate(rooms, 1)}
    return lambda room: tell(f"{what}: room {place[room]} of {len(rooms)}")


def _back(base: Ground) -> tuple[Candidate, ...]:
    """Before handing back: what of the landlord's is kept elsewhere is put back."""
    lease = base.brief.lease
    if lease is None or base.survey is None or base.brief.profile != "handing-back":
        return ()
    return put_back(base.survey, lease)


def _leased(base: Ground, fitted: tuple[Candidate, ...]) -> tuple[Candidate, ...]:
    """The candidates with what a lease has to say about each."""
    lease = base.brief.lease
    return fitted if lease is None else tuple(map(Under(lease, base.catalog, base.survey).told, fitted))


def _ruled_out(base: Ground, fitted: tuple[Candidate, ...]) -> tuple[tuple[Candidate, str], ...]:
    """What the lease forbids and the landlord refused, with the reason; what the brief says never is told as that."""
    if base.brief.lease is None:
        return ()
    under = Under(base.brief.lease, base.catalog, base.survey)
    told = ((one, under.why_not(one)) for one in allowed(fitted, base.brief).values())
    return tuple((one, why) for one, why in told if why)


def crowded(faults: tuple[Finding, ...]) -> tuple[str, ...]:
    """Rooms with a fault that a kind for whole rooms answers."""
    answered = {target for kind in KINDS if kind.whole_room for target in kind.targets}
    return tuple(sorted({fault.room for fault in faults if fault.rule in answered}))


def _told(fitted: tuple[Candidate, ...], taken: dict[str, str]) -> tuple[tuple[Candidate, str], ...]:
    """The user's own among those that find no room; of ours nobody has heard yet."""
    return tuple((one, taken[one.id]) for one in fitted if one.id in taken and not one.own)


def shared_spots(survey: Survey | None, fitted: Iterable[Candidate]) -> dict[str, str]:
    """Candidates that by themselves put something where something else is, and what: also moves that were found in
    the changed room, where the spot was free.
    """
    if survey is None:
        return {}
    rooms = [facts.room for facts in survey.rooms]
    before = {pair for room in rooms for pair in overlaps(survey, room)}
    known = frozenset(rooms)
    found, by_id = {}, {one.id: one for one in fitted}
    for one in by_id.values():
        if one.changes:
            changes = (*needed(one, by_id), *one.changes)
            after = survey.changed(changes)
            there = known & {room for change in changes for room in _rooms_of(change, survey, after)}
            fresh = sorted({pair for room in there for pair in overlaps(after, room)} - before)
            if fresh:
                found[one.id] = f"there is no room for it: {fresh[0][0]} and {fresh[0][1]} would share a spot"
    return found


def _rooms_of(change: Change, before: Survey, after: Survey) -> frozenset[str]:
    """Rooms in which a changed thing was or is."""
    return frozenset(one.named[change.item][1].room for one in (before, after) if change.item in one.named)


def fitted_again(base: Ground, room: Survey, findings: tuple[Finding, ...], known: Framed) -> tuple[Candidate, ...]:
    """Free moves that the changed room offers beside the first candidates; ids get a mark of their own.

    They are stated as places in the room, so they hold from the first survey too where their thing was not moved.
    """
    faults = tuple(finding for finding in findings if finding.fault)
    old = {one.changes for one in known.candidates.values()}
    fresh = []
    for one in candidates(room, base.catalog, base.brief, faults, rooms=False):
        free = one.own and not one.uses and not one.cost_minor
        if free and one.changes and one.changes not in old and _applies(base.survey, one):
            fresh.append(replace(one, id=one.id + AGAIN))
    return tuple(fresh)


def _applies(survey: Survey | None, one: Candidate) -> bool:
    return survey is not None and all(change.add is not None or change.item in survey.named for change in one.changes)
