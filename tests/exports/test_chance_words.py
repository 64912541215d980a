"""How sure a plan is, in the words of screen, workbook and page."""

from __future__ import annotations

from dataclasses import replace
from html import unescape

import pytest

from budgetfix.exports.chance_words import NONE, cases, chance_lines, fits_words, in_time, leave_words, price_lines
from budgetfix.exports.page.page import plan_page
from budgetfix.exports.plan_book import plan_book
from budgetfix.exports.plan_book_chances import NAME
from budgetfix.exports.plan_screen import plan_text
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.odds import DRAWS, Chances, FallsOff, InTime, MoneyOdds, PriceRange, Spread
from tests.exports.plan_sheets import opened, rows, sheet_of, values
from tests.exports.sample_book import BOOK, NO_HOURS

CHANCES = Chances(
    steps=9,
    sure=2,
    fits=13_900,
    falls=(
        FallsOff("rod", "Hang a longer rod, higher", 5_000, 240),
        FallsOff("panels", "Hang two pairs of longer panels", 1_999, 1),
        FallsOff("lower-tv", "Lower the TV by 12 in", 40, 90),
    ),
    sessions=(InTime(1, 19_500), InTime(2, 13_900, "Lower the TV by 12 in", 90, 45)),
    reached=93,
    reached_worst=61,
    work=Spread(320, 290, 375),
)
SURE = replace(BOOK, chances=CHANCES)
SAID = (
    "All of it fits in 7 of 10 cases; if not, these fall off first: Hang a longer rod, higher (in 3 of 10 cases, 240 "
    "points); Hang two pairs of longer panels (in 1 of 10 cases, 1 point).",
    "On average 93 % of the planned improvement is reached, in nine of ten cases 61 % or more.",
    "All work together usually takes between 4 h 50 min and 6 h 15 min, 5 h 20 min planned; 2 of 9 steps with one "
    "figure taken as sure.",
)


def test_the_sentences() -> None:
    """Whether it fits and what falls off first, what is reached, how long all of it takes."""
    assert chance_lines(SURE) == SAID


@pytest.mark.parametrize(
    ("times", "words"),
    [
        (0, "All of it hardly ever fits"),
        (14_000, "All of it fits in 7 of 10 cases"),
        (DRAWS, "All of it nearly always fits"),
    ],
)
def test_words_for_the_ends(times: int, words: str) -> None:
    """Tenths between, words at both ends."""
    assert fits_words(times) == words
    assert cases(times) in words


def test_nothing_falls_off() -> None:
    """What hardly ever falls off is not named, and where nothing does, nothing is said of what is reached."""
    rarely = replace(CHANCES, fits=19_800, falls=CHANCES.falls[2:])
    assert chance_lines(replace(BOOK, chances=rarely))[0] == "All of it nearly always fits."
    never = replace(CHANCES, fits=DRAWS, falls=(), sure=0)
    assert chance_lines(replace(BOOK, chances=never)) == (
        "All of it nearly always fits.",
        "All work together usually takes between 4 h 50 min and 6 h 15 min, 5 h 20 min planned.",
    )


def test_one_that_falls_off() -> None:
    """One is told as one."""
    one = replace(CHANCES, falls=CHANCES.falls[:1])
    assert "; if not, this falls off first: Hang" in chance_lines(replace(BOOK, chances=one))[0]


def test_no_chance_can_be_told() -> None:
    """Single figures, no sessions, no book: said, said, and nothing."""
    assert chance_lines(replace(BOOK, chances=Chances(9, 9))) == (NONE,)
    assert NONE.startswith("No chance can be told: every step has one figure only.")
    free = replace(NO_HOURS, chances=Chances(9, 2, work=CHANCES.work))
    assert chance_lines(free) == ("Without a list of hours there is no chance of fitting to tell.", SAID[2])
    assert chance_lines(BOOK) == ()
    assert chance_lines(replace(BOOK, chances=Chances(0, 0))) == ()


def test_on_the_screen() -> None:
    """Three lines at most after what more would do: two names, cases and points of the first; nothing without."""
    text = plan_text(SURE, ())
    shown = " ".join(text[text.index("CHANCES") : text.index("NOTE")].split())
    assert shown == (
        "CHANCES All of it fits in 7 of 10 cases; if not, off first: Hang a longer rod, higher (in 3 of 10 cases, 240 "
        "points); then Hang two pairs of longer panels. On average 93 % of the improvement is reached."
    )
    assert max(map(len, text.splitlines())) <= 79
    assert "CHANCES" not in plan_text(BOOK, ())


@pytest.mark.parametrize("length", [1, 3, 5, 9, 30])
def test_never_more_than_three_lines_on_the_screen(length: int) -> None:
    """With names however long: the second name makes way, then the first."""
    falls = tuple(FallsOff(f"m{at}", " ".join(["A remedy"] * length), 5_000 - at, 100) for at in range(3))
    text = plan_text(replace(BOOK, chances=replace(CHANCES, falls=falls)), ())
    lines = text[text.index("CHANCES") :].splitlines()
    shown = [line for line in lines[: next(at for at, line in enumerate(lines) if line.startswith("NOTE"))] if line]
    assert 1 <= len(shown) <= 3
    assert shown[0].startswith("CHANCES  All of it fits in 7 of 10 cases")


def test_the_sheet() -> None:
    """All of it, each session with what to leave first, and everything that ever falls off with its points."""
    found = {row["id"]: row for row in rows(sheet_of(SURE, NAME))}
    assert list(found) == ["all", "sessions", "session 1", "session 2", "falls", "rod", "panels", "lower-tv"]
    assert (found["all"]["How often"], found["all"]["What that means"]) == ("7 in 10", f"{SAID[1]} {SAID[2]}")
    assert found["session 1"]["How often"] == "nearly always"
    assert (found["session 2"]["Points"], found["session 2"]["Minutes"]) == (90, 45)
    assert found["session 2"]["What that means"] == "If time runs short, leave first: Lower the TV by 12 in."
    assert (found["rod"]["How often"], found["rod"]["Points"]) == ("3 in 10", 240)
    assert found["lower-tv"]["How often"] == "hardly ever"
    rod = sum(task.person_minutes for task in BOOK.tasks if task.candidate == "rod")
    assert found["rod"]["Minutes"] == rod > 0


def test_no_sheet_where_nothing_can_be_told() -> None:
    """It stands after what more buys, and is not there for single figures."""
    names = opened(plan_book(SURE)).sheetnames
    assert names[names.index("What more buys") + 1] == NAME == "Chances"
    assert NAME not in opened(plan_book(BOOK)).sheetnames
    assert NAME not in opened(plan_book(replace(BOOK, chances=Chances(9, 9)))).sheetnames


def test_on_the_page() -> None:
    """A section of its own with a link to it; none for a book without, nor where nothing can be told."""
    page = unescape(plan_page(SURE).decode("utf-8"))
    assert 'href="#chances"' in page
    assert all(f">{line}</p>" in page for line in SAID)
    assert page.count("ends with nothing put off") == len(CHANCES.sessions)
    for book in (BOOK, replace(BOOK, chances=Chances(9, 9))):
        assert "h-chances" not in plan_page(book).decode("utf-8")


def test_sessions_in_words() -> None:
    """Each with its day, how often it is in time, and what to leave first where that is told."""
    rows = in_time(SURE)
    assert [row.often for row in rows] == ["nearly always", "7 in 10"]
    assert [row.leave for row in rows] == ["", "If time runs short, leave first: Lower the TV by 12 in."]
    assert rows[0].name.startswith("Session 1")
    assert in_time(BOOK) == ()
    assert leave_words(InTime(1, 5)) == ""


def priced(**more: object) -> PlanBook:
    """A book whose curtain rods have three prices."""
    ranges = (PriceRange("rod", "Rod", 2, 2000, 2200, 3000, 2400), PriceRange("fit", "Fitting", 0, 50, 60, 100, 70))
    money = replace(MoneyOdds(13_000, 16_172, 2_000, 1_000, 18_000, ranges), **more)  # type: ignore[arg-type]
    return replace(BOOK, chances=replace(CHANCES, money=money))


@pytest.mark.parametrize(
    ("more", "said"),
    [
        (
            {},
            "; 10.00 is held back: it covers that but for 10.00. The money that there is covers them in 9 of 10 cases.",
        ),
        (
            {"above_minor": 900, "covered": DRAWS},
            "; 10.00 is held back: it covers that. The money that there is covers them nearly always.",
        ),
        (
            {"held_back_minor": 0},
            ", 20.00 above plan; nothing is held back. The money that there is covers them in 9 of 10 cases.",
        ),
        ({"covered": None}, "."),
    ],
)
def test_prices_beside_what_is_held_back(more: dict[str, object], said: str) -> None:
    """Between what and what, and whether what is held back covers it; without a limit only the first."""
    book = priced(**more)
    assert price_lines(book) == (f"Prices may come out between 130.00 and 161.72{said}",)
    assert chance_lines(book) == (*SAID[:2], *price_lines(book), SAID[2])
    assert price_lines(BOOK) == price_lines(SURE) == ()
    assert price_lines(book)[0] in " ".join(plan_text(book, ()).split())


def test_prices_on_the_sheets() -> None:
    """A part of its own with a row for each range; on the summary how much dearer all of it may be."""
    found = {row["id"]: row for row in rows(sheet_of(priced(), NAME))}
    assert list(found)[-3:] == ["prices", "price rod", "price fit"]
    assert (found["prices"]["How often"], found["prices"]["What that means"]) == ("9 in 10", price_lines(priced())[0])
    assert found["price rod"]["What that means"] == "2 packs at 20.00 to 30.00, likely 22.00; planned at 24.00."
    assert found["price fit"]["What that means"] == "0.50 to 1.00, likely 0.60; planned at 0.70."
    shown = list(values(sheet_of(priced(), "Summary")).values())
    assert shown[shown.index("With every price at its highest, dearer by") + 1] == 20
    assert "With every price at its highest, dearer by" not in values(sheet_of(SURE, "Summary")).values()


def test_prices_alone() -> None:
    """Where steps have one figure each, prices are told all the same."""
    book = replace(BOOK, chances=Chances(9, 9, money=priced().chances.money))  # type: ignore[union-attr]
    assert chance_lines(book) == (NONE, *price_lines(book))
    found = [row["id"] for row in rows(sheet_of(book, NAME))]
    assert found == ["all", "prices", "price rod", "price fit"]
