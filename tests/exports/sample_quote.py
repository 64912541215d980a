"""A quote made by hand, with two options, and the costing behind it: 100.00 and 145.50 to the client."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from fractions import Fraction

from budgetfix.brief.quote import QuoteWords
from budgetfix.brief.stay import Stay
from budgetfix.brief.van import Photographs, Slot, Vans
from budgetfix.outcome.quote import Costing, CostRow, Quote, QuoteLine, QuoteOption, QuoteRoom, VanLoad
from tests.exports.sample_book import BOOK

RUG = QuoteLine("q77-rug", "A large rug <under> the sofa", 6000)
CLEAN = QuoteLine("q77-clean", "Clean throughout", 2000)
OUT = QuoteLine("fixed:Van out", "Van out", 2000)
SLOT = Slot(on=date(2026, 6, 4), start_minute=540, end_minute=660, load_kg=Fraction(400), cost_minor=2000)
ESSENTIAL = QuoteOption(
    "A", "Essential", (QuoteRoom("living room", (RUG,)), QuoteRoom("", (CLEAN, OUT))), ("old rug",), ("sofa",), 0
)
COMPLETE = QuoteOption(
    "B",
    "Recommended",
    (
        QuoteRoom("living room", (replace(RUG, price_minor=5990), QuoteLine("q77-free", "Lamps moved", 0))),
        QuoteRoom("bedroom", (QuoteLine("q77-lamps", "Two bedside lamps", 4560),)),
        QuoteRoom("", (CLEAN, OUT)),
    ),
    ("old rug", "2 pictures"),
    ("sofa", "bed"),
    4,
)
QUOTE = Quote(
    title="Living room, bedroom",
    currency="USD",
    made=date(2026, 6, 1),
    until=date(2026, 6, 2),
    options=(ESSENTIAL, COMPLETE),
    recommended="B",
    words=QuoteWords(addressee="the sellers", maker="our firm", agree=("the keys stay with us",)),
    stay=Stay(first=date(2026, 6, 4), until=date(2026, 7, 4)),
    vans=Vans(out=SLOT),
    photographs=Photographs(on=date(2026, 6, 5), minute=600),
    days=(date(2026, 6, 3), date(2026, 6, 4)),
)
ROWS = (
    CostRow("b01", "bought", "Bulbs", "Lamps", "Harrow Tools", 2, 2000, "15 %", 2300, 2000),
    CostRow("s01", "stock", "Rug", "Rug", "our stock", 1, 6000, "", 6000, 0, days=30, place="bay 2", weight_kg=14.5),
    CostRow("labour:2", "work", "Lamps", "", "", None, None, "", 4250, 4250, minutes=57),
    CostRow("fixed:3", "van", "Van out", "", "", None, None, "", 2000, 2000),
)
COSTING = Costing(
    ROWS,
    (VanLoad("out", date(2026, 6, 4), 540, 660, 14.5, 400.0),),
    4500,
    (("A", "Essential", 10000, 6000), ("B", "Recommended", 14550, 6300)),
)
QUOTED = replace(BOOK, currency="USD", quote=QUOTE, costing=COSTING)
