"""A plan as a quote: every line carries its part of what is shared, and each option adds up to the cent."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.quote import Quote, QuoteOption
from budgetfix.outcome.quoting import is_quoted, moved, room_of, stands_until, taken
from budgetfix.pipeline.inspecting import inspected
from budgetfix.pipeline.reading import JobOptions, read
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.survey import Change
from tests.pipeline.listed_job import TODAY, Remedy, proven_plan, write_job
from tests.scenarios import job, theirs

REMEDIES: list[Remedy] = [
    {"remedy": "a", "client": "Paint the hall", "answers": {"f1": 1}, "uses": {"tin": 1}, "minutes": 20, "cost": 3},
    {"remedy": "b", "name": "Paint the study", "answers": {"f2": 1}, "uses": {"tin": 2}, "minutes": 40},
    {"remedy": "c", "answers": {"f3": 1}, "uses": {"nail": 1}, "tools": ["saw"], "minutes": 10},
]
CATALOG: dict[str, object] = {
    "shops": [{"shop": "mill", "markup": "15%", "delivery": 5.9, "tax": "8.25%"}],
    "products": [
        {"product": "tin", "shop": "mill", "price": 22.25, "pack": 3},
        {"product": "nail", "shop": "mill", "price": 1.01},
    ],
    "tools": [{"tool": "saw", "hire_per_session": 4.01}],
}


def plan(folder: Path, **brief: object) -> PlanBook:
    """A plan with everything in it that can be shared."""
    write_job(folder, [70, 20, 10], REMEDIES, brief, CATALOG)
    return proven_plan(folder)


def quoted(folder: Path, **brief: object) -> Quote:
    """Its quote."""
    found = plan(folder, labour=45, **brief).quote
    assert found is not None
    return found


def prices(option: QuoteOption) -> dict[str, int]:
    """What each line of an option costs."""
    return {line.words: line.price_minor for room in option.rooms for line in room.lines}


def test_shared_sums_are_laid_on_the_lines(tmp_path: Path) -> None:
    """Done by hand. A tin at 22.25 + 15 % is 25.59, of it a third and two thirds; a nail at 1.16. Delivery of 5.90 and
    tax of 1.92 (8.25 % of 23.26) go by what each pays for goods; the saw to whom it cuts for; pay at 0.75 a minute.
    """
    option = quoted(tmp_path).options[-1]
    goods = {"Paint the hall": 853, "Paint the study": 1706, "c": 116}
    delivery = {"Paint the hall": 188, "Paint the study": 376, "c": 26}
    tax = {"Paint the hall": 61, "Paint the study": 123, "c": 8}
    own = {"Paint the hall": 300 + 1500, "Paint the study": 3000, "c": 750 + 401}
    assert prices(option) == {name: goods[name] + delivery[name] + tax[name] + own[name] for name in goods}
    assert option.total_minor == plan(tmp_path, labour=45).spent_minor


def test_errands_and_fixed_costs_are_for_the_whole_job(tmp_path: Path) -> None:
    """A round of shops is one line; fixed lines stand by their own names."""
    errands = [{"errand": "round", "shops": ["mill"], "minutes": 60}]
    option = quoted(tmp_path, errands=errands, fixed=[{"name": "Skip", "cost": 90}]).options[-1]
    assert prices(option)["Shopping and collecting"] == 4500
    assert prices(option)["Skip"] == 9000
    skip = {"name": "Skip", "client": "Rubbish taken away", "cost": 90}
    assert prices(quoted(tmp_path, fixed=[skip]).options[-1])["Rubbish taken away"] == 9000


def test_options_are_cheapest_first_and_each_plan_once(tmp_path: Path) -> None:
    """Painting the hall alone is two thirds of the effect, both rooms nine tenths, all three everything."""
    quote = quoted(tmp_path)
    assert [(one.letter, one.name, len(prices(one))) for one in quote.options] == [
        ("A", "Essential", 1),
        ("B", "Recommended", 2),
        ("C", "Complete", 3),
    ]
    assert quote.recommended == "B"
    assert [one.total_minor for one in quote.options] == sorted(one.total_minor for one in quote.options)


def test_the_days_and_hours_of_work(tmp_path: Path) -> None:
    """Days on which something is done, each with the hour at which its first session with work begins."""
    hours = [{"date": "2026-06-03", "start": "09:30", "hours": 5}, {"date": "2026-06-04", "start": "08:00", "hours": 5}]
    quote = quoted(tmp_path, hours=hours, ordered="2026-06-01")
    assert (quote.days, quote.starts) == ((date(2026, 6, 3),), (570,))


def test_two_that_coincide_are_one(tmp_path: Path) -> None:
    """Where only everything reaches nine tenths there is no third option."""
    write_job(tmp_path, [70, 70], REMEDIES[:2], {"labour": 45}, CATALOG)
    quote = proven_plan(tmp_path).quote
    assert quote is not None
    assert [(one.letter, one.name) for one in quote.options] == [("A", "Recommended")]


def test_nobody_paid_nothing_quoted(tmp_path: Path) -> None:
    """A household that buys and works for itself gets no quote; a mark-up alone is enough for one."""
    assert plan(tmp_path).quote is not None
    shops = [{"shop": "mill"}]
    write_job(tmp_path, [70, 20, 10], REMEDIES, {}, {**CATALOG, "shops": shops})
    book = proven_plan(tmp_path)
    assert (book.quote, book.costing, book.offers) == (None, None, ())
    assert not is_quoted(inspected(read(tmp_path, JobOptions(), TODAY)).base)


@pytest.mark.parametrize(
    ("hours", "until"),
    [
        ([{"date": "2026-06-03", "hours": 5}], date(2026, 6, 2)),
        ([{"date": "2026-06-01", "hours": 5}], date(2026, 6, 1)),
        ([{"date": "2026-07-03", "hours": 5}], date(2026, 6, 15)),
        (None, date(2026, 6, 15)),
    ],
)
def test_a_quote_stands_two_weeks_or_to_the_day_before_the_work(tmp_path: Path, hours: object, until: date) -> None:
    """No longer than a fortnight, and never past the evening before the work begins."""
    write_job(tmp_path, [70, 20, 10], REMEDIES, {"hours": hours, "ordered": "2026-06-01"}, CATALOG)
    assert stands_until(read(tmp_path, JobOptions(), TODAY).brief) == until


def test_what_is_about_no_thing_is_for_the_whole_job() -> None:
    """A remedy without a room stands with the van; in a home of one unnamed room, things are in the room."""
    assert room_of(Candidate("a", "k", "a")) == ""
    assert room_of(Candidate("a", "k", "a", subject="sofa")) == "The room"
    assert room_of(Candidate("a", "k", "a", subject="sofa", room="hall")) == "hall"


def test_what_goes_and_what_moves() -> None:
    """What is replaced goes like what is taken away, so it is not moved; a rug is moved like furniture is."""

    def said(*ids: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
        survey, mine = job("stager").survey, theirs("stager")
        assert survey is not None
        chosen = [mine[id] for id in ids]
        return taken(survey, chosen), moved(survey, chosen)

    assert said("t04", "t15") == (("3 family photographs", "picture over the bed"), ())
    assert said("t08") == ((), ("coffee table", "rug")), "the seller's own rug and table"
    assert said("t08", "t09") == (("old coffee table",), ("rug",))
    assert said("t05", "t13", "t14") == (("old nightstand", "old rug"), ("2 armchairs", "bed", "sofa"))
    assert said("t13") == ((), ("bed", "nightstand"))


def test_what_goes_of_a_curtain() -> None:
    """Cloth with its rod where both are new or it is taken away; else what is new of them; a raised rod stays."""
    survey, mine = job("stager").survey, theirs("stager")
    assert survey is not None
    windows = ("left curtain with its rod", "right curtain with its rod")
    assert taken(survey, [mine["t02"]]) == taken(survey, [mine["t03"]]) == windows
    assert taken(survey, [mine["t19"]]) == ("bedroom curtain with its rod",)

    def hung(kind: str, **new: object) -> Candidate:
        return Candidate("x", kind, "x", changes=(Change("curtains", "left curtain", tuple(new.items())),))  # type: ignore[arg-type]  # lengths

    assert taken(survey, [hung("longer-rod", rod_width=1400.0)]) == ("left curtain's rod",)
    assert taken(survey, [hung("new-panels", panel_width=1300.0)]) == ("left curtain's cloth",)
    assert taken(survey, [hung("raise-rod", rod_height=2400.0)]) == ()
    lent = Candidate("x", "rod-across", "x", changes=(Change("curtains", "right curtain", remove=True),))
    assert taken(survey, [lent]) == ("right curtain's rod",), "its cloth hangs on the rod across"
