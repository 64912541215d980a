"""The brief: what the household wants and allows, from brief.yaml, the survey's first sheet and the command line."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from budgetfix.base.problems import FileProblem, Place
from budgetfix.brief.models import BandChange, Brief, Errand, Person
from budgetfix.intake.brief_over import Over
from budgetfix.intake.brief_yaml import brief_row, read_brief

TODAY = date(2026, 6, 1)
UNITS = {"rod-too-narrow": "mm", "screen-glare": "yes", "picture-too-small": "ratio"}
F = Fraction


def read(
    folder: Path,
    text: str | None,
    sheet: Mapping[str, tuple[object, Place]] | None = None,
    over: Over = Over(),  # noqa: B008 - frozen
    unit: str = "cm",
) -> tuple[Brief, list[str]]:
    """A brief and its problems as people read them."""
    path = folder / "brief.yaml"
    if text is not None:
        path.write_text(text, encoding="utf-8")
    problems: list[FileProblem] = []
    row = brief_row(path if text is not None else None, sheet or {}, over, problems)
    brief = read_brief(row, problems, TODAY, unit, UNITS)
    return brief, [str(problem) for problem in sorted(problems)]


def sound(folder: Path, text: str) -> Brief:
    """A brief that has no problems."""
    brief, problems = read(folder, text)
    assert problems == []
    return brief


def test_nothing_said(tmp_path: Path) -> None:
    """Without a brief there is one person, no limit of money or hours, nothing held back; the order is of today."""
    brief, problems = read(tmp_path, None)
    assert problems == []
    assert brief == Brief(ordered=TODAY)
    assert (brief.budget_minor, brief.hours, brief.people) == (None, None, (Person(name="1"),))
    assert (brief.load, brief.contingency_share, brief.setup_minutes, brief.profile) == (F(1), F(0), 0, "living")


def test_everything_said(tmp_path: Path) -> None:
    """Each key of a full brief lands in its field, exactly."""
    brief = sound(
        tmp_path,
        """
currency: eur
budget: 137.80
hours: [4, 2.5]
people: {ann: null, ben: {not: [ladder, drill]}}
limits: {holes: 6, kg: 12.5}
must: [m1, g2]
never: longer-rod
priorities: {rod-too-narrow: 1.5, rug size: 2, f3: 0}
bands: {rod-too-narrow: {sound: [20, null], glaring: 0}, screen-glare: off}
profile: listing
contingency: 10%
load: 0.85
setup_minutes: 15
errands: [{errand: shops, name: One round of shops, shops: [diy, home], hours: 1.25}]
finish_by: 2
ordered: 2026-05-30
may_worsen: [rod-too-narrow]
hazards_first: false
catalog: ../catalog.xlsx
labour: 45.00
fixed: [{name: Van out, cost: 180.00}, {name: Van back, cost: 0.5}]
""",
    )
    assert (brief.currency, brief.budget_minor, brief.contingency_share) == ("EUR", 13780, F(1, 10))
    assert brief.held_back_minor() == 1378
    assert brief.people == (Person(name="ann"), Person(name="ben", refuses=("ladder", "drill")))
    assert [hours.minutes for hours in brief.hours or ()] == [(204, 204), (127, 127)]
    assert brief.limits == (("holes", F(6)), ("kg", F(25, 2)))
    assert (brief.must, brief.must_all, brief.never) == (("m1", "g2"), False, ("longer-rod",))
    assert brief.priorities == (("f3", F(0)), ("rod-too-narrow", F(3, 2)), ("rug size", F(2)))
    assert brief.bands == (
        BandChange(rule="rod-too-narrow", sound=(200.0, None), glaring=(0.0, None)),
        BandChange(rule="screen-glare", switch=False),
    )
    assert (brief.profile, brief.load, brief.setup_minutes) == ("listing", F(17, 20), 15)
    assert brief.errands == (Errand(errand="shops", name="One round of shops", shops=("diy", "home"), minutes=75),)
    assert (brief.finish_by, brief.ordered, brief.may_worsen) == (2, date(2026, 5, 30), ("rod-too-narrow",))
    assert (brief.hazards_first, brief.catalog) == (False, "../catalog.xlsx")
    assert (brief.labour_minor_hour, brief.labour_minor(11), brief.fixed_minor) == (4500, 825, 18050)


def test_sessions_round_down_after_load(tmp_path: Path) -> None:
    """2.5 h at 0.85 are 127.5 minutes: 127 may be planned. The session still lasts 150 minutes by the clock."""
    hours = sound(tmp_path, "hours: [2.5]\nload: 0.85\n").hours
    assert hours is not None
    assert (hours[0].minutes, hours[0].length_minutes) == ((127,), 150)


def test_undated_sessions_are_a_day_apart(tmp_path: Path) -> None:
    """The first stands on day 0, the next on day 1, each from the day's first minute."""
    hours = sound(tmp_path, "hours: [4, 3, 30]\n").hours or ()
    assert [(each.day, each.start_minute, each.on) for each in hours] == [(0, 0, None), (1, 0, None), (2, 0, None)]
    assert hours[2].minutes == (1800,)


@pytest.mark.parametrize(("typed", "sessions"), [("null", None), ("[]", ()), ("~", None)])
def test_no_limit_and_no_time(tmp_path: Path, typed: str, sessions: tuple[()] | None) -> None:
    """`hours: null` sets no limit of hours; `hours: []` leaves no time at all."""
    assert sound(tmp_path, f"hours: {typed}\n").hours == sessions


def test_dated_sessions(tmp_path: Path) -> None:
    """Days count from the order; each person has hours of their own, and who is not named has none that day."""
    brief = sound(
        tmp_path,
        """
ordered: 2026-06-01
hours:
  - {date: 2026-06-06, start: '10:30', people: {ann: 3, ben: 1.5}, quiet: true}
  - {date: 2026-06-07, people: {ann: 2}}
""",
    )
    first, second = brief.hours or ()
    assert [person.name for person in brief.people] == ["ann", "ben"]
    assert (first.minutes, first.day, first.start_minute, first.quiet) == ((180, 90), 5, 630, True)
    assert (first.length_minutes, first.on) == (180, date(2026, 6, 6))
    assert (second.minutes, second.day, second.start_minute, second.quiet) == ((120, 0), 6, 540, False)


def test_dates_before_the_order_count_from_the_first_session(tmp_path: Path) -> None:
    """A list of hours that has begun before the day of the order still has a day 0."""
    hours = sound(
        tmp_path, "ordered: 2026-06-20\nhours: [{date: 2026-06-06, hours: 1}, {date: 2026-06-08, hours: 1}]\n"
    )
    assert [each.day for each in hours.hours or ()] == [0, 2]


def test_json_dates_are_text(tmp_path: Path) -> None:
    """JSON has no dates: '2026-06-06' in quotes is one."""
    brief = sound(tmp_path, '{"ordered": "2026-06-01", "hours": [{"date": "2026-06-06", "people": {"ann": 3}}],'
                  ' "finish_by": "2026-06-06"}')  # fmt: skip
    assert ([each.day for each in brief.hours or ()], brief.finish_by) == ([5], 1)


def test_numbers_of_people(tmp_path: Path) -> None:
    """`people: 2` are two people, each with the listed hours."""
    brief = sound(tmp_path, "people: 2\nhours: [3]\n")
    assert [person.name for person in brief.people] == ["1", "2"]
    assert [each.minutes for each in brief.hours or ()] == [(180, 180)]


def test_names_in_the_hours_are_the_people(tmp_path: Path) -> None:
    """Where every session names its people, `people: 1` adds nobody to them."""
    brief = sound(tmp_path, "people: 1\nhours: [{date: 2026-06-06, people: {ann: 3, ben: 1}}]\n")
    assert [person.name for person in brief.people] == ["ann", "ben"]


@pytest.mark.parametrize(
    ("typed", "number"),
    [("2026-06-07", 2), ("2026-06-06", 1), ("2026-06-05", 0), ("2026-12-31", 3), ("3", 3), ("1", 1)],
)
def test_finish_by(tmp_path: Path, typed: str, number: int) -> None:
    """A date becomes the number of the last session on or before it; a number stays."""
    dates = "[{date: 2026-06-06, hours: 1}, {date: 2026-06-07, hours: 1}, {date: 2026-06-13, hours: 1}]"
    assert sound(tmp_path, f"hours: {dates}\nfinish_by: {typed}\n").finish_by == number


def test_finish_by_without_dates_or_hours(tmp_path: Path) -> None:
    """Undated sessions follow the day of the order, one a day; without a list of hours there is nothing to finish."""
    assert sound(tmp_path, "ordered: 2026-06-01\nhours: [1, 1, 1]\nfinish_by: 2026-06-02\n").finish_by == 2
    assert sound(tmp_path, "hours: null\nfinish_by: 2026-06-02\n").finish_by is None


def test_must_all(tmp_path: Path) -> None:
    """`must: all` is a word of its own, not a remedy."""
    brief = sound(tmp_path, "must: all\n")
    assert (brief.must, brief.must_all) == ((), True)


@pytest.mark.parametrize(("typed", "fixed", "share"), [("40.00", 4000, 0), ("40", 4000, 0), ("12.5%", 0, F(1, 8))])
def test_contingency(tmp_path: Path, typed: str, fixed: int, share: Fraction) -> None:
    """An amount of money, or a share of the budget."""
    brief = sound(tmp_path, f"contingency: {typed}\n")
    assert (brief.contingency_minor, brief.contingency_share) == (fixed, share)


@pytest.mark.parametrize(
    ("typed", "change"),
    [
        ("{rod-too-narrow: {sound: [20, null]}}", BandChange(rule="rod-too-narrow", sound=(200.0, None))),
        (
            "{rod-too-narrow: {sound: [6 in, 30], glaring: [0, 50]}}",
            BandChange(rule="rod-too-narrow", sound=(152.4, 300.0), glaring=(0.0, 500.0)),
        ),
        (
            "{picture-too-small: {sound: [0.5, 0.75], glaring: 0.6}}",
            None,
        ),
        (
            "{picture-too-small: {sound: [null, 0.75], glaring: 1}}",
            BandChange(rule="picture-too-small", sound=(None, 0.75), glaring=(None, 1.0)),
        ),
        ("{screen-glare: on}", BandChange(rule="screen-glare", switch=True)),
        ("{screen-glare: Off}", BandChange(rule="screen-glare", switch=False)),
        ("{screen-glare: false}", BandChange(rule="screen-glare", switch=False)),
    ],
)
def test_bands(tmp_path: Path, typed: str, change: BandChange | None) -> None:
    """Lengths in the survey's unit, other figures plain; one glaring limit goes to the side that has a sound edge."""
    brief, problems = read(tmp_path, f"bands: {typed}\n")
    if change is None:
        assert problems == [f"brief.yaml [line 1] found 0.6, wanted {BANDS}; glaring lies outside of sound"]
    else:
        assert (problems, brief.bands) == ([], (change,))


def test_errands_with_three_figures(tmp_path: Path) -> None:
    """The mean of low, likely and high, rounded up; an errand without a name is called by its number."""
    brief = sound(tmp_path, "errands: [{hours: {low: 1, likely: 1.25, high: 2}, people: 2}]\n")
    assert brief.errands == (Errand(errand="errand-1", name="errand-1", shops=(), minutes=85, people=2),)


def test_brief_over_sheet_and_options_over_both(tmp_path: Path) -> None:
    """The survey's sheet is overridden by brief.yaml field by field, both by the command line."""
    at = Place("survey.xlsx", 1, 8, 2, "Start!B8")
    sheet: dict[str, tuple[object, Place]] = {
        "budget": (200, at), "hours": ("3; 2", at), "people": (2, at), "holes": (4, at), "currency": ("EUR", at),
    }  # fmt: skip
    brief, problems = read(tmp_path, None, sheet)
    assert problems == []
    assert (brief.budget_minor, [each.minutes for each in brief.hours or ()]) == (20000, [(180, 180), (120, 120)])
    assert brief.limits == (("holes", F(4)),)
    brief, problems = read(tmp_path, "budget: null\nhours: [1]\nlimits: {holes: 2}\n", sheet)
    assert problems == []
    assert (brief.budget_minor, [each.minutes for each in brief.hours or ()]) == (None, [(60, 60)])
    assert (brief.limits, brief.currency) == ((("holes", F(2)),), "EUR")
    over = Over(budget="99.50", hours="4,3,3", catalog="other.csv")
    brief, problems = read(tmp_path, "budget: 1\nhours: [1]\n", sheet, over)
    assert problems == []
    assert (brief.budget_minor, len(brief.hours or ()), brief.catalog) == (9950, 3, "other.csv")


def test_hours_with_semicolons_keep_their_commas(tmp_path: Path) -> None:
    """`3,5; 2` is no three sessions: the comma is told."""
    _, problems = read(tmp_path, "hours: 3,5; 2\n")
    assert problems == [f"brief.yaml [line 1] found '3,5', wanted {HOURS}; write a point, not a comma: 3.5"]


HOURS = "hours such as [4, 3], or [{date: 2026-06-06, start: '09:00', people: {ann: 3}}], or null"
PEOPLE = "a number of people, or {ben: {not: [ladder]}}"
BANDS = "bands such as {rod-too-narrow: {sound: [200, null], glaring: 0}, screen-glare: off}"
ERRANDS = "errands such as [{errand: shops, name: One round of shops, shops: [diy], hours: 2}]"
FIXED = "costs such as [{name: Van, cost: 180.00}, {name: Take back, people: 2, minutes: 120}]"


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("bugdet: 5", "found 'bugdet', wanted a field that is known here; did you mean budget?"),
        ("budget: 12,5", "found '12,5', wanted a price such as 12.50; write a point, not a comma: 12.5"),
        ("budget: -1", "found -1, wanted a price such as 12.50; money cannot be below 0"),
        ("budget: true", "found yes, wanted a price such as 12.50"),
        ("budget: 1.005", "found 1.005, wanted a price such as 12.50; USD has 2 digits after the point"),
        ("currency: EURO", "found 'EURO', wanted a currency code such as EUR"),
        ("hours: [x]", f"found 'x', wanted {HOURS}; hours are a number such as 3.5"),
        ("hours: [-1]", f"found -1, wanted {HOURS}; hours cannot be below 0"),
        ("hours: {a: 1}", f"found a block of keys, wanted {HOURS}"),
        ("hours: [{date: soon, hours: 1}]", f"found 'soon', wanted {HOURS}; a date such as 2026-06-06"),
        (
            "hours: [{date: 2026-06-06, start: noon, hours: 1}]",
            f"found 'noon', wanted {HOURS}; a time in quotes such as '09:00'",
        ),
        ("hours: [{dat: 1}]", f"found 'dat', wanted {HOURS}; did you mean date?"),
        (
            "hours: [{date: 2026-06-07, hours: 1}, {date: 2026-06-06, hours: 1}]",
            f"found '2026-06-06', wanted {HOURS}; sessions go forwards in time",
        ),
        ("people: 7", f"found 7, wanted {PEOPLE}; 6 people at most; put two who always work together down as one"),
        ("people: 0", f"found 0, wanted {PEOPLE}; there must be somebody"),
        (
            "people: {ben: {hates: [drill]}}",
            f"found 'hates', wanted {PEOPLE}; known here: not, priorities",
        ),
        (
            "people: {ann: {priorities: {light: 2}}, ben: {}}",
            f"found a block of keys, wanted {PEOPLE}; `priorities` for two people, not 1; "
            "write `priorities: {}` for who has none",
        ),
        (
            "people: {ann: {priorities: {light: 5}}, ben: {priorities: {}}}",
            f"found 5, wanted {PEOPLE}; light: it cannot be above 3",
        ),
        (
            "limits: {holes: -1}",
            "found -1, wanted pairs such as name:1.5; other:2; holes: it cannot be below 0",
        ),
        (
            "priorities: {f1: 4}",
            "found 4, wanted priorities such as {rod-too-narrow: 1.5}; f1: it cannot be above 3",
        ),
        (
            "bands: {rod-too-narow: on}",
            f"found 'rod-too-narow', wanted {BANDS}; no rule is called that; did you mean rod-too-narrow?",
        ),
        (
            "bands: {rod-too-narrow: wide}",
            f"found 'wide', wanted {BANDS}; on, off, or {{sound: [low, high], glaring: limit}}",
        ),
        (
            "bands: {rod-too-narrow: {sound: [30, 20]}}",
            f"found a list, wanted {BANDS}; the lower end stands first",
        ),
        (
            "bands: {rod-too-narrow: {sound: 20}}",
            f"found 20, wanted {BANDS}; two ends such as [200, null]",
        ),
        (
            "bands: {rod-too-narrow: {glaring: far}}",
            f"found 'far', wanted {BANDS}; 'far' cannot be read as a length",
        ),
        ("profile: party", "found 'party', wanted one of: living, listing, handing-back"),
        ("contingency: 10,5%", "found '10,5%', wanted 40.00 or 10%; write a point, not a comma: 10.5"),
        ("contingency: 120%", "found '120%', wanted 40.00 or 10%; a share is from 0% to 100%"),
        ("load: 0", "found 0, wanted a share above 0"),
        ("load: 1.2", "found 1.2, wanted a share such as 0.85; a share is from 0% to 100%"),
        ("setup_minutes: 7.5", "found 7.5, wanted a whole number, 0 or more"),
        ("errands: [{hour: 2}]", f"found 'hour', wanted {ERRANDS}; did you mean hours?"),
        ("errands: [{errand: a, hours: x}]", f"found 'x', wanted {ERRANDS}"),
        ("errands: [{errand: a}, {errand: a}]", f"found 'a', wanted {ERRANDS}; each errand once"),
        ("errands: [{errand: a, people: 0}]", f"found 0, wanted {ERRANDS}; 1 or more people"),
        (
            "fixed: [{name: van, price: 3}]",
            f"found 'price', wanted {FIXED}; known here: name, client, cost, people, minutes",
        ),
        ("fixed: [{name: van, cost: x}]", f"found 'x', wanted {FIXED}"),
        ("finish_by: 0", "found 0, wanted a date, or the number of a session; sessions count from 1"),
        (
            "finish_by: 2026-13-01",
            "found '2026-13-01', wanted a date, or the number of a session; a date such as 2026-06-06",
        ),
        ("ordered: today", "found 'today', wanted a date; a date such as 2026-06-06"),
        ("hazards_first: maybe", "found 'maybe', wanted yes or no"),
        ("must: {a: 1}", "found a block of keys, wanted names separated by ;"),
    ],
)
def test_what_cannot_be_read(tmp_path: Path, typed: str, said: str) -> None:
    """Each message, word for word: where, what was found, what was wanted, what to do."""
    _, problems = read(tmp_path, f"# a brief\n{typed}\n")
    assert problems == [f"brief.yaml [line 2] {said}"]


def test_every_place_inside(tmp_path: Path) -> None:
    """What stands inside a list or a block is told with its own words on its own line, all of it."""
    text = """
hours:
  - {date: 2026-06-06, people: {ann: 3, ben: x}}
  - {date: 2026-06-07, people: {ann: 3}, start: 9}
bands:
  rod-too-narow: on
  rod-too-narrow:
    sound: [far, null]
never: [a, [b]]
"""
    assert read(tmp_path, text)[1] == [
        f"brief.yaml [line 3] found 'x', wanted {HOURS}; hours are a number such as 3.5",
        f"brief.yaml [line 4] found 9, wanted {HOURS}; a time in quotes such as '09:00'",
        f"brief.yaml [line 6] found 'rod-too-narow', wanted {BANDS}; "
        "no rule is called that; did you mean rod-too-narrow?",
        f"brief.yaml [line 8] found 'far', wanted {BANDS}; 'far' cannot be read as a length",
        "brief.yaml [line 9] found a list, wanted names separated by ;",
    ]


def test_every_problem_is_told_at_once(tmp_path: Path) -> None:
    """Three mistakes give three lines, in the order of the file; options name themselves."""
    _, problems = read(tmp_path, "load: 2\nprofile: x\n", over=Over(budget="a lot"))
    assert problems == [
        "--budget found 'a lot', wanted a price such as 12.50",
        "brief.yaml [line 1] found 2, wanted a share such as 0.85; a share is from 0% to 100%",
        "brief.yaml [line 2] found 'x', wanted one of: living, listing, handing-back",
    ]
