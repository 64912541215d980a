"""Stock and hire: terms, days and what is there, against sums done by hand."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest

from budgetfix.brief.stay import Stay
from budgetfix.catalog.models import Catalog, Product
from budgetfix.catalog.stay import away, lacking, lent, most_packs, paid_days, staying, terms

JUNE_4 = date(2026, 6, 4)
MONTH = Stay(first=JUNE_4, until=date(2026, 7, 4))


def piece(**more: object) -> Product:
    """A rug from stock."""
    return Product(product="rug", name="Ivory rug", price_minor=6000, stock=1, **more)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("until", "term", "least", "paid"),
    [
        (date(2026, 7, 4), 30, None, 1),
        (date(2026, 7, 5), 30, None, 2),
        (date(2026, 6, 5), 30, None, 1),
        (date(2026, 6, 14), 7, None, 2),
        (date(2026, 6, 14), 7, 30, 5),
        (date(2026, 6, 14), 30, 30, 1),
        (date(2026, 8, 3), 30, 30, 2),
        (date(2026, 8, 4), 30, 30, 3),
    ],
)
def test_terms(until: date, term: int, least: int | None, paid: int) -> None:
    """ceil(max(days, least) / term): 30 days are one term of 30, 31 are two; ten with a least of 30 are five weeks."""
    rug, stay = piece(term_days=term, least_days=least), Stay(first=JUNE_4, until=until)
    assert terms(rug, stay) == paid
    assert paid_days(rug, stay) == paid * term
    assert staying(Catalog(products=(rug,)), stay).products[0].price_minor == 6000 * paid


def test_one_price_for_good() -> None:
    """Without a term the days do not matter, and no days are shown."""
    rug = piece()
    assert (terms(rug, MONTH), paid_days(rug, MONTH)) == (1, 0)
    assert staying(Catalog(products=(rug,)), MONTH).products == (rug,)


def test_without_a_stay_the_least_is_charged() -> None:
    """A brief that names no days pays one term, or the least charge."""
    hired = piece(term_days=7, least_days=30)
    found = staying(Catalog(products=(hired,)), None)
    assert found.products[0].price_minor == 6000 * 5
    assert staying(Catalog(products=(piece(),)), None).products[0].price_minor == 6000


def test_prices_are_worked_out_once() -> None:
    """A catalog whose prices are those of a job is not multiplied again."""
    found = staying(Catalog(products=(piece(term_days=7),)), MONTH)
    with pytest.raises(ValueError, match="already"):
        staying(found, MONTH)


@pytest.mark.parametrize(
    ("more", "why"),
    [
        ({}, ""),
        ({"free_from": JUNE_4, "free_until": date(2026, 7, 4)}, ""),
        ({"free_from": date(2026, 6, 5)}, "not free before 5 June 2026"),
        ({"free_until": date(2026, 7, 3)}, "free only until 3 July 2026"),
    ],
)
def test_free_for_the_whole_stay(more: dict[str, date], why: str) -> None:
    """Both ends of the stay count; one day short is not free."""
    rug = piece(**more)
    assert away(rug, MONTH) == why
    assert most_packs(rug, MONTH) == (0 if why else 1)
    assert away(rug, None) == ""


def test_what_is_not_there_is_told_by_name() -> None:
    """None there, too few there, and what is on hand counts first."""
    lamps = Product(product="lamps", price_minor=2000, pack=Fraction(2), stock=2, on_hand=Fraction(1))
    gone = Product(product="tree", name="Tree", price_minor=1500, stock=0)
    catalog = staying(Catalog(products=(lamps, gone, piece())), MONTH)
    assert lacking(catalog, [("lamps", Fraction(5)), ("rug", Fraction(1))]) == ""
    assert lacking(catalog, [("lamps", Fraction(6))]) == "lamps: it takes 3, and 2 are there"
    assert lacking(catalog, [("rug", Fraction(2)), ("tree", Fraction(1))]) == (
        "Ivory rug: it takes 2, and 1 is there; Tree: none is there"
    )


def test_what_is_lent_to_a_job_beside_others() -> None:
    """No more packs than are left to it, and words for where the others stand; nothing is ever added."""
    lamp = Product(product="lamp", name="Lamp", price_minor=5, stock=3)
    tape = Product(product="tape", price_minor=1)
    mine = lent(Catalog(products=(lamp, tape)), {"lamp": 1, "tape": 0}, {"lamp": "stands in Elm Street until 4 July"})
    assert [one.stock for one in mine.products] == [1, None]
    assert lacking(mine, (("lamp", Fraction(2)),)) == (
        "Lamp: it takes 2, and 1 is there; the rest stands in Elm Street until 4 July"
    )
    none = lent(mine, {"lamp": 0}, {"lamp": "stands in Oak Lane until 9 July"})
    assert lacking(none, (("lamp", Fraction(1)),)) == "Lamp: stands in Oak Lane until 9 July"
    assert lent(mine, {"lamp": 7}, {}).products[0].stock == 1


def test_a_day_is_a_term_of_a_day() -> None:
    """Hired by the day, with no days named and no least: one day, and not for nothing."""
    by_the_day = piece(term_days=1)
    assert (terms(by_the_day, None), paid_days(by_the_day, None)) == (1, 1)
    assert terms(by_the_day, MONTH) == 30


def test_some_things_have_terms() -> None:
    """One thing for hire and one for good, and no days named: only the hired one is charged by its least."""
    hired, bought = piece(term_days=7, least_days=14), Product(product="tape", price_minor=500)
    found = staying(Catalog(products=(hired, bought)), None)
    assert [one.price_minor for one in found.products] == [12000, 500]


def test_days_matter_without_terms() -> None:
    """Nothing is charged by the term, but a rug that is free too late is still away."""
    catalog = staying(Catalog(products=(piece(free_from=date(2026, 6, 5)),)), MONTH)
    assert lacking(catalog, [("rug", Fraction(1))]) == "Ivory rug: not free before 5 June 2026"


def test_enough_on_hand_asks_for_nothing() -> None:
    """What is away is not missed while enough of it is on hand, and what is sold without limit is never short."""
    rug = piece(free_from=date(2026, 6, 5), on_hand=Fraction(2))
    tape = Product(product="tape", price_minor=500)
    catalog = staying(Catalog(products=(rug, tape)), MONTH)
    assert lacking(catalog, [("rug", Fraction(2)), ("tape", Fraction(99))]) == ""
    assert lacking(catalog, [("rug", Fraction(3))]) == "Ivory rug: not free before 5 June 2026"


def test_nothing_is_said_of_what_is_not_lent_elsewhere() -> None:
    """A piece that others leave alone, or leave all of, is as it was: no word of another house is put to it."""
    lamp, chair = (Product(product=name, price_minor=5, stock=3) for name in ("lamp", "chair"))
    elsewhere = {"lamp": "stands in Elm Street", "chair": "stands in Oak Lane"}
    assert lent(Catalog(products=(lamp, chair)), {"lamp": 3}, elsewhere).products == (lamp, chair)
