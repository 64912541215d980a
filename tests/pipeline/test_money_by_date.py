"""Money that comes by and by, through the whole walk: what waits for it, what is said, what is handed out."""

from __future__ import annotations

import csv
import io
import tempfile
from datetime import date, timedelta
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as some
from icalendar import Calendar

from budgetfix.cli.no_plan import no_plan
from budgetfix.exports.calendar import plan_ics
from budgetfix.exports.plan_csv import buy_csv
from budgetfix.exports.plan_json import plan_object
from budgetfix.exports.plan_screen import plan_text
from budgetfix.optimize.problem import NoPlan
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.money_notes import ALL_THERE, LEFT_OUT, NO_HOURS
from budgetfix.pipeline.reading import JobOptions, read
from tests.pipeline.listed_job import TODAY, Remedy, chosen_plan, proven_plan, write_job

JUNE, JULY = "2026-06-06", "2026-07-04"
TWO_DAYS = [{"date": JUNE, "hours": 3}, {"date": JULY, "hours": 3}]
MONTHLY = [{"date": "2026-06-01", "amount": 150}, {"date": "2026-07-01", "amount": 150}]
WANTS: list[Remedy] = [
    {"remedy": "rug", "answers": {"f1": 1}, "cost": 200, "hours": 1},
    {"remedy": "lamp", "answers": {"f2": 1}, "cost": 60, "hours": 1},
    {"remedy": "hooks", "answers": {"f3": 1}, "cost": 50, "hours": 1},
]
POINTS = (300, 50, 40)


def sessions(book: PlanBook) -> dict[str, int | None]:
    """The session of each task, by remedy."""
    return {task.candidate: task.session for task in book.tasks}


def test_what_is_dear_and_worth_most_waits_for_july(tmp_path: Path) -> None:
    """Three hours' work fits into June, and June's 150 do not pay the rug of 200: it comes in July, the lamp in June.

    By hand: rug and lamp (260, 350 points) beat lamp and hooks (110, 90) and rug and hooks (250, 340); all three cost
    310. With 300 at once the rug would be first.
    """
    write_job(tmp_path, POINTS, WANTS, {"money": MONTHLY, "hours": TWO_DAYS})
    book = proven_plan(tmp_path)
    assert sessions(book) == {"lamp": 1, "rug": 2}
    assert (book.budget_minor, book.spent_minor, book.improvement) == (30000, 26000, 350)
    assert [(day.on, day.there_minor, day.spent_minor, day.left_minor) for day in book.purses] == [
        (date(2026, 6, 1), 15000, 6000, 9000),
        (date(2026, 7, 1), 30000, 26000, 4000),
    ]
    write_job(tmp_path, POINTS, WANTS, {"budget": 300, "hours": TWO_DAYS})
    assert sessions(proven_plan(tmp_path)) == {"lamp": 1, "rug": 1}


def test_goods_wait_for_their_money_and_then_for_the_post(tmp_path: Path) -> None:
    """Ordered on 1 July, ten days on the way: the third session, although the money is there in the second."""
    goods = {"products": [{"product": "rug", "price": 200, "lead_days": 10}]}
    days = [*TWO_DAYS, {"date": "2026-07-11", "hours": 3}]
    wants: list[Remedy] = [{"remedy": "lay", "answers": {"f1": 1}, "uses": {"rug": 1}, "hours": 1}]
    write_job(tmp_path, (300,), wants, {"money": MONTHLY, "hours": days}, goods)
    book = proven_plan(tmp_path)
    assert sessions(book) == {"lay": 3}
    line = next(one for one in book.money if one.product == "rug")
    assert (line.buy_on, line.phase) == (date(2026, 7, 1), 1)


def test_the_rest_of_a_pack_is_used_up_first(tmp_path: Path) -> None:
    """A tin of 3 litres in June; July needs two more litres than are left, so one more tin on a line of its own."""
    goods = {
        "shops": [{"shop": "mill", "delivery": 5, "tax": "10%"}],
        "products": [{"product": "paint", "price": 60, "pack": 3, "shop": "mill"}],
    }
    wants: list[Remedy] = [
        {"remedy": "wall", "answers": {"f1": 1}, "uses": {"paint": 2}, "hours": 3},
        {"remedy": "door", "answers": {"f2": 1}, "uses": {"paint": 3}, "hours": 3},
    ]
    money = [{"date": "2026-06-01", "amount": 75}, {"date": "2026-07-01", "amount": 75}]
    write_job(tmp_path, (300, 100), wants, {"money": money, "hours": TWO_DAYS}, goods)
    book = proven_plan(tmp_path)
    assert sessions(book) == {"wall": 1, "door": 2}
    lines = [(line.kind, line.packs, line.line_minor, line.buy_on and line.buy_on.month) for line in book.money]
    june = [("product", 1, 6000, 6), ("delivery", None, 500, 6), ("tax", None, 600, 6)]
    assert lines == [*june, ("product", 1, 6000, 7), ("delivery", None, 500, 7), ("tax", None, 600, 7)]
    assert [line.tasks for line in book.money if line.product] == [("wall",), ("door",)]
    assert book.spent_minor == 14200


def test_each_month_has_its_own_round_of_shops(tmp_path: Path) -> None:
    """What is bought in July is not fetched in June: where July has no time for all, there are two rounds."""
    goods = {
        "shops": [{"shop": "mill"}],
        "products": [{"product": name, "price": 120, "shop": "mill"} for name in ("lamp", "rug")],
    }
    wants: list[Remedy] = [
        {"remedy": "light", "answers": {"f1": 1}, "uses": {"lamp": 1}, "hours": 1},
        {"remedy": "lay", "answers": {"f2": 1}, "uses": {"rug": 1}, "hours": 1},
    ]
    brief = {
        "money": MONTHLY,
        "hours": [{"date": JUNE, "hours": 3}, {"date": JULY, "hours": 2.5}],
        "errands": [{"errand": "shops", "name": "To the mill", "shops": ["mill"], "hours": 1}],
    }
    write_job(tmp_path, (300, 100), wants, brief, goods)
    assert sessions(proven_plan(tmp_path)) == {
        "errand:shops": 1,
        "light": 1,
        "errand:shops@2": 2,
        "lay": 2,
    }


def test_one_later_round_fetches_for_both_months(tmp_path: Path) -> None:
    """With no hours in June one round in July is enough for what was bought in either month."""
    goods = {
        "shops": [{"shop": "mill", "delivery": 0}],
        "products": [{"product": "lamp", "price": 120, "shop": "mill"}, {"product": "rug", "price": 120}],
    }
    wants: list[Remedy] = [
        {"remedy": "light", "answers": {"f1": 1}, "uses": {"lamp": 1}, "hours": 1},
        {"remedy": "lay", "answers": {"f2": 1}, "uses": {"rug": 1, "lamp": 1}, "hours": 1},
    ]
    brief = {
        "money": [{"date": "2026-06-01", "amount": 250}, {"date": "2026-07-01", "amount": 150}],
        "hours": [{"date": JULY, "hours": 3}],
        "errands": [{"errand": "shops", "name": "To the mill", "shops": ["mill"], "hours": 1}],
    }
    write_job(tmp_path, (300, 100), wants, brief, goods)
    assert sessions(proven_plan(tmp_path)) == {"errand:shops@2": 1, "light": 1, "lay": 1}


def test_what_is_held_back_is_held_back_of_each_sum(tmp_path: Path) -> None:
    """A tenth of 150 leaves 135 in June: a lamp of 140 waits for July, whatever is left in the end."""
    wants: list[Remedy] = [{"remedy": "lamp", "answers": {"f1": 1}, "cost": 140, "hours": 1}]
    write_job(tmp_path, (300,), wants, {"money": MONTHLY, "hours": TWO_DAYS, "contingency": "10%"})
    assert sessions(proven_plan(tmp_path)) == {"lamp": 2}
    write_job(tmp_path, (300,), wants, {"money": MONTHLY, "hours": TWO_DAYS})
    assert sessions(proven_plan(tmp_path)) == {"lamp": 1}


def test_fixed_costs_count_from_the_first_money_on(tmp_path: Path) -> None:
    """A van of 20 comes off June: a lamp of 140 waits for July."""
    wants: list[Remedy] = [{"remedy": "lamp", "answers": {"f1": 1}, "cost": 140, "hours": 1}]
    brief = {"money": MONTHLY, "hours": TWO_DAYS, "fixed": [{"name": "van", "cost": 20}]}
    write_job(tmp_path, (300,), wants, brief)
    book = proven_plan(tmp_path)
    assert sessions(book) == {"lamp": 2}
    assert [(line.kind, line.buy_on and line.buy_on.month) for line in book.money] == [("fixed", 6), ("remedy", 7)]


def test_sessions_without_dates(tmp_path: Path) -> None:
    """Money by the number of a session: the rug waits for the second."""
    money = [{"session": 1, "amount": 150}, {"session": 2, "amount": 150}]
    write_job(tmp_path, POINTS, WANTS, {"money": money, "hours": [3, 3]})
    book = proven_plan(tmp_path)
    assert sessions(book) == {"lamp": 1, "rug": 2}
    assert [(one.kind, one.buy_session) for one in book.money] == [("remedy", 1), ("remedy", 2)]
    assert "MONEY from session 1: 150.00 there, 60.00 spent, 90.00 left" in plan_text(book, ())


def test_what_clashes_is_named(tmp_path: Path) -> None:
    """The rug must be laid in June, and June has not enough: money by date is the clash, not the budget."""
    brief = {"money": MONTHLY, "hours": TWO_DAYS, "must": ["rug"], "finish_by": JUNE}
    write_job(tmp_path, POINTS, WANTS, brief)
    found = chosen_plan(tmp_path)
    assert isinstance(found, NoPlan)
    assert "\n".join(no_plan(found, read(tmp_path, JobOptions(), TODAY))) == (
        "No plan keeps these together:\n"
        "  must: rug\n"
        "  money by date: 150.00 by 1 June, 300.00 by 1 July\n"
        "  the list of hours\n"
        "  finish_by\n"
        "rug could never be done: the money for it comes too late.\n"
        "Any one of these, given up, would let a plan exist:\n"
        "  must: rug\n"
        "  money by date: 150.00 by 1 June, 300.00 by 1 July\n"
        "  the list of hours\n"
        "  finish_by"
    )


def test_the_budget_is_named_where_all_of_it_is_too_little(tmp_path: Path) -> None:
    """310 of 300: no day is to blame, and 10 more by the last day would do."""
    write_job(tmp_path, POINTS, WANTS, {"money": MONTHLY, "hours": TWO_DAYS, "must": ["rug", "lamp", "hooks"]})
    found = chosen_plan(tmp_path)
    assert isinstance(found, NoPlan)
    assert found.clash == ("must:hooks", "must:lamp", "must:rug", "budget")
    assert found.least_minor == 31000


def test_notes_say_what_is_left_out(tmp_path: Path) -> None:
    """More money is not asked after, and the most to pay is not worked out; without hours days are no matter."""
    write_job(tmp_path, POINTS, WANTS, {"money": MONTHLY, "hours": TWO_DAYS})
    book = proven_plan(tmp_path)
    assert LEFT_OUT in book.notes
    assert book.next.point is None
    assert not book.next.no_point
    assert not book.next.complete
    assert all(row.spent_minor <= book.spent_minor for row in book.more)
    assert all(line.most_minor is None and not line.any_price for line in book.money)
    write_job(tmp_path, POINTS, WANTS, {"money": MONTHLY})
    assert NO_HOURS in proven_plan(tmp_path).notes
    early = [{"date": "2026-05-01", "amount": 150}, {"date": "2026-06-01", "amount": 150}]
    write_job(tmp_path, POINTS, WANTS, {"money": early, "hours": TWO_DAYS})
    assert ALL_THERE in proven_plan(tmp_path).notes


def test_money_after_the_last_session_is_told(tmp_path: Path) -> None:
    """August's 150 come when all work is over: they pay nothing, and that is said."""
    money = [*MONTHLY, {"date": "2026-08-01", "amount": 150}]
    write_job(tmp_path, POINTS, WANTS, {"money": money, "hours": TWO_DAYS})
    book = proven_plan(tmp_path)
    assert (sessions(book), book.spent_minor) == ({"lamp": 1, "rug": 2}, 26000)
    assert "150.00 USD of the money comes after the last session: it is of no use to this plan." in book.notes


def test_lists_say_from_when_to_buy(tmp_path: Path) -> None:
    """buy.csv has a column for it, the calendar an entry a day, and the object the keys it always had."""
    goods = {"products": [{"product": name, "price": price} for name, price in (("rug", 200), ("lamp", 60))]}
    wants: list[Remedy] = [
        {"remedy": "lay", "name": "Lay the rug", "answers": {"f1": 1}, "uses": {"rug": 1}, "hours": 1},
        {"remedy": "light", "name": "Light", "answers": {"f2": 1}, "uses": {"lamp": 1}, "hours": 1},
    ]
    write_job(tmp_path, POINTS, wants, {"money": MONTHLY, "hours": TWO_DAYS}, goods)
    book = proven_plan(tmp_path)
    rows = list(csv.DictReader(io.StringIO(buy_csv(book).decode(), newline="")))
    assert [(row["product"], row["buy from"]) for row in rows] == [
        ("lamp", "2026-06-01"),
        ("rug", "2026-07-01"),
        ("", ""),
    ]
    found = [one for one in Calendar.from_ical(plan_ics(book)).walk("VEVENT") if "buy" in str(one["summary"])]
    assert [one.decoded("dtstart") for one in found] == [date(2026, 6, 1), date(2026, 7, 1)]
    assert str(found[1]["description"]) == (
        "From 1 July on the money for this is there: 200.00 USD in all.\n\n- rug: 200.00"
    )
    purchases = plan_object(book, ())["purchases"]
    assert isinstance(purchases, list)
    assert sum(one["line_minor"] for one in purchases) == book.spent_minor
    assert {key for one in purchases for key in one} == {
        "kind", "product", "shop", "packs", "unit_price_minor", "line_minor",
    }  # fmt: skip
    text = plan_text(book, ())
    assert "to spend as it comes" in text
    assert "MONEY from Mon 1 Jun: 150.00 there, 60.00 spent, 90.00 left\n" in text
    assert "      from Wed 1 Jul: 300.00 there, 260.00 spent, 40.00 left\n" in text


def test_without_dates_nothing_says_so(tmp_path: Path) -> None:
    """A plain budget has no column, no line and no entry for it."""
    write_job(tmp_path, POINTS, WANTS, {"budget": 300, "hours": TWO_DAYS})
    book = proven_plan(tmp_path)
    assert b"buy from" not in buy_csv(book)
    assert b"buy " not in plan_ics(book)
    assert "MONEY" not in plan_text(book, ())
    assert book.purses == ()


amounts = some.lists(some.integers(20, 200), min_size=2, max_size=4)
wishes = some.lists(
    some.tuples(some.integers(0, 90), some.integers(0, 3), some.integers(0, 2), some.integers(1, 2)),
    min_size=2,
    max_size=5,
)


@settings(max_examples=25, deadline=None)
@given(amounts, wishes, some.sampled_from([0, 7]), some.sampled_from([None, 90]))
def test_no_money_is_spent_before_it_is_there(
    sums: list[int], wants: list[tuple[int, int, int, int]], lead: int, free_over: int | None
) -> None:
    """Recounted day by day from buy.csv: what is to be bought from a day on is no more than has come by that day.

    And no task begins before the day from which its money is there, its days of waiting counted in.
    """
    days = [date(2026, 6, 3) + timedelta(days=20 * place) for place in range(len(sums))]
    remedies: list[Remedy] = [
        {"remedy": f"i{number}", "answers": {f"f{number}": 1}, "cost": cost, "uses": {"paint": paint, "rug": rugs},
         "hours": hours}
        for number, (cost, paint, rugs, hours) in enumerate(wants, 1)
    ]  # fmt: skip
    goods = {
        "shops": [{"shop": "mill", "delivery": 7, "tax": "8.25%", **({"free_over": free_over} if free_over else {})}],
        "products": [
            {"product": "paint", "price": 31, "pack": 2, "shop": "mill", "on_hand": 1},
            {"product": "rug", "price": 45, "shop": "mill", "lead_days": lead},
        ],
    }
    brief = {
        "money": [{"date": day.isoformat(), "amount": sum_} for day, sum_ in zip(days, sums, strict=True)],
        "hours": [{"date": (day + timedelta(days=9)).isoformat(), "hours": 3} for day in days],
    }
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        write_job(folder, [30 + 7 * number for number in range(len(wants))], remedies, brief, goods)
        book = proven_plan(folder)
    rows = list(csv.DictReader(io.StringIO(buy_csv(book).decode(), newline="")))[:-1]
    dated = [(date.fromisoformat(row["buy from"]), round(float(row["line"]) * 100)) for row in rows]
    for day in days:
        spent = sum(minor for on, minor in dated if on < day + timedelta(days=20))
        assert spent <= 100 * sum(sum_ for on, sum_ in zip(days, sums, strict=True) if on <= day)
    assert sum(minor for _, minor in dated) == book.spent_minor
    on = {row.number: row.on for row in book.sessions or ()}
    for task in book.tasks:
        for line in book.money:
            session = on[task.session or 1]
            if task.name in line.tasks and line.buy_on and session is not None:
                assert session >= line.buy_on + timedelta(days=line.lead_days)
