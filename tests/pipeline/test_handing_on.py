"""Pieces that a fair plan leaves idle go to the houses that want them."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from budgetfix.optimize.sharing import Answered, Memory, Shared, share
from budgetfix.optimize.stock import Packs, Stock
from budgetfix.pipeline.handing_on import handed_on
from budgetfix.pipeline.portfolio import Together
from budgetfix.pipeline.portfolio_writing import put_together
from tests.pipeline.listed_job import ids
from tests.pipeline.street import (
    JUNE,
    OVERLAPPING,
    RUG,
    only_plans,
    plan_street,
    read_street,
    write_catalog,
    write_house,
)

RUG_1: Packs = (("rug", 1),)
NO_RUG: Packs = (("rug", 0),)
STOCK = Stock({"rug": 1}, ((1, 9), (1, 9)))
PEOPLE = {"ann": {"priorities": {"f1": 3}}, "ben": {"priorities": {"f2": 3}}}
WAYS = [
    {"remedy": "rug", "answers": {"f1": 1}, "uses": {"rug": 1}, "hours": 1},
    {"remedy": "paint", "answers": {"f1": 0.5}, "cost": 10, "hours": 1},
    {"remedy": "shelf", "answers": {"f2": 0.5}, "cost": 10, "hours": 1},
]


def answers(wanted: Sequence[tuple[int, Packs]]) -> list[Answered | None]:
    """With the rug the first house leaves nothing and the second 1 point; without it 9 and 3."""
    found: list[Answered | None] = []
    for at, ceilings in wanted:
        left = ((9, 3) if ceilings == NO_RUG else (0, 1))[at]
        found.append(Answered((left,), (left,), () if ceilings == NO_RUG else RUG_1, ceilings))
    return found


def shared(memory: Memory) -> Shared:
    """The first house holds the rug."""
    found = share(STOCK, memory, lambda: False)
    assert isinstance(found, Shared)
    assert [one.held for one in found.answers] == [RUG_1, ()]
    return found


def idle_first(wanted: Sequence[tuple[int, Packs]]) -> list[Packs | None]:
    """The first house's fair plan holds nothing; the second has none."""
    return [() if at == 0 else None for at, _ in wanted]


def test_an_idle_piece_goes_to_who_wants_it() -> None:
    """The first house keeps its plan and leaves the rug; the second is answered with it, and the sum is proven."""
    memory = Memory(answers)
    found = handed_on(STOCK, memory, shared(memory), idle_first, lambda: False)
    assert [one.held for one in found.answers] == [(), RUG_1]
    assert (found.left, found.proven, found.alone) == ((1,), True, ((), RUG_1))


def test_where_nothing_is_idle_nothing_changes() -> None:
    """A fair plan that holds what its household's does keeps it."""
    memory = Memory(answers)
    before = shared(memory)
    assert handed_on(STOCK, memory, before, lambda _: [RUG_1, None], lambda: False) == before


def test_without_time_to_ask_again_nothing_is_called_proven() -> None:
    """The second house cannot be answered any more: it stays without the rug, and that is no proof."""
    memory = Memory(answers)
    before = shared(memory)
    late = Memory(lambda wanted: [Answered(None, (0,), (), ceilings) for _, ceilings in wanted])
    found = handed_on(STOCK, late, before, idle_first, lambda: True)
    assert [one.held for one in found.answers] == [(), ()]
    assert (found.left, found.proven) == (before.left, False)


def test_a_couple_that_leaves_the_rug(tmp_path: Path) -> None:
    """The household would take the rug; the fair plan does not, since it would cost Ben. The other house gets it."""
    write_catalog(tmp_path, [RUG], WAYS)
    write_house(tmp_path / "elm-street", (40, 30), JUNE, people=PEOPLE, budget=70, labour=10)
    write_house(tmp_path / "oak-lane", (4, 0), OVERLAPPING)
    with only_plans():
        found = plan_street(tmp_path)
    assert isinstance(found, Together)
    elm, oak = (made.book for made in found.made)
    assert (ids(elm), ids(oak)) == (["paint", "shelf"], ["rug"])
    assert not any("Ivory rug" in note for note in (*elm.notes, *oak.notes))
    portfolio = put_together(tmp_path, read_street(tmp_path), found, 60.0)
    assert [one.house for one in portfolio.pieces[0].stands] == ["Oak Lane"]
    assert (portfolio.pieces[0].missed, portfolio.proven) == ((), True)
