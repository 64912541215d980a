"""Goods on hand in the rest of a job: what is there needs no new order, as far as it goes round."""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from pathlib import Path

from budgetfix.catalog.models import Catalog, Product
from budgetfix.framing.on_hand import covered
from budgetfix.remedies.candidate import Candidate
from tests.pipeline.listed_job import Remedy, write_job
from tests.pipeline.ticked import back, ids, plan_of, read_at, rest


def pads(folder: Path, budget: float, hours: object, on_hand: int = 1) -> None:
    """A pad at home, more by post in three days; two jobs that use one each."""
    remedies: list[Remedy] = [
        {"remedy": id, "answers": {f"f{at}": 1}, "uses": {"pad": 1}, "hours": 1} for at, id in enumerate("ab", 1)
    ]
    products = [{"product": "pad", "name": "Pad", "price": 10, "on_hand": on_hand, "lead_days": 3, "shop": "mill"}]
    errands = [{"errand": "go", "name": "Go", "shops": ["mill"], "hours": 0.5}]
    brief = {"budget": budget, "ordered": "2026-06-01", "hours": hours, "errands": errands}
    write_job(folder, (100, 90), remedies, brief, {"products": products, "shops": [{"shop": "mill"}]})


def dated(*days: int) -> list[dict[str, object]]:
    """Three hours on each of these days of June."""
    return [{"date": f"2026-06-{day:02}", "start": "09:00", "hours": 3} for day in days]


def test_what_is_at_home_is_not_ordered_again(tmp_path: Path) -> None:
    """The day before the work an order would come too late, but the one pad is at home: the plan stands."""
    pads(tmp_path, 0, dated(5))
    job = read_at(tmp_path)
    book = plan_of(job)
    assert ids(book) == ["a"]
    assert ids(rest(job, back(book)).book) == ["a"]
    found = rest(job, back(book), date(2026, 6, 4))
    assert [(task.candidate, task.session) for task in found.book.tasks] == [("a", 1)]


def test_of_two_that_need_it_one_waits(tmp_path: Path) -> None:
    """With money for a second pad both are done: one at once with what is at home, one after the order has come."""
    pads(tmp_path, 10, dated(5, 8))
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job)), date(2026, 6, 4))
    assert {task.candidate: task.session for task in found.book.tasks} == {"errand:go": 1, "a": 1, "b": 2}


def test_nothing_ticked_on_the_day_of_the_plan_changes_nothing(tmp_path: Path) -> None:
    """As in the plan both wait for the order of the second pad, and the round is made."""
    pads(tmp_path, 10, dated(2, 5))
    job = read_at(tmp_path)
    book = plan_of(job)
    assert rest(job, back(book)).book.tasks == book.tasks
    assert {task.session for task in book.tasks if task.candidate in ("a", "b")} == {2}


def one(id: str, units: Fraction, group: str = "") -> Candidate:
    """A candidate that uses so many pads."""
    return Candidate(id, "own", id, uses=(("pad", units),), pick_one=group)


def test_who_may_have_it() -> None:
    """What it was bought for first, then what was chosen, then by id; a group shares; who needs too much waits."""
    catalog = Catalog(products=(Product(product="pad", price_minor=1, on_hand=Fraction(2)),))
    a, b, c = (one(id, Fraction(1)) for id in "abc")
    none = frozenset[str]()
    pairs = frozenset[tuple[str, str]]()
    assert covered([c, b, a], catalog, pairs, none) == (("a", "pad"), ("b", "pad"))
    assert covered([a, b, c], catalog, pairs, frozenset({"c"})) == (("a", "pad"), ("c", "pad"))
    assert covered([a, b, c], catalog, frozenset({("c", "pad")}), frozenset({"b"})) == (("b", "pad"), ("c", "pad"))
    assert covered([one("a", Fraction(3)), b, c], catalog, pairs, none) == (("b", "pad"), ("c", "pad"))
    group = [one(id, Fraction(units), "g") for id, units in (("a", 1), ("b", 2), ("c", 1))]
    assert covered([*group, one("d", Fraction(1))], catalog, pairs, none) == tuple((id, "pad") for id in "abc")
