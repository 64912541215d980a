"""A room costs as much in a large house as alone, and nothing else comes of it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from itertools import combinations
from typing import Any

import pytest

from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog
from budgetfix.framing.frame import Ground, ground
from budgetfix.framing.measured import gone
from budgetfix.inspection import inspect
from budgetfix.inspection.judging import blocks, judges
from budgetfix.inspection.registry import RULES
from budgetfix.outcome.worth import Worth
from budgetfix.pipeline import candidates
from budgetfix.remedies import clashes
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.items import TABLES, Item
from budgetfix.room.survey import Change, Survey, moved
from tests.framing.small_jobs import measured_ground

SPOT = (("from_left", 500.0), ("gap", 0.0), ("wall", "D"))
LINKS = ("over", "on", "at", "under", "window")


def house(count: int) -> Ground:
    """The small room so many times, each with names of its own."""
    one = measured_ground().survey
    assert one is not None
    names = [f"r{number}" for number in range(count)]
    parts: dict[str, Any] = {
        "rooms": tuple(moved(facts, room=name) for name in names for facts in one.rooms),  # type: ignore[type-var]
        "walls": tuple(moved(wall, room=name) for name in names for wall in one.walls),  # type: ignore[type-var]
        **{table: tuple(_renamed(item, name) for name in names for item in one.table(table)) for table in TABLES},
    }
    survey, brief = Survey(household=one.household, **parts), Brief()
    judged = judges(RULES, brief)
    return ground(survey, brief, Catalog(), (), judged, blocks(tuple(names), judged))


def _renamed(item: Item, room: str) -> Item:
    linked = {field: f"{value} {room}" for field in LINKS if (value := getattr(item, field, ""))}
    return moved(item, name=f"{item.name} {room}", room=room, **linked)


def counted(counts: Counter[str], name: str, real: Callable[..., object]) -> Callable[..., object]:
    """The same function, counting its calls."""

    def call(*args: object, **named: object) -> object:
        counts[name] += 1
        return real(*args, **named)

    return call


def test_twice_the_rooms_are_twice_the_looks(monkeypatch: pytest.MonkeyPatch) -> None:
    """Rules judged and spots looked at: for four rooms twice as often as for two."""
    counts: list[Counter[str]] = []
    for rooms in (2, 4):
        base, seen = house(rooms), Counter[str]()
        with monkeypatch.context() as patch:
            for module, name in ((inspect, "judge_one"), (candidates, "overlaps")):
                patch.setattr(module, name, counted(seen, name, getattr(module, name)))
            candidates.offered(base)
        counts.append(seen)
    assert set(counts[0]) == {"judge_one", "overlaps"}
    assert counts[1] == Counter({name: 2 * calls for name, calls in counts[0].items()})


def test_only_what_is_put_into_one_room_is_held_together(monkeypatch: pytest.MonkeyPatch) -> None:
    """Sofa and bookcase of each of three rooms onto one spot: three clashes, from three pairs looked at."""
    base, seen = house(3), Counter[str]()
    assert base.survey is not None
    made = tuple(
        Candidate(id=f"{what} {room}", kind="move", name=what, changes=(Change("furniture", f"{what} {room}", SPOT),))
        for room in ("r0", "r1", "r2")
        for what in ("sofa", "bookcase")
    )
    monkeypatch.setattr(clashes, "_one_spot", counted(seen, "pairs", clashes._one_spot))
    found = clashes.clashes(base.survey, made)
    assert found == tuple((f"bookcase {room}", f"sofa {room}") for room in ("r0", "r1", "r2"))
    assert seen == Counter(pairs=3)


def test_what_a_remedy_adds_is_the_difference_of_what_is_left() -> None:
    """In a house of two rooms, for all pairs of remedies: weighed by the rooms that they change, to the same points."""
    base = house(2)
    framed = candidates.offered(base).framed
    worth = Worth(base, framed)
    ids = sorted(framed.candidates)
    assert len({framed.candidates[id].room for id in ids}) == 2
    for pair in [(), *combinations(ids, 1), *combinations(ids, 2)]:
        for other in ((), ids[:1], ids[-1:]):
            assert worth.gain(pair, other) == sum(worth.left(pair)) - sum(worth.left(other))


def test_a_room_seen_before_is_not_looked_at_again(monkeypatch: pytest.MonkeyPatch) -> None:
    """A change in one room: the other room's rules are not asked anew, and the findings are those of a whole look."""
    base, seen = house(2), Counter[str]()
    assert base.survey is not None
    framed = candidates.offered(base).framed
    first = next(one for _, one in sorted(framed.candidates.items()) if one.room == "r0" and one.changes)
    after = base.survey.changed(first.changes)
    for at in range(len(base.blocks)):
        base.again(at, base.survey)
    with monkeypatch.context() as patch:
        patch.setattr(inspect, "judge_one", counted(seen, "judge_one", inspect.judge_one))
        again = [base.again(at, after) for at, block in enumerate(base.blocks) if block.room == "r1"]
    assert seen == Counter()
    fresh = house(2)
    assert [one.findings for one in again] == [
        fresh.again(at, after).findings for at, block in enumerate(fresh.blocks) if block.room == "r1"
    ]
    assert gone(base.survey, after, "r1") == ()


def test_a_house_is_told_room_by_room() -> None:
    """While remedies are fitted the line names the room; a single room needs no count."""
    told: list[str] = []
    candidates.offered(house(2), report=told.append)
    assert {"Fitting remedies: room 2 of 2", "Trying each remedy by itself: room 1 of 2"} <= set(told)
    alone: list[str] = []
    candidates.offered(house(1), report=alone.append)
    assert alone == []
