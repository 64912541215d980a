"""A quote in sentences: read as the client reads them."""

from __future__ import annotations

from dataclasses import replace

from budgetfix.brief.quote import QuoteWords
from budgetfix.exports.quote_words import agreed, dates, groups, heading, included, price, says, standing
from tests.exports.sample_quote import COMPLETE, ESSENTIAL, QUOTE


def test_lines_stand_once_with_a_price_in_each_option() -> None:
    """Rooms in order, the whole job last; what an option has not got is None, the van has its day."""
    found = [(group.heading, [(row.words, row.prices) for row in group.rows], group.sums) for group in groups(QUOTE)]
    assert found == [
        ("Living room", [("A large rug <under> the sofa", (6000, 5990)), ("Lamps moved", (None, 0))], (6000, 5990)),
        ("Bedroom", [("Two bedside lamps", (None, 4560))], (0, 4560)),
        ("For the whole job", [("Clean throughout", (2000, 2000)), ("Van out, Thursday 4 June", (2000, 2000))],
         (4000, 4000)),
    ]  # fmt: skip
    assert [sum(group.sums[place] for group in groups(QUOTE)) for place in (0, 1)] == [10000, 14550]


def test_prices_in_words() -> None:
    """With the currency's sign; nothing to pay is included; not there is a dash."""
    assert [price(QUOTE, minor) for minor in (123456, 0, None)] == ["$1,234.56", "included", "–"]


def test_who_and_until_when() -> None:
    """For whom, by whom, made and standing; what nobody says is left out."""
    assert heading(QUOTE) == "For the sellers · by our firm"
    assert heading(replace(QUOTE, words=QuoteWords(maker="our firm"))) == "By our firm"
    assert standing(QUOTE) == "Made on Monday 1 June 2026, stands until Tuesday 2 June 2026."
    assert standing(replace(QUOTE, made=None, until=None)) == ""
    assert [says(QUOTE, one)[:15] for one in QUOTE.options] == ["What is unsafe ", "Nearly all of t"]
    assert says(replace(QUOTE, options=(COMPLETE,)), COMPLETE) == "What we advise for these rooms."


def test_days_in_their_order() -> None:
    """Work, van, photographs; a van back stands after the photographs."""
    assert dates(QUOTE) == (
        ("We work in the home", "Wednesday 3 June and Thursday 4 June"),
        ("Our van comes", "Thursday 4 June, between 09:00 and 11:00"),
        ("Photographs", "Friday 5 June at 10:00; all is ready before"),
    )


def test_the_hour_at_which_work_begins() -> None:
    """Once where all days begin alike, else with each day; not where the brief says no hour."""
    said = {
        (540, 540): "Wednesday 3 June and Thursday 4 June, from 09:00",
        (540, 600): "Wednesday 3 June from 09:00 and Thursday 4 June from 10:00",
        (0, 600): "Wednesday 3 June and Thursday 4 June from 10:00",
        (0, 0): "Wednesday 3 June and Thursday 4 June",
    }
    assert {starts: dates(replace(QUOTE, starts=starts))[0][1] for starts in said} == said


def test_what_is_included() -> None:
    """One way of the van is the van; without stock nothing goes back."""
    assert included(QUOTE) == (
        "All work, all purchases with tax and delivery, and the van. There is nothing to pay on top.",
        "Our furniture and pieces for 30 days, Thursday 4 June to Saturday 4 July. They stay ours and go back then.",
    )
    assert included(replace(QUOTE, vans=None, stay=None)) == (
        "All work, all purchases with tax and delivery. There is nothing to pay on top.",
    )


def test_what_the_client_agrees_to() -> None:
    """Things with the letters of the options that touch them, holes for each, the brief's own sentence."""
    assert agreed(QUOTE) == (
        "Taken down or carried out: old rug, 2 pictures (B).",
        "Moved within the room: sofa, bed (B).",
        "New screw and nail holes in the walls: up to 0 in A, 4 in B.",
        "The keys stay with us.",
    )
    alone = replace(QUOTE, options=(replace(ESSENTIAL, holes=2, moved=()),), words=QuoteWords())
    assert agreed(alone) == ("Taken down or carried out: old rug.", "New screw and nail holes in the walls: up to 2.")
