from __future__ import annotations

from dataclasses import replace

from budgetfix.exports.page.stops import FREE, NO_SHOP, Lists, all_stops, as_data, stop_view
from tests.exports.sample_book import BOOK, MONEY, NO_HOURS, STOPS, TASKS, WITH_STOPS


def test_the_book_stands_at_its_own_stop() -> None:
    """Page and workbook show one plan: at its own stop the book's lists, whatever the stop holds."""
    other = tuple(replace(stop, tasks=TASKS[:1]) if stop.this_one else stop for stop in STOPS)
    stops = all_stops(replace(BOOK, stops=other))
    assert stops[2].tasks == BOOK.tasks
    assert [stop.this_one for stop in stops] == [False, False, True, False]


def test_without_a_stop_of_its_own_the_book_gets_one() -> None:
    """In its place by spend; a book without stops is one stop."""
    stops = all_stops(replace(BOOK, stops=(*STOPS[:2], STOPS[3])))
    assert [stop.sums.spent_minor for stop in stops] == [0, 980, 14172, 16972]
    assert [stop.this_one for stop in stops] == [False, False, True, False]
    assert len(all_stops(BOOK)) == 1


def test_rows_are_shared_between_stops() -> None:
    """Four plans of one room: a row that is the same in two of them is there once."""
    lists = Lists()
    views = [stop_view(WITH_STOPS, stop, lists) for stop in all_stops(WITH_STOPS)]
    assert len(lists.buy.places) == len(MONEY) + 1
    assert len(lists.do.places) == len(TASKS) + 1
    assert len(lists.faults.places) == len(BOOK.faults)
    assert views[0].no_buy == FREE
    assert views[1].no_buy == ""
    assert [len(view.faults) for view in views] == [7, 7, 8, 8]


def test_goods_stand_below_their_shops() -> None:
    """Shop by shop with what it gets; what has no shop comes last."""
    groups = stop_view(BOOK, all_stops(BOOK)[0], Lists()).buy
    assert [(group.heading, group.note, len(group.rows)) for group in groups] == [
        ("Harrow Tools", "€65.82", 4),
        ("Mill Lane Home", "€61.90", 2),
        (NO_SHOP, "€14.00", 1),
    ]


def test_work_without_hours_is_one_list() -> None:
    """In working order; what takes no time stands last, below a heading of its own."""
    bare = replace(TASKS[2], step=0, steps=0, session=None, minutes=0)
    book = replace(NO_HOURS, tasks=(*NO_HOURS.tasks, bare))
    groups = stop_view(book, all_stops(book)[0], Lists()).do
    assert [(group.heading, len(group.rows)) for group in groups] == [
        ("In this order", len(TASKS)),
        ("Takes no time of its own", 1),
    ]


def test_what_the_script_reads() -> None:
    """Figures in words, and numbers of rows under headings."""
    data = as_data(stop_view(WITH_STOPS, all_stops(WITH_STOPS)[1], Lists()))
    assert data["money"] == "€9.80"
    assert data["tiles"] == ("€9.80", "1 of 6", "0 of 1", "1 h 55 min", "350")
    assert data["buy"] == [["Harrow Tools", "€9.80", [0]]]
    assert data["do"] == [["Session 1, Saturday 6 June, 09:00", "3 h 35 min of 6 h", [0, 1]]]
    assert data["total"] == "€9.80 in all; €140.20 left of €160.00, €10.00 of it held back"
