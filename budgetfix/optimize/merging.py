"""Trees that watch the same groups, put together: one table for both is a tighter program than two apart."""

from __future__ import annotations

from dataclasses import dataclass

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.worth_rows import Family, Leaf

MOST_LEAVES = 400
"""Leaves of a merged family; beyond that the columns cost more than they tighten."""


@dataclass(frozen=True, slots=True)
class _Watched:
    family: Family
    groups: frozenset[str]


Merged = dict[tuple[Family, Family], Family | None]
"""What pairs of families came to: host and guest, and both in one, or None where that is too large."""


def merged(
    facts: Facts, found: tuple[Family, ...], most: int = MOST_LEAVES, known: Merged | None = None
) -> tuple[Family, ...]:
    """Families, each merged into the smallest one that watches at least its groups, where the table stays small.

    `known` is read and added to: no pair is put together twice.
    """
    pairs: Merged = {} if known is None else known
    kept = [_Watched(family, _groups(facts, family)) for family in found]
    kept.sort(key=lambda one: (len(one.groups), len(one.family.leaves), one.family.place))
    done: list[Family] = []
    while kept:
        one = kept.pop(0)
        hosts = sorted(
            (index for index, other in enumerate(kept) if one.groups <= other.groups),
            key=lambda index: (len(kept[index].family.leaves), kept[index].family.place),
        )
        for index in hosts:
            pair = (kept[index].family, one.family)
            if pair not in pairs:
                pairs[pair] = _both(facts, *pair, most)
            both = pairs[pair]
            if both is not None:
                kept[index] = _Watched(both, kept[index].groups)
                break
        else:
            done.append(one.family)
    return tuple(sorted(done, key=lambda family: family.place))


def _groups(facts: Facts, family: Family) -> frozenset[str]:
    ids = {id for branch in family.branches for id in branch}
    return frozenset(f"group {group}" if (group := facts.by_id[id].group) is not None else f"alone {id}" for id in ids)


def _both(facts: Facts, host: Family, guest: Family, most: int) -> Family | None:
    """All pairs of leaves that one set can stand on; None where there are too many."""
    leaves: list[Leaf] = []
    for one in host.leaves:
        closed = one.refused.union(*(facts.against.get(id, frozenset()) for id in one.chosen))
        for other in guest.leaves:
            if other.chosen.isdisjoint(closed) and one.chosen.isdisjoint(other.refused):
                leaves.append(
                    Leaf(
                        f"l[{host.place},{len(leaves)}]",
                        one.chosen | other.chosen,
                        one.refused | other.refused,
                        one.hazards + other.hazards,
                        one.points + other.points,
                        one.unknown + other.unknown,
                        tuple(map(sum, zip(one.voices, other.voices, strict=True))),
                    )
                )
                if len(leaves) > most:
                    return None
    branches = tuple(sorted({*host.branches, *guest.branches}))
    return Family(host.place, tuple(leaves), branches)
