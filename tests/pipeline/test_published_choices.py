"""Choices with published answers, as jobs of listed faults through the whole walk: files in, checked plan out."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.pipeline.listed_job import Remedy, ids, one_each, proven_plan, with_hours, write_job

WEING_VALUES = (
    1898, 440, 22507, 270, 14148, 3100, 4650, 30800, 615, 4975, 1160, 4225, 510, 11880,
    479, 440, 490, 330, 110, 560, 24355, 2885, 11748, 4550, 750, 3720, 1950, 10500,
)  # fmt: skip
WEING_MONEY = (
    45, 0, 85, 150, 65, 95, 30, 0, 170, 0, 40, 25, 20, 0, 0, 25, 0, 0, 25, 0, 165, 0, 85, 0, 0, 0, 0, 100,
)  # fmt: skip
WEING_HOURS = (
    30, 20, 125, 5, 80, 25, 35, 73, 12, 15, 15, 40, 5, 10, 10, 12, 10, 9, 0, 20, 60, 40, 50, 36, 49, 40, 19, 150,
)  # fmt: skip
KHAN_VALUES = (7, 17, 25, 35, 36, 9, 10, 10, 39, 44, 15, 19, 20, 44, 50, 5, 25, 32, 37, 37, 24, 30, 32, 43, 44)
KHAN_USE = (
    (1, 1, 4, 4, 6, 0, 0, 1, 9, 8, 2, 2, 3, 6, 9, 0, 2, 5, 6, 7, 4, 4, 5, 5, 9),
    (3, 4, 3, 5, 8, 0, 0, 1, 1, 7, 0, 3, 1, 7, 5, 1, 2, 5, 3, 9, 0, 8, 2, 5, 2),
    (1, 9, 9, 8, 3, 4, 1, 6, 2, 0, 5, 2, 6, 5, 9, 3, 7, 6, 6, 7, 7, 9, 7, 9, 2),
    (1, 9, 8, 0, 0, 4, 8, 0, 2, 8, 5, 6, 4, 6, 2, 8, 0, 1, 9, 2, 0, 0, 2, 5, 2),
    (6, 3, 2, 6, 7, 2, 7, 6, 4, 2, 5, 2, 7, 9, 2, 0, 8, 9, 1, 3, 2, 0, 0, 2, 3),
)


def test_capital_rationing(tmp_path: Path) -> None:
    """Seven projects on a budget of 200: A, E and F for a total of 78.

    OpenStax, Principles of Finance, How Companies Think about Investing, Choosing between Projects.
    """
    values = (60, 25, 10, 15, 11, 7, 2)
    write_job(tmp_path, values, one_each(values, (150, 100, 70, 50, 30, 20, 10)), {"budget": 200})
    book = proven_plan(tmp_path)
    assert (ids(book), book.improvement, book.spent_minor) == (["i1", "i5", "i6"], 78, 20_000)


@pytest.mark.parametrize(("values", "best"), [((16, 22, 12, 8), 42), ((8, 11, 6, 4), 21)])
def test_four_investments(tmp_path: Path, values: tuple[int, ...], best: int) -> None:
    """Costs 5, 7, 4, 3 on 14: the second, third and fourth, where rounding the relaxation down gives 19 for 21.

    The Stockco example of W. Winston, Operations Research (source from memory; both answers by brute force).
    """
    write_job(tmp_path, values, one_each(values, (5, 7, 4, 3)), {"budget": 14})
    book = proven_plan(tmp_path)
    assert (ids(book), book.improvement, book.spent_minor) == (["i2", "i3", "i4"], best, 1_400)


def test_greedy_trap(tmp_path: Path) -> None:
    """Best value for money first reaches 858 of 900.

    S. Martello and P. Toth, Knapsack Problems, Wiley 1990, test problem of MT1.
    """
    values = (350, 400, 450, 20, 70, 8, 5, 5)
    write_job(tmp_path, values, one_each(values, (25, 35, 45, 5, 25, 3, 2, 2)), {"budget": 104})
    book = proven_plan(tmp_path)
    assert (ids(book), book.improvement, book.spent_minor) == (["i1", "i3", "i4", "i5", "i7", "i8"], 900, 10_400)


@pytest.mark.parametrize(("most", "best"), [(600, 141_278), (500, 130_883)])
def test_money_and_hours(tmp_path: Path, most: int, best: int) -> None:
    """28 items with a cost and hours each, one session: the value is published; sets may tie.

    H. Weingartner and D. Ness, Operations Research 15, 1967 (WEING1 and WEING2 of the OR-Library).
    """
    remedies = with_hours(one_each(WEING_VALUES, WEING_MONEY), WEING_HOURS)
    write_job(tmp_path, WEING_VALUES, remedies, {"budget": most, "hours": [most]})
    book = proven_plan(tmp_path)
    assert book.improvement == best
    assert book.bound == best
    assert book.spent_minor <= most * 100
    assert book.sessions is not None
    assert book.sessions[0].minutes_used <= most * 60


def test_two_budgets(tmp_path: Path) -> None:
    """Two years' money, the second as a limit of its own: projects 1, 3, 4, 6 and 9 for 70.

    J. Lorie and L. Savage, Three Problems in Rationing Capital, Journal of Business 28, 1955 (from memory).
    """
    values = (14, 17, 17, 15, 40, 12, 14, 10, 12)
    second = (3, 7, 6, 2, 35, 6, 4, 3, 3)
    plain = one_each(values, (12, 54, 6, 6, 30, 6, 48, 36, 18))
    remedies = [{**one, "spends": {"year 2": amount}} for one, amount in zip(plain, second, strict=True)]
    write_job(tmp_path, values, remedies, {"budget": 50, "limits": {"year 2": 20}})
    book = proven_plan(tmp_path)
    assert (ids(book), book.improvement, book.spent_minor) == (["i1", "i3", "i4", "i6", "i9"], 70, 4_800)


def test_warehouse_only_with_its_factory(tmp_path: Path) -> None:
    """Factories and warehouses in two cities, one warehouse at most and only beside its factory: both factories, 14.

    F. Hillier and G. Lieberman, Introduction to Operations Research, California Manufacturing (14 from memory).
    """
    values = (9, 5, 6, 4)
    remedies = one_each(values, (6, 3, 5, 2))
    remedies[2] |= {"pick_one": "warehouse", "needs": ["i1"]}
    remedies[3] |= {"pick_one": "warehouse", "needs": ["i2"]}
    write_job(tmp_path, values, remedies, {"budget": 10})
    book = proven_plan(tmp_path)
    assert (ids(book), book.improvement) == (["i1", "i2"], 14)


def test_teams_to_countries(tmp_path: Path) -> None:
    """Five medical teams for three countries, one size a country: 170 thousand years of life (1, 3, 1 teams).

    F. Hillier and G. Lieberman, Introduction to Operations Research, World Health Council (from memory).
    """
    values = (45, 70, 90, 105, 120, 20, 45, 75, 110, 150, 50, 70, 80, 100, 130)
    remedies = one_each(values, (1, 2, 3, 4, 5) * 3)
    for index, remedy in enumerate(remedies):
        remedy["pick_one"] = f"country {index // 5}"
    write_job(tmp_path, values, remedies, {"budget": 5})
    book = proven_plan(tmp_path)
    assert (ids(book), book.improvement) == (["i1", "i11", "i8"], 170)


def test_one_session_chooses_by_hours(tmp_path: Path) -> None:
    """Eight jobs for one session of 102 hours: worth 280.

    S. Martello and P. Toth, Knapsack Problems, Wiley 1990; help page mknapsack of the R package adagio.
    """
    values = (15, 100, 90, 60, 40, 15, 10, 1)
    remedies = with_hours(one_each(values, (0,) * 8), (2, 20, 20, 30, 40, 30, 60, 10))
    write_job(tmp_path, values, remedies, {"hours": [102]})
    assert proven_plan(tmp_path).improvement == 280


def test_two_unequal_sessions(tmp_path: Path) -> None:
    """Ten jobs for sessions of 103 and 156 hours: worth 452.

    S. Martello and P. Toth, Knapsack Problems, Wiley 1990, example of MTM.
    """
    values = (78, 35, 89, 36, 94, 75, 74, 79, 80, 16)
    remedies = with_hours(one_each(values, (0,) * 10), (18, 9, 23, 20, 59, 61, 70, 75, 76, 30))
    write_job(tmp_path, values, remedies, {"hours": [103, 156]})
    book = proven_plan(tmp_path)
    assert book.improvement == 452
    assert book.sessions is not None
    assert [row.minutes_used <= row.minutes_available for row in book.sessions] == [True, True]


def test_five_groups_on_five_limits(tmp_path: Path) -> None:
    """Exactly one of each of five groups under five limits of 25: worth 173.

    S. Khan, K.F. Li, E.G. Manning, M.M. Akbar, Studia Informatica Universalis 2, 2002 (I01).
    """
    remedies: list[Remedy] = [
        {"remedy": f"i{item + 1}", "answers": {f"f{item + 1}": 1}, "pick_one": f"group {item // 5}"}
        for item in range(len(KHAN_VALUES))
    ]
    for item, remedy in enumerate(remedies):
        remedy["spends"] = {f"limit {row}": amounts[item] for row, amounts in enumerate(KHAN_USE)}
    brief = {"limits": {f"limit {row}": 25 for row in range(5)}, "must": [f"group {group}" for group in range(5)]}
    write_job(tmp_path, KHAN_VALUES, remedies, brief)
    book = proven_plan(tmp_path)
    assert (len(book.chosen), book.improvement) == (5, 173)


def test_ten_limits_at_once(tmp_path: Path) -> None:
    """Six projects on ten yearly limits, the first of them the money: the second, third and sixth for 3800.

    C.C. Petersen, Management Science 13, 1967 (first problem of mknap1 in the OR-Library).
    """
    values = (100, 600, 1200, 2400, 500, 2000)
    money, *years = (
        (8, 12, 13, 64, 22, 41), (8, 12, 13, 75, 22, 41), (3, 6, 4, 18, 6, 4), (5, 10, 8, 32, 6, 12),
        (5, 13, 8, 42, 6, 20), (5, 13, 8, 48, 6, 20), (0, 0, 0, 0, 8, 0), (3, 0, 4, 0, 8, 0), (3, 2, 4, 0, 8, 4),
        (3, 2, 4, 8, 8, 4),
    )  # fmt: skip
    limits = (96, 20, 36, 44, 48, 10, 18, 22, 24)
    remedies = one_each(values, money)
    for item, remedy in enumerate(remedies):
        remedy["spends"] = {f"year {year}": amounts[item] for year, amounts in enumerate(years, 2)}
    brief = {"budget": 80, "limits": {f"year {year}": limit for year, limit in enumerate(limits, 2)}}
    write_job(tmp_path, values, remedies, brief)
    book = proven_plan(tmp_path)
    assert (ids(book), book.improvement, book.spent_minor) == (["i2", "i3", "i6"], 3800, 6_600)


def test_three_plants(tmp_path: Path) -> None:
    """At most one project a plant on a budget of 5: worth 18.

    M. Trick, A Tutorial on Dynamic Programming, capital budgeting (table and value from memory).
    """
    values = (5, 6, 8, 9, 12, 4)
    remedies = one_each(values, (1, 2, 2, 3, 4, 1))
    for remedy, plant in zip(remedies, (1, 1, 2, 2, 2, 3), strict=True):
        remedy["pick_one"] = f"plant {plant}"
    write_job(tmp_path, values, remedies, {"budget": 5})
    book = proven_plan(tmp_path)
    assert (book.improvement, book.spent_minor) == (18, 500)


@pytest.mark.parametrize(
    ("values", "hours", "sessions", "best"),
    [
        ((110, 150, 70, 80, 30, 5), (40, 60, 30, 40, 20, 5), (65, 85), 345),
        ((92, 57, 49, 68, 60, 43, 67, 84, 87, 72), (23, 31, 29, 44, 53, 38, 63, 85, 89, 82), (70, 127), 333),
    ],
)
def test_sessions_of_other_lengths(
    tmp_path: Path, values: tuple[int, ...], hours: tuple[int, ...], sessions: tuple[int, ...], best: int
) -> None:
    """Two unequal sessions: 345 of six jobs (adagio), 333 of ten (Burkardt).

    Help page mknapsack of the R package adagio; J. Burkardt, KNAPSACK, printed output.
    """
    write_job(tmp_path, values, with_hours(one_each(values, (0,) * len(values)), hours), {"hours": list(sessions)})
    assert proven_plan(tmp_path).improvement == best


@pytest.mark.parametrize(
    ("price", "rate", "tax", "total"),
    [(428.99, "8.25%", 3_539, 46_438), (34.88, "8.25%", 288, 3_776), (499.00, "8.81%", 4_396, 54_296)],
)
def test_sales_tax(tmp_path: Path, price: float, rate: str, tax: int, total: int) -> None:
    """Tax on a shop's goods to the cent: bought when the budget is the total, not with a cent less.

    OpenStax, Contemporary Mathematics, Discounts, Markups, and Sales Tax (its printed total $464.87 is a misprint).
    """
    catalog = {
        "shops": [{"shop": "s", "tax": rate}],
        "products": [{"product": "p", "shop": "s", "price": price}],
    }
    remedies: list[Remedy] = [{"remedy": "i1", "answers": {"f1": 1}, "uses": {"p": 1}}]
    write_job(tmp_path, (10,), remedies, {"budget": total / 100}, catalog)
    book = proven_plan(tmp_path)
    assert [line.line_minor for line in book.money if line.kind == "tax"] == [tax]
    assert (book.spent_minor, book.improvement) == (total, 10)
    write_job(tmp_path, (10,), remedies, {"budget": (total - 1) / 100}, catalog)
    assert ids(proven_plan(tmp_path)) == []
