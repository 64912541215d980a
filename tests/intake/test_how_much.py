"""What is larger than has been tried is refused, with the figure and the limit."""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base import limits
from budgetfix.base.problems import Place
from budgetfix.brief.models import Brief, Hours
from budgetfix.catalog.models import Catalog, Product, Remedy, Shop, Tool, WorkStep
from budgetfix.intake.how_much import all_together, faults_too_many, job_too_dear, survey_too_large
from budgetfix.intake.raw_rows import RawCell, RawRow, RawSurvey


def rows(count: int, **fields: str) -> list[RawRow]:
    """So many lines of a file."""
    place = [Place("survey.yaml", 0, number, 0, f"line {number}") for number in range(1, count + 1)]
    return [RawRow("walls", at, {name: RawCell(value, at) for name, value in fields.items()}) for at in place]


def test_walls_are_counted_room_by_room() -> None:
    """Sixty walls in each of two rooms are read; the sixty-first of one room is refused where it stands."""
    raw = RawSurvey("survey.yaml", RawRow("home", Place("survey.yaml")))
    raw.rows["walls"] = [*rows(60, room="hall"), *rows(60, room="study")]
    assert survey_too_large(raw) == []
    raw.rows["walls"] += rows(1, room="study")
    assert [str(one) for one in survey_too_large(raw)] == [
        "survey.yaml [line 1] found 61 walls of study, wanted 60 at most; measure a curve as fewer, longer walls"
    ]


def test_too_many_faults_are_told_at_the_first_that_is_too_many() -> None:
    """Two thousand are read."""
    assert faults_too_many(rows(limits.MOST_FAULTS)) == []
    (one,) = faults_too_many(rows(limits.MOST_FAULTS + 3))
    assert str(one) == "survey.yaml [line 2001] found 2,003 faults, wanted 2,000 at most; plan it as two jobs"


def test_all_together_counts_goods_tools_orders_and_pay() -> None:
    """5.00 for a remedy, an hour of two at 30.00 each, 4 packs at 10.00 and a fifth, a drill twice, delivery."""
    work = (WorkStep(minutes=60, people=2),)
    remedy = Remedy(remedy="m", cost_minor=500, uses=(("paint", Fraction(5)),), steps=work)
    catalog = Catalog(
        remedies=(remedy,),
        products=(Product(product="paint", price_minor=1000, pack=Fraction(5, 3), shop="mill"),),
        shops=(Shop(shop="mill", delivery_minor=590, tax=Fraction(1, 5)),),
        tools=(Tool(tool="drill", buy_minor=2500, hire_minor=1400),),
    )
    brief = Brief(labour_minor_hour=3000, hours=(Hours(minutes=(60,), day=0, length_minutes=60),) * 2)
    assert all_together(catalog, brief) == 500 + 6000 + 4800 + 2800 + 590


def test_what_is_dearer_than_can_be_kept_is_refused() -> None:
    """A pack so small that a price is paid a thousand million times is found by its sum."""
    product = Product(product="gold", price_minor=10**12, pack=Fraction(1, 1000))
    remedy = Remedy(remedy="m", uses=(("gold", Fraction(10**6)),))
    (problem,) = job_too_dear("catalog.yaml", Catalog(products=(product,), remedies=(remedy,)), Brief())
    assert str(problem) == (
        "catalog.yaml found 10000000010000000000.00 for everything together, wanted 10000000000000.00 at most; "
        "look for a price, a pack or an amount that is too large"
    )
    assert job_too_dear("catalog.yaml", Catalog(products=(product,)), Brief()) == []
