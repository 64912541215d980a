"""The renter's living room planned once, and everything that its plan promises taken off again."""

from __future__ import annotations

import json
import math
import time
from collections import Counter
from datetime import date, timedelta
from fractions import Fraction
from itertools import pairwise

import pytest

from budgetfix.exports.plan_json import plan_object
from budgetfix.framing.options import ERRAND
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.planning import Wish, planned
from tests import scenarios
from tests.scenarios import Planned

BUDGET_MINOR = 45_000
MINUTES = {"me": (240, 210, 270), "friend": (0, 150, 0)}
RUGS = {"m04": "p01", "m05": "p02"}
FETCHED = ("diy", "home")
AN_ERRAND = 2
"""Phase of a round of shops: after what is dangerous, before all that waits for the goods."""

pytestmark = pytest.mark.xdist_group("renter")


def run() -> Planned:
    """The demo job, planned once a process."""
    return scenarios.run("renter")


def test_it_is_proven() -> None:
    """The room has much wrong with it, and the best plan for it is proven within the minute."""
    book = run().book
    assert book.proven
    assert book.bound == book.improvement
    assert book.improvement > book.points_before / 2


def test_money() -> None:
    """The lines of the shopping list add up to what is spent, and that is within the budget."""
    book = run().book
    assert book.budget_minor == BUDGET_MINOR
    assert sum(line.line_minor for line in book.money) == book.spent_minor == book.best.spent_minor
    assert book.spent_minor <= BUDGET_MINOR
    goods = [line for line in book.money if line.kind == "product"]
    assert all(line.line_minor == (line.packs or 0) * (line.unit_price_minor or 0) for line in goods)


def test_packs() -> None:
    """Whole packs for what the chosen remedies use together, and nothing else is bought."""
    uses: dict[str, Fraction] = {}
    for one in run().chosen:
        for name, units in (*one.uses, *one.later):
            uses[name] = uses.get(name, Fraction(0)) + units
    sold = {product.product: product.pack for product in run().job.catalog.products}
    needed = {name: math.ceil(units / sold[name]) for name, units in uses.items()}
    assert {line.product: line.packs for line in run().book.money if line.kind == "product"} == needed


def test_minutes() -> None:
    """Nobody works longer in a session than they are there, and the sums are those of the steps."""
    book = run().book
    used: Counter[tuple[str, int]] = Counter()
    for task in book.tasks:
        assert len(task.who) == task.people
        used.update({(person, (task.session or 0) - 1): task.minutes for person in task.who})
    assert all(minutes <= MINUTES[person][session] for (person, session), minutes in used.items())
    assert book.sessions is not None
    sums = [sum(used[(person, session)] for person in MINUTES) for session in range(3)]
    assert [row.minutes_used for row in book.sessions] == sums
    assert [row.minutes_available for row in book.sessions] == [240, 360, 270]
    assert sum(sums) == book.best.minutes


def test_holes() -> None:
    """No more new holes than the lease bears."""
    spent = sum(amount for one in run().chosen for name, amount in one.spends if name == "holes")
    assert 0 < spent <= dict(run().job.brief.limits)["holes"]


def test_every_hazard_goes() -> None:
    """The door opens, the heater is clear of cloth, the bookcase is strapped, the rug stays put."""
    hazards = {one.rule for one in run().before.findings if one.safety and one.fault}
    assert hazards == {"door-cannot-open", "curtain-near-heater", "tall-piece-loose", "rug-slides"}
    assert run().book.hazards_before == len(hazards)
    assert run().book.hazards_after == 0
    assert [one.id for one in run().after.findings if one.safety and one.fault] == []


def test_one_of_each_group() -> None:
    """Of remedies that stand for each other at most one is taken; nothing is thrown out."""
    assert not any(change.remove for one in run().chosen for change in one.changes)
    groups = [one.pick_one for one in run().chosen if one.pick_one]
    assert len(groups) == len(set(groups))


def test_a_rug_that_fits_the_sofa_is_bought() -> None:
    """One of the two larger rugs, once, with its own pad."""
    (rug,) = {row.id for row in run().book.chosen} & set(RUGS)
    bought = {line.product for line in run().book.money if line.kind == "product"}
    assert bought & {"p01", "p02", "p03"} == {RUGS[rug]}


def test_what_is_promised_is_found_again() -> None:
    """The changes applied and the whole room inspected anew: the same points, and no finding much worse."""
    after = run().after
    assert (after.points, after.hazard_points, after.hazards) == (
        run().book.points_after,
        run().book.hazard_points_after,
        run().book.hazards_after,
    )
    assert (run().before.points, run().before.hazards) == (run().book.points_before, run().book.hazards_before)
    was = {one.id: one.severity for one in run().before.findings}
    assert [one.id for one in after.findings if one.severity > was.get(one.id, 0) + 0.25] == []
    told = {row.fault: row.points_after for row in run().book.faults}
    assert {one.id: one.points for one in after.findings if one.fault} == {id: p for id, p in told.items() if p}


def test_working_order() -> None:
    """In a session the work goes phase by phase; only what waited for the step just done stands later."""
    book = run().book
    assert [task.session for task in book.tasks] == sorted(task.session or 0 for task in book.tasks)
    for session in (1, 2, 3):
        here = [task for task in book.tasks if task.session == session]
        for one, other in pairwise(here):
            if _phase(one.candidate, one.step) > _phase(other.candidate, other.step):
                assert _waits(other.candidate, one.candidate)


def _phase(id: str, step: int) -> int:
    return AN_ERRAND if id.startswith(ERRAND) else run().offer[id].work[step - 1].phase


def _waits(id: str, other: str) -> bool:
    return id == other or (other.startswith(ERRAND) and _fetched(id))


def _fetched(id: str) -> bool:
    shops = {product.product: product.shop for product in run().job.catalog.products}
    return not id.startswith(ERRAND) and any(shops[name] in FETCHED for name, _ in run().offer[id].uses)


def test_goods_are_there_in_time() -> None:
    """Nothing from the two stores is used before the round of shops, nothing posted before it arrives."""
    book = run().book
    assert book.sessions is not None
    order = [task.candidate for task in book.tasks]
    (errand,) = [at for at, id in enumerate(order) if id.startswith(ERRAND)]
    assert all(at > errand for at, id in enumerate(order) if _fetched(id))
    lead = {product.product: product.lead_days for product in run().job.catalog.products}
    for task in book.tasks:
        names = [] if task.candidate.startswith(ERRAND) else [name for name, _ in run().offer[task.candidate].uses]
        on = book.sessions[(task.session or 0) - 1].on
        assert on is not None
        assert all(on >= date(2026, 6, 1) + timedelta(days=lead[name]) for name in names)


def test_three_plans() -> None:
    """The recommended plan reaches nine tenths for no more money; the free one costs nothing and gains something."""
    best, cheaper, free = run().book.best, run().book.recommended, run().book.free
    assert cheaper is not None
    assert free is not None
    assert cheaper.improvement * 10 >= best.improvement * 9
    assert cheaper.spent_minor <= best.spent_minor
    assert cheaper.hazards_after == 0
    assert (free.spent_minor, free.improvement > 0) == (0, True)


@pytest.mark.slow
def test_the_same_answer_twice() -> None:
    """Planned again in the same process, the object that `--json` prints is the same text."""
    again = planned(run().job, Wish(60.0, time.monotonic))
    assert isinstance(again, PlanBook)
    assert json.dumps(plan_object(again, ())) == json.dumps(plan_object(run().book, ()))
