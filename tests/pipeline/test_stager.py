"""The stager's two rooms planned once: a quote with pay, mark-up and van, stock that comes on Thursday."""

from __future__ import annotations

import contextlib
from fractions import Fraction

import pytest

from budgetfix.base.numbers import half_up
from budgetfix.exports.plan_screen import plan_text
from budgetfix.outcome.book import MoneyLine
from budgetfix.room.overlaps import overlaps
from tests.make_reports import said
from tests.practitioner import new_overlaps, remedy, spent_minor
from tests.scenarios import DEMO, job, room_with, run, theirs

pytestmark = [pytest.mark.xdist_group("stager"), pytest.mark.slow]
CENTS_A_MINUTE = 75
MARKUP = {"hw": Fraction(115, 100), "home": Fraction(115, 100)}
WEDNESDAY, WITH_THE_VAN, AFTER_THE_VAN = 1, 2, 3
"""Thursday is two parts: nine to eleven, while the van is there, and from eleven on."""


def lines(kind: str) -> list[MoneyLine]:
    """The lines of one sort of money in the plan's bill."""
    return [line for line in run("stager").book.money if line.kind == kind]


def test_it_is_proven() -> None:
    """Nearly all of what a viewer would see goes, no hazard is left, and no other set does better."""
    book = run("stager").book
    assert book.proven
    assert book.bound == book.improvement > book.points_before * 9 // 10
    assert (book.hazards_before, book.hazards_after) == (2, 0)


def test_the_quote_adds_up() -> None:
    """Goods, pay and fixed lines are all on the bill, and together stay under the client's ceiling."""
    book = run("stager").book
    assert sum(line.line_minor for line in book.money) == book.spent_minor <= 225000
    assert {line.kind for line in book.money} == {"product", "labour", "fixed"}
    assert [(line.name, line.line_minor) for line in lines("fixed")] == [
        ("Van out", 18000),
        ("Van back", 18000),
        ("Take back", 18000),
    ]


def test_every_line_of_goods_is_marked_up_by_itself() -> None:
    """Shop goods at shelf price + 15 %, each line rounded half up; stock at its fee."""
    for line in lines("product"):
        shelf = (line.packs or 0) * (line.unit_price_minor or 0)
        assert line.line_minor == half_up(shelf * MARKUP.get(line.shop or "", Fraction(1)))
    assert {line.shop for line in lines("product")} == {"hw", "home", "stock"}


def test_every_minute_is_paid() -> None:
    """45.00 an hour a person: 0.75 a minute, for each remedy by itself."""
    minutes = {one.id: sum(work.minutes * work.people for work in one.work) for one in run("stager").chosen}
    paid = sorted(line.line_minor for line in lines("labour"))
    assert paid == sorted(each * CENTS_A_MINUTE for each in minutes.values())


def test_stock_is_placed_after_the_van() -> None:
    """Whatever takes something from the stock waits for eleven o'clock; cleaning is done on the day before."""
    when = {(task.candidate, task.step): task.session for task in run("stager").book.tasks}
    stock = {one.product for one in job("stager").catalog.products if one.stock is not None}
    from_stock = [one.id for one in run("stager").chosen if stock & {product for product, _ in one.uses}]
    assert from_stock
    assert all(when[(id, len(run("stager").offer[id].work))] == AFTER_THE_VAN for id in from_stock)
    assert (when[("t22", 1)], when[("t21", 1)]) == (WEDNESDAY, WITH_THE_VAN)


def test_the_van_is_unloaded_first() -> None:
    """On Thursday nothing is placed before it is there: the loading is the first thing, inside the van's window."""
    thursday = [task.candidate for task in run("stager").book.tasks if task.session == WITH_THE_VAN]
    assert thursday[0] == "t21"
    rows = run("stager").book.sessions or ()
    assert [(row.start_minute, row.end_minute) for row in rows] == [(540, 840), (540, 660), (660, 990)]


def test_the_task_of_the_van_and_of_the_short_curtain_say_all() -> None:
    """The van's own 90 minutes hold loading, driving and carrying in; a quoted wall made good is filled in its step."""
    (van,), (curtain,) = (theirs("stager")[id].work for id in ("t21", "t19"))
    assert (van.text, van.person_minutes) == ("Load the van, drive over, carry the stock in", 180)
    assert curtain.text == (
        "Take the short panels and the rod down, leave the blind; fill the bracket holes with the spackle at hand, "
        "wipe it smooth while damp; say where the bedroom curtain will go: put away with the owner's things"
    )
    assert curtain.person_minutes == 30


def test_a_filled_hole_dries_overnight() -> None:
    """Taking the screen down is two steps with a night between: down and filled on Wednesday, the mirror after it."""
    down, mirror = remedy("stager", "t01").work
    assert (down.wait_sessions, mirror.wait_sessions, mirror.wait_minutes) == (0, 1, 720)
    assert (down.minutes + mirror.minutes) * 2 == 240


def test_lamps_of_both_rooms_share_packs() -> None:
    """Five lamps of 800 lm from two packs of four, two of 1600 lm from one pack of two: less than bought apart."""
    assert spent_minor("stager", ("t10", "t13", "t14", "t18")) < sum(
        spent_minor("stager", ids) for ids in (("t10",), ("t13", "t14", "t18"))
    ) - spent_minor("stager", ())
    packs = {line.product: line.packs for line in lines("product")}
    assert (packs["b09"], packs["b10"], packs["s08"]) == (2, 1, 2)


def test_nothing_shares_a_spot() -> None:
    """Every float, every set of lamps and stands, each with what it needs: none stands on another thing."""
    before = room_with("stager", ())
    assert [overlaps(before, facts.room) for facts in before.rooms] == [(), ()]
    for id, one in theirs("stager").items():
        needed = (*one.needs, *(need for other in one.needs for need in theirs("stager")[other].needs))
        assert new_overlaps("stager", (id, *needed)) == [], id


def test_it_prints_in_80_columns() -> None:
    """What is found, and the plan, as the terminal shows them."""
    with contextlib.chdir(DEMO):
        found = said(["inspect", "stager"])
    assert max(len(line) for line in found.splitlines()) <= 80
    text = plan_text(run("stager").book, ("stager/plan.xlsx",))
    assert max(len(line) for line in text.splitlines()) <= 80
    assert "2250.00 USD" in text
