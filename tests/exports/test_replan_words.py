"""What is said after replanning, word for word: at most five lines of 79 columns."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from budgetfix.exports.lettering import columns_of
from budgetfix.exports.replan_words import replan_lines
from budgetfix.outcome.since import Fact, Shift, Since
from tests.exports.sample_book import BOOK

DAY = date(2026, 6, 7)
SINCE = Since(
    DAY,
    paid_minor=9270,
    due_minor=8520,
    steps_done=4,
    steps=12,
    took_minutes=190,
    planned_minutes=155,
    sessions_left=2,
    minutes_left=440,
    told=True,
)
BARE = replace(BOOK, budget_minor=16850, spent_minor=15490, points_before=3072, points_after=707)
LONG = "A remedy with a name as long as somebody who writes catalogues may think of"


def said(since: Since, **more: object) -> list[str]:
    """The lines, none too many, none too wide."""
    lines = replan_lines(since, replace(BARE, **more))  # type: ignore[arg-type]
    assert len(lines) <= 5
    assert all(columns_of(line) <= 79 for line in lines)
    return lines


def test_so_far_and_what_is_left() -> None:
    """Paid against planned, steps and minutes against planned; money, hours and points of the rest."""
    steps = len(BOOK.tasks)
    assert said(SINCE) == [
        "SO FAR  92.70 paid, plan 85.20; 4 of 12 steps in 3 h 10 min, plan 2 h 35 min.",
        f"LEFT    168.50 and 7 h 20 min in 2 sessions: {steps} steps for 154.90, 2,365 points.",
    ]


def test_large_figures_are_told_in_minutes() -> None:
    """Where the line would be too long."""
    large = replace(SINCE, paid_minor=128_150, due_minor=128_100)
    assert said(large)[0] == "SO FAR  1281.50 paid, plan 1281.00; 4 of 12 steps in 190 min, plan 155."


def test_as_planned_is_said_short() -> None:
    """Where money and minutes are as planned, nothing is held against anything."""
    plain = replace(SINCE, due_minor=9270, planned_minutes=190)
    assert said(plain)[0] == "SO FAR  92.70 paid; 4 of 12 steps done."


def test_nothing_was_ticked() -> None:
    """It is said in so many words."""
    assert said(Since(DAY))[0] == "SO FAR  nothing is ticked and nothing was paid: all of the job is left."


def test_nothing_is_left_to_do() -> None:
    """Without steps there is nothing to gain and no price."""
    none = replace(SINCE, sessions_left=None, minutes_left=None)
    assert said(none, tasks=(), budget_minor=None)[1] == "LEFT    nothing to do."


def test_each_shift_with_its_reason() -> None:
    """What fell off, and what came on, each with the one fact behind it."""
    off, on = Shift(("Wool rug",), Fact("sold out", "Wool 2 x 3")), Shift(("Jute rug",), Fact("instead", "Wool rug"))
    assert said(replace(SINCE, off=(off,), on=(on,)))[2:] == [
        "OFF     Wool rug: sold out.",
        "ON      Jute rug: instead of Wool rug.",
    ]


def test_every_fact_has_words() -> None:
    """One sentence a sort of fact, with its name and its amount."""
    words = {
        Fact("dearer", "Rug", 750): "Rug 7.50 dearer",
        Fact("cheaper", "Rug", 750): "Rug 7.50 cheaper",
        Fact("price", "Rug", 750): "Rug costs 7.50 more now",
        Fact("returned", "Rug"): "given back",
        Fact("delivery", "Mill", 500): "Mill delivers again for 5.00",
        Fact("longer", "Strap", 28): "Strap took 28 min longer",
        Fact("quicker", "Strap", 70): "Strap took 1 h 10 min less",
        Fact("gone", "1", 62): "session 1 over, 1 h 2 min not done",
        Fact("late", "Lamp", 6): "ordered 6 days later",
        Fact("more money", "", 5000): "50.00 more in the budget",
        Fact("less money", "", 5000): "50.00 less in the budget",
        Fact("more hours", "", 60): "1 h more in the list of hours",
        Fact("fewer hours", "", 60): "1 h less in the list of hours",
        Fact("catalog"): "the catalogue is another one now",
        Fact("survey"): "the room was measured again",
        Fact("brief"): "the brief is another one now",
        Fact("faults"): "the list of faults is another one now",
        Fact("gives way", "Oval table"): "instead there is Oval table",
        Fact("freed"): "with what that sets free",
    }
    told = {fact: said(replace(SINCE, off=(Shift(("Pad",), fact),)))[2] for fact in words}
    assert told == {fact: f"OFF     Pad: {text}." for fact, text in words.items()}


def test_what_is_lacking_is_the_reason_and_why_lists_its_facts() -> None:
    """The facts of that class, the largest first; those of the other class are no reason."""
    facts: tuple[Fact, ...] = (Fact("dearer", "Rug", 750), Fact("longer", "Strap", 28), Fact("gone", "1", 62))
    facts = (*facts, Fact("late", "Lamp", 6), Fact("pace", amount=118), Fact("dearer", "Lamp", 900))
    hours = "work is reckoned 1.18 times as long now; session 1 over, 1 h 2 min not done"
    told = {"no time": hours, "no money": "Lamp 9.00 dearer; Rug 7.50 dearer"}
    for kind, why in told.items():
        shift = Shift(("Pad",), Fact(kind))  # type: ignore[arg-type]
        lines = said(replace(SINCE, off=(shift,), facts=facts))
        assert lines[2] == f"OFF     Pad: {kind} for it any more."
        assert lines[3] in (f"WHY     {why}.", f"WHY     {why.partition('; ')[0]}.")
    assert lines[3] == "WHY     Lamp 9.00 dearer; Rug 7.50 dearer."
    both = said(replace(SINCE, off=(Shift(("Pad",), Fact("neither")),), facts=facts))
    assert both[2] == "OFF     Pad: neither money nor time for it any more."
    assert both[3] == "WHY     Lamp 9.00 dearer; Rug 7.50 dearer."


def test_no_fact_is_named_where_none_explains_it() -> None:
    """Facts that may have nothing to do with it are not held up as the reason."""
    chosen_anew = "WHY     no single fact explains it: what is left is chosen anew."
    pad = Shift(("Pad",))
    assert said(replace(SINCE, off=(pad,)))[2:] == ["OFF     Pad.", chosen_anew]
    assert said(replace(SINCE, off=(pad,), facts=(Fact("dearer", "Rug", 750),)))[2:] == ["OFF     Pad.", chosen_anew]


def test_a_long_name_ends_with_a_whole_word() -> None:
    """Names in a reason are cut between words."""
    fact = Fact("dearer", "Flat-woven rug, small size with fringe", 4000)
    line = said(replace(SINCE, off=(Shift(("Pad",), fact),)))[2]
    assert line == "OFF     Pad: Flat-woven rug, small size 40.00 dearer."


def test_long_names_and_many_shifts_stay_within_five_lines() -> None:
    """Names are cut and counted; of many reasons the names are left."""
    facts = (Fact("sold out", LONG), Fact("returned", LONG), Fact("freed"), None)
    off = tuple(Shift((LONG, f"{LONG} {at}"), fact) for at, fact in enumerate(facts))
    lines = said(replace(SINCE, off=off, on=off, facts=(Fact("dearer", LONG, 99),), unended=(LONG, LONG)))
    assert [line.split()[0] for line in lines] == ["SO", "LEFT", "BEGUN", "OFF", "ON"]
    assert lines[3].endswith(" and 7 more.")


def test_what_must_not_be_overlooked_comes_first() -> None:
    """More paid than there was; begun and not to be ended; every session over."""
    assert said(replace(SINCE, over_budget_minor=1000, unended=("Paint",), sessions_left=0, minutes_left=0))[1:] == [
        f"LEFT    168.50 and no session: {len(BOOK.tasks)} steps for 154.90, 2,365 points.",
        f"MONEY   10.00 {BOOK.currency} over the budget is paid: nothing that costs any is planned.",
        "BEGUN   Paint: begun, and not to be ended with what is left.",
        "HOURS   every session is over: give new dates under hours in brief.yaml.",
    ]
    done = replace(SINCE, steps_done=12, sessions_left=0, minutes_left=0)
    assert not any(line.startswith("HOURS") for line in said(done))


def test_reasons_that_find_no_room_have_a_line_of_their_own() -> None:
    """Four remedies fell off for three reasons and two came on: names in two lines, the reasons in the fifth."""
    off = (
        Shift(("Low sideboard 160 wide, second-hand",), Fact("sold out", "Low sideboard")),
        Shift(("Rod 160-300 set at 1900, at 2390",), Fact("gives way", "Clip rings")),
        Shift(("Slide the coffee table", "Move the lamp"), Fact("dearer", "Rug", 4000)),
    )
    on = (Shift(("Clip rings on the old curtains",)), Shift(("Oval table",), Fact("freed")))
    lines = said(replace(SINCE, off=off, on=on, facts=(Fact("dearer", "Rug", 4000),)))
    assert len(lines) == 5
    assert lines[2] == "OFF     Low sideboard 160 wide, second-hand and 3 more."
    assert lines[3] == "ON      Clip rings on the old curtains; Oval table (with what that sets free)."
    assert lines[4] == "WHY     Low sideboard sold out; Rug 40.00 dearer; instead there is Clip rings."


def test_an_old_terminal_gets_plain_letters() -> None:
    """Cut names end in a letter that every terminal has."""
    lines = replan_lines(replace(SINCE, off=(Shift((LONG * 2,)),)), BARE, unicode=False)
    assert all(line.isascii() for line in lines)


def test_what_is_left_is_never_cut() -> None:
    """Where money, hours and steps fill the line, the points are left to the bars below."""
    long = replace(SINCE, sessions_left=3, minutes_left=14 * 60 + 30)
    line = said(long, budget_minor=123456789, spent_minor=98765432, tasks=BOOK.tasks)[1]
    assert line.endswith(".")
    assert len(line) <= 79
