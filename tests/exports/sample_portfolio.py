"""Three houses of one summer as their outputs get them: two that share a stock, and one with nothing to do."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from fractions import Fraction

from budgetfix.outcome.book import MoneyLine
from budgetfix.outcome.portfolio import House, Piece, Portfolio, Run, Standing
from tests.exports.sample_book import BOOK, NOTHING

RUG = MoneyLine("product", "s1", "Ivory rug", None, "", 1, 6000, 6000, tasks=("Lay the rug",), days=30)
LAMPS = MoneyLine("product", "s2", "Table lamp", None, "", 2, 2000, 4000, tasks=("Stand a lamp",), days=30)
PAY = MoneyLine("labour", None, "Labour: Lay the rug", None, "", None, None, 1500)
ELM, OAK, PINE = "Elm Street", "Oak Lane", "Pine"
JUNE = (date(2026, 6, 4), date(2026, 7, 4))
JULY = (date(2026, 7, 6), date(2026, 7, 31))


def _files(folder: str) -> tuple[str, ...]:
    return tuple(f"summer/{folder}/{name}" for name in ("plan.xlsx", "plan.html", "plan.ics", "buy.csv", "do.csv"))


STOCK = ("s1", "s2", "s3")
WITH_RUG = replace(BOOK, money=(*BOOK.money, RUG, PAY), spent_minor=21672)
WITH_LAMPS = replace(BOOK, money=(*BOOK.money, LAMPS), spent_minor=18172)
HOUSES = (
    House("elm-street", ELM, WITH_RUG, _files("elm-street"), *JUNE, STOCK),
    House("oak-lane", OAK, WITH_LAMPS, _files("oak-lane"), *JULY, STOCK),
    House("pine", PINE, NOTHING, _files("pine")),
)
PIECES = (
    Piece("s1", "Ivory rug", "bay 1", Fraction(29, 2), 1, (Standing(ELM, 1, *JUNE),), (OAK,)),
    Piece("s2", "Table lamp", "shelf 3", None, 3, (Standing(PINE, 1, None, None), Standing(OAK, 2, *JULY))),
    Piece("s3", "Oval table", "bay 3", Fraction(21), 1, ()),
)
RUNS = (
    Run(JUNE[0], 540, 660, "", ELM, "brings", (("Ivory rug", 1, "bay 1"),), Fraction(29, 2), 0, Fraction(400)),
    Run(JULY[0], 540, 660, "", OAK, "brings", (("Table lamp", 2, "shelf 3"),), Fraction(0), 2, None),
)
PORTFOLIO = Portfolio(
    name="Summer",
    folder="summer",
    currency="EUR",
    ordered=date(2026, 6, 1),
    houses=HOUSES,
    pieces=PIECES,
    runs=RUNS,
    proven=True,
    bound=1906,
    seconds_limit=60.0,
    files=("summer/portfolio.xlsx", "summer/portfolio.csv"),
    notes=("Pine has no `stay` in its brief, so it keeps its pieces from the other houses all the time.",),
)
STOPPED = replace(PORTFOLIO, proven=False, bound=2000)
NO_STOCK = replace(PORTFOLIO, pieces=(), runs=(), notes=())
EMPTY = replace(NO_STOCK, houses=tuple(replace(house, book=NOTHING) for house in HOUSES), bound=0)
