"""The bill from inside: what leaves the till, and what is left."""

from __future__ import annotations

from pathlib import Path

from budgetfix.framing.frame import Ground
from budgetfix.outcome.book import MoneyLine
from budgetfix.outcome.costing import cost_rows, margin_minor
from budgetfix.outcome.quote import Costing
from tests.outcome.test_quoting import CATALOG, REMEDIES
from tests.pipeline.listed_job import proven_plan, write_job
from tests.scenarios import job

RUG = {"product": "rug", "name": "Rug", "price": 60, "stock": 1, "place": "bay 2", "weight_kg": 14.5, "term_days": 30}
CHAIR = {"product": "chair", "price": 85, "term_days": 30, "least_days": 30}
VANS = {"out": {"date": "2026-06-04", "from": "9:00", "to": "11:00", "cost": 180, "load_kg": 100}}


def costed(folder: Path) -> Costing:
    """Goods, stock, hire, a tool, pay and a van in one job."""
    more = [{"remedy": "d", "name": "Lay the rug", "answers": {"f4": 1}, "uses": {"rug": 1, "chair": 1}, "minutes": 30}]
    products = [*CATALOG["products"], RUG, CHAIR]  # type: ignore[misc]  # a list
    brief = {"labour": 45, "vans": VANS, "fixed": [{"name": "Take back", "people": 2, "minutes": 120}]}
    write_job(folder, [70, 20, 10, 60], [*REMEDIES, *more], brief, {**CATALOG, "products": products})
    found = proven_plan(folder).costing
    assert found is not None
    return found


def test_every_line_once(tmp_path: Path) -> None:
    """Sorts, and the margin of each: mark-up on goods, the whole fee of stock, nothing on hire, pay, tax and van."""
    rows = costed(tmp_path).rows
    assert {(row.sort, row.name): row.margin_minor for row in rows} == {
        ("bought", "nail"): 15,
        ("bought", "tin"): 334,
        ("hire", "chair"): 0,
        ("stock", "Rug"): 6000,
        ("tool", "Hire: saw"): 0,
        ("work", "a"): 0,
        ("work", "Paint the study"): 0,
        ("work", "c"): 0,
        ("work", "Lay the rug"): 0,
        ("delivery", "Delivery, mill"): 0,
        ("tax", "Tax, mill"): 0,
        ("van", "Van out"): 0,
        ("fixed", "Take back"): 0,
    } | {(row.sort, row.name): 0 for row in rows if row.sort == "work"}
    rug = next(row for row in rows if row.sort == "stock")
    assert (rug.place, rug.weight_kg, rug.days, rug.shelf_minor, rug.markup) == ("bay 2", 14.5, 30, 6000, "")
    assert next(row.minutes for row in rows if row.name == "Take back") == 240
    assert next(row.minutes for row in rows if row.name == "Lay the rug") == 30


def test_goods_of_one_name_are_told_apart() -> None:
    """Lamps of 800 and of 1600 lumens are both `LED lamp, E26` in the demo's catalogue: the label is said too."""
    demo = job("stager")
    base = Ground(demo.survey, demo.brief, demo.catalog, (), (), (), ())
    lamps = [one for one in demo.catalog.products if one.product in ("b09", "b10")]
    lines = [
        MoneyLine("product", one.product, one.name, one.shop, "", 1, one.price_minor, 1265, one.label) for one in lamps
    ]
    assert [row.name for row in cost_rows(base, lines, {})] == [
        "LED lamp, E26, 800 lm, 2700 K",
        "LED lamp, E26, 1600 lm, 2700 K",
    ]


def test_the_van_and_the_options(tmp_path: Path) -> None:
    """The load against what may be carried; the last option's margin is that of the whole bill."""
    found = costed(tmp_path)
    assert [(load.name, load.load_kg, load.most_kg) for load in found.loads] == [("out", 14.5, 100.0)]
    assert found.rate_minor == 4500
    assert found.options[-1][2:] == (sum(row.client_minor for row in found.rows), margin_minor(found.rows))
