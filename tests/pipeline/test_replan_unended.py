"""What is begun and cannot be ended: what it has taken stays taken, what it keeps out stays out."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from budgetfix.pipeline.rest import rest_of
from budgetfix.pipeline.rest_unended import unended
from tests.pipeline.listed_job import Remedy, write_job
from tests.pipeline.ticked import TODAY, back, ids, plan_of, read_at, rest

SHELF: Remedy = {
    "remedy": "shelf",
    "answers": {"f1": 1},
    "spends": {"holes": 3},
    "uses": {"board": 2},
    "pick_one": "wall",
    "excludes": ["rug"],
    "steps": [{"hours": 1}, {"hours": 2}],
}
OTHERS: list[Remedy] = [
    {"remedy": "hook", "answers": {"f2": 1}, "spends": {"holes": 2}, "hours": 1},
    {"remedy": "print", "answers": {"f3": 1}, "pick_one": "wall", "hours": 1},
    {"remedy": "rug", "answers": {"f4": 1}, "hours": 1},
    {"remedy": "step", "answers": {"f5": 1}, "uses": {"board": 1}, "hours": 1},
    {"remedy": "dust", "answers": {"f6": 1}, "hours": 0.5},
]


def write(folder: Path, hours: list[float], *remedies: Remedy) -> None:
    """Three holes in all, no money, two boards at home."""
    products = [{"product": "board", "name": "Board", "price": 10, "on_hand": 2}]
    brief = {"budget": 0, "hours": hours, "limits": {"holes": 3}, "learn": False}
    write_job(folder, (300, 20, 20, 20, 20, 10), remedies, brief, {"products": products})


def test_what_it_has_taken_stays_taken(tmp_path: Path) -> None:
    """All holes are drilled, both boards sawn: nothing else may have them, nor stand in its place; dusting may be."""
    write(tmp_path, [1, 2], SHELF, *OTHERS)
    book = plan_of(read_at(tmp_path))
    assert ids(book) == ["shelf"]
    write(tmp_path, [1, 1], SHELF, *OTHERS)
    found = rest(read_at(tmp_path), back(book, done=("shelf#1",)))
    assert (ids(found.book), found.since.unended) == (["dust"], ("shelf",))
    why = {row.id: row.why for row in found.book.left_out}
    assert {id: why[id] for id in ("shelf", "print", "rug")} == {
        "shelf": "it is begun, and cannot be ended",
        "print": "instead of it: shelf, which is begun",
        "rug": "instead of it: shelf, which is begun",
    }


def test_only_as_little_as_must_be_is_left_unended(tmp_path: Path) -> None:
    """Two are begun and there is an hour for one: the one that does more is ended, although neither must be first."""
    halves: list[Remedy] = [
        {"remedy": id, "answers": {f"f{at}": 1}, "steps": [{"hours": 1}, {"hours": 1}]} for at, id in enumerate("ab", 1)
    ]
    write(tmp_path, [4], *halves)
    book = plan_of(read_at(tmp_path))
    write(tmp_path, [3], *halves, *OTHERS[-1:])
    found = rest(read_at(tmp_path), back(book, done=("a#1", "b#1")))
    assert (ids(found.book), found.since.unended) == (["a"], ("b",))


def test_where_all_can_be_ended_all_is(tmp_path: Path) -> None:
    """With the hours that it takes, the shelf is ended as planned, from its own boards."""
    write(tmp_path, [1, 2], SHELF, *OTHERS)
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), done=("shelf#1",)))
    assert (ids(found.book), found.since.unended) == (["shelf"], ())


def test_what_it_has_taken_comes_off_limits_and_goods(tmp_path: Path) -> None:
    """Three holes and two boards are gone with the shelf; what is not begun takes nothing."""
    write(tmp_path, [1, 2], SHELF, *OTHERS)
    job = read_at(tmp_path)
    left = rest_of(job, back(plan_of(job), done=("shelf#1",)), TODAY)
    assert unended(left, ("dust",)) is left
    without = unended(left, ("shelf",))
    assert (without.rest.begun, without.rest.unended) == ((), ("shelf",))
    none = Fraction(0)
    assert (without.job.brief.limits, without.job.catalog.product("board").on_hand) == ((("holes", none),), none)
