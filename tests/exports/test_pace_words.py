"""How quick a household is, in words: the arithmetic, and the line for the next brief."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from budgetfix.exports.pace_words import arithmetic, copied, kind_name, pace_line, pace_rows, times_words
from budgetfix.exports.plan_screen import plan_text
from budgetfix.intake.brief_pace import read_pace
from budgetfix.outcome.paces import Paces, Took, learnt
from tests.exports.plan_sheets import rows, sheet_of
from tests.exports.sample_book import BOOK

RODS = [Took("longer-rod", 30, 45)] * 3
PACES = learnt((("strap", Fraction(6, 5)),), RODS)
NEXT = "pace: {all: 1.21, longer-rod: 1.39, strap: 1.20}"


def test_the_arithmetic() -> None:
    """Steps, planned and real minutes, their ratio, and how much of it counts."""
    household, rods = PACES.learnt
    assert arithmetic(household) == (
        "3 steps, planned 90, real 135: 1.50 times; counted as (4 × 1.00 + 3 × 1.50) / 7 = 1.21."
    )
    assert arithmetic(rods) == "3 steps, planned 90, real 135: 1.50 times; counted as (2 × 1.21 + 3 × 1.50) / 5 = 1.39."


def test_what_was_kept_within_limits_says_so() -> None:
    """A pace beyond twice the usual is kept at twice."""
    found = learnt((), [Took("strap", 10, 100)] * 40).learnt[1]
    assert arithmetic(found).endswith("= 9.62, kept at 2.00.")


def test_the_line_for_the_next_brief() -> None:
    """The household first, then kinds by name; a brief reads it back to the hundredth."""
    assert copied(PACES) == NEXT
    pairs = dict(read_pace({"all": 1.21, "longer-rod": 1.39, "strap": 1.2}))
    assert all(abs(times - dict(PACES.pace)[kind]) <= Fraction(1, 200) for kind, times in pairs.items())


def test_names_and_figures() -> None:
    """Kinds are called as in the manual, one that nobody knows by its word; halves go up."""
    assert kind_name("all") == "All work"
    assert kind_name("longer-rod").startswith("Hang a longer rod")
    assert kind_name("strange") == "strange"
    assert times_words(Fraction(1385, 1000)) == "1.39"


def test_on_the_screen_and_on_the_sheet() -> None:
    """One sentence on the screen, a row for each pace on the sheet; nothing for a household of the usual pace."""
    book = replace(BOOK, paces=PACES)
    shown = " ".join(plan_text(book, ()).split())
    assert f"PACE {pace_line(PACES)}" in shown
    assert pace_line(PACES).endswith(f"learnt from 3 done steps. For the next room: {NEXT}")
    found = {row["id"]: row for row in rows(sheet_of(book, "Chances"))}
    assert list(found) == ["paces", "pace all", "pace longer-rod", "pace strap"]
    assert found["paces"]["What that means"] == f"For the next room's brief: {NEXT}"
    assert (found["pace longer-rod"]["How often"], found["pace longer-rod"]["Minutes"]) == ("1.39", 135)
    assert found["pace strap"]["What that means"] == "As the brief says."
    assert "PACE" not in plan_text(BOOK, ())


def test_only_what_the_brief_says() -> None:
    """Without done steps there is no arithmetic."""
    paces = Paces(Fraction(6, 5))
    assert (
        pace_line(paces)
        == "Minutes are 1.20 times the usual ones, as the brief says. For the next room: pace: {all: 1.20}"
    )
    assert [row.words for row in pace_rows(paces)] == ["As the brief says."]
