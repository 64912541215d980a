"""The stager's quote: its fixed lines to the cent, the practitioner's list, and nothing from inside for the client."""

from __future__ import annotations

import re
from datetime import date

import pytest

from budgetfix.exports.page.quote import quote_page
from budgetfix.outcome.check import Checked
from budgetfix.outcome.quote import Quote
from budgetfix.pipeline.offers import offers
from tests.practitioner import CHOICES, spent_minor, walked
from tests.scenarios import job, run

pytestmark = [pytest.mark.xdist_group("stager"), pytest.mark.slow]


def quote() -> Quote:
    """The demo's quote."""
    found = run("stager").book.quote
    assert found is not None
    return found


def test_fixed_lines_to_the_cent() -> None:
    """180.00, 180.00, 135.00, 180.00 and 180.00, in each option: 855.00."""
    for option in quote().options:
        whole = option.rooms[-1]
        assert whole.room == ""
        assert [(line.words, line.price_minor) for line in whole.lines] == [
            ("De-clutter and clean throughout", 18000),
            ("Pieces picked, loaded and carried in", 13500),
            ("Van to your home", 18000),
            ("Van to fetch everything", 18000),
            ("Our pieces packed and carried out again", 18000),
        ]
        assert whole.sum_minor == 85500


def test_the_practitioners_list_to_the_cent() -> None:
    """From the demo's files: 2,215.60; with the curtains of t16 in place of t19 2,382.63, above the ceiling."""
    theirs = CHOICES["stager"]
    assert spent_minor("stager", theirs) == 221560
    assert spent_minor("stager", tuple("t16" if id == "t19" else id for id in theirs)) == 238263
    assert job("stager").brief.budget_minor == 225000


def test_the_practitioners_list_can_be_done() -> None:
    """Its steps fit into the hours around the van, its pieces are there, and the van carries them."""
    found = walked("stager")
    assert isinstance(found, Checked)
    assert {line.id: line.packs for line in found.bill if line.kind == "product"}["s08"] == 2


def test_options_add_up_and_rise() -> None:
    """Three options; rooms and lines of each add up to what its plan costs, the last to the plan's own sum."""
    assert [(one.letter, one.name) for one in quote().options] == [
        ("A", "Essential"), ("B", "Recommended"), ("C", "Complete"),
    ]  # fmt: skip
    book = run("stager").book
    totals = [one.total_minor for one in quote().options]
    assert totals == sorted(totals)
    assert totals[-1] == book.spent_minor
    assert [room.room for room in quote().options[-1].rooms] == ["living room", "bedroom", ""]
    found = dict(book.offers)
    assert [found[one.name].sums.spent_minor for one in quote().options[:2]] == totals[:2]
    best = book.best
    assert all(stop.sums.hazards_after <= best.hazards_after for stop in found.values())
    assert found["Essential"].sums.improvement * 3 >= best.improvement * 2
    assert found["Recommended"].sums.improvement * 10 >= best.improvement * 9
    assert offers.__doc__


def test_nothing_internal_is_sent() -> None:
    """No shop, no name, price or place of a product, no rate, no mark-up, no minutes, no ids."""
    text = quote_page(quote()).decode("utf-8").split("</style>")[1]
    catalog = job("stager").catalog
    inside = [shop.name for shop in catalog.shops]
    inside += [product.name for product in catalog.products if product.name.startswith("STOCK")]
    inside += [product.place for product in catalog.products if product.place]
    for word in (*inside, "15%", "15 %", "45.00", "mark-up", "minutes", "min<", "points", "budgetfix"):
        assert word not in text, word
    assert not re.search(r"\b[tsbk]\d\d\b", text)
    shelf = {f"{product.price_minor / 100:.2f}" for product in catalog.products if product.shop in ("hw", "home")}
    shown = set(re.findall(r"\d+\.\d\d", text))
    assert not shown & shelf


def test_what_the_seller_reads() -> None:
    """It stands to the evening before the work; dates, what is taken down, and the photographs' hour are there."""
    text = quote_page(quote()).decode("utf-8")
    assert quote().until == date(2026, 6, 2)
    for words in (
        "stands until Tuesday 2 June 2026",
        "Friday 5 June at 10:00; all is ready before",
        "Thursday 4 June, between 09:00 and 11:00",
        "Our furniture and pieces for 30 days, Thursday 4 June to Saturday 4 July.",
        "3 family photographs",
    ):
        assert words in text
