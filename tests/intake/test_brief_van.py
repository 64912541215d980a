"""The van's slots and the photographs' hour: read, priced, and the sessions cut by the clock."""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from budgetfix.brief.models import FixedCost
from budgetfix.brief.stay import Stay
from budgetfix.brief.van import Photographs, Slot
from budgetfix.intake.brief_van import WANTED_PHOTOGRAPHS, WANTED_VANS, day_of
from tests.intake.test_brief import FIXED, read, sound

OUT = "out: {date: 2026-06-04, from: '09:00', to: '11:00', load_kg: 400.5, cost: 180.00, task: t21}"
BACK = "back: {date: 2026-07-04, from: '14:00', to: '15:30'}"
HOURS = "hours: [{date: 2026-06-03, start: '09:00', hours: 5}, {date: 2026-06-04, start: '09:00', hours: 7.5}]\n"


def test_both_slots(tmp_path: Path) -> None:
    """Windows, load, price and who loads; a slot without a load carries anything. The stay lies between them."""
    brief = sound(tmp_path, f"vans: {{{OUT}, {BACK}}}")
    assert brief.vans is not None
    assert brief.vans.slots == (
        ("out", Slot(on=date(2026, 6, 4), start_minute=540, end_minute=660, load_kg=Fraction(801, 2), cost_minor=18000,
                     task="t21")),
        ("back", Slot(on=date(2026, 7, 4), start_minute=840, end_minute=930)),
    )  # fmt: skip
    assert brief.stay == Stay(first=date(2026, 6, 4), until=date(2026, 7, 4))
    own = sound(tmp_path, f"vans: {{{OUT}, {BACK}}}\nstay: {{from: 2026-06-04, until: 2026-06-30}}").stay
    assert own is not None
    assert own.days == 26


def test_the_slots_and_paid_work_are_fixed_costs(tmp_path: Path) -> None:
    """What a slot costs, then the brief's own lines; 2 x 125 minutes at 45.01 an hour are 187.54 half up."""
    own = "{name: Take back, client: All out, people: 2, minutes: 125}"
    text = f"labour: 45.01\nvans: {{{OUT}, {BACK}}}\nfixed: [{own}]"
    assert sound(tmp_path, text).fixed == (
        FixedCost(name="Van out", cost_minor=18000, client="Van to your home"),
        FixedCost(name="Take back", cost_minor=18754, people=2, minutes=125, client="All out"),
    )


def test_a_session_is_split_where_the_window_ends(tmp_path: Path) -> None:
    """Thursday from nine to half past four is two parts, cut at eleven; Wednesday stays whole."""
    hours = sound(tmp_path, f"people: 2\n{HOURS}vans: {{{OUT}}}").hours or ()
    assert [(one.on, one.start_minute, one.length_minutes, one.minutes, one.continues) for one in hours] == [
        (date(2026, 6, 3), 540, 300, (300, 300), False),
        (date(2026, 6, 4), 540, 120, (120, 120), False),
        (date(2026, 6, 4), 660, 330, (330, 330), True),
    ]


def test_a_session_is_split_where_loading_begins_too(tmp_path: Path) -> None:
    """The van stands there from half past nine to eleven: three parts of one day; two where nobody loads."""
    late = OUT.replace("'09:00'", "'09:30'")
    hours = sound(tmp_path, f"{HOURS}vans: {{{late}}}").hours or ()
    assert [(one.start_minute, one.length_minutes, one.minutes, one.continues) for one in hours[1:]] == [
        (540, 30, (30,), False),
        (570, 90, (90,), True),
        (660, 330, (330,), True),
    ]
    bare = sound(tmp_path, f"{HOURS}vans: {{{late.replace(', task: t21', '')}}}").hours or ()
    assert [one.length_minutes for one in bare[1:]] == [120, 330]


def test_minutes_are_shared_out_by_the_clock(tmp_path: Path) -> None:
    """Ben is there for three hours from nine: two before eleven, one after; a load of 85 % holds in both parts."""
    typed = "hours: [{date: 2026-06-04, start: '09:00', people: {ann: 5, ben: 3}}]\nload: 0.85\n"
    hours = sound(tmp_path, f"{typed}vans: {{{OUT}}}").hours or ()
    assert [one.minutes for one in hours] == [(102, 102), (153, 51)]
    assert sum(sum(one.minutes) for one in hours) == 255 + 153


@pytest.mark.parametrize("start", ["11:00", "04:00"])
def test_a_window_outside_of_a_session_splits_nothing(tmp_path: Path, start: str) -> None:
    """A session that begins as the window ends, or is over as it begins, stays one."""
    hours = sound(tmp_path, f"hours: [{{date: 2026-06-04, start: '{start}', hours: 5}}]\nvans: {{{OUT}}}").hours or ()
    assert [one.length_minutes for one in hours] == [300]


def test_photographs_end_all_work(tmp_path: Path) -> None:
    """A session that would go on is cut at the hour; one that would begin after it has no minutes at all."""
    typed = "hours: [{date: 2026-06-05, start: '08:00', hours: 4}, {date: 2026-06-06, start: '09:00', hours: 2}]\n"
    brief = sound(tmp_path, f"{typed}photographs: {{date: 2026-06-05, at: '10:00'}}")
    assert brief.photographs == Photographs(on=date(2026, 6, 5), minute=600)
    assert [(one.length_minutes, one.minutes) for one in brief.hours or ()] == [(120, (120,)), (0, (0,))]


def test_finish_by_counts_sessions_as_listed(tmp_path: Path) -> None:
    """The second session of the list ends with its second part; undated sessions follow the day of the order."""
    assert sound(tmp_path, f"{HOURS}vans: {{{OUT}}}\nfinish_by: 2").finish_by == 3
    assert sound(tmp_path, f"{HOURS}vans: {{{OUT}}}\nfinish_by: 2026-06-03").finish_by == 1
    hours = sound(tmp_path, "hours: [2, 2]").hours or ()
    assert [day_of(one, date(2026, 6, 1)) for one in hours] == [date(2026, 6, 1), date(2026, 6, 2)]


SLOT = "date: 2026-06-04, from: '09:00', to: '11:00'"
DAY = "a date such as 2026-06-06"
CLOCK = "a time in quotes such as '09:00'"


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("vans: 1", f"found 1, wanted {WANTED_VANS}"),
        ("vans: {}", f"found a block of keys, wanted {WANTED_VANS}"),
        ("vans: {there: 1}", f"found 'there', wanted {WANTED_VANS}; known here: out, back"),
        ("vans: {out: 9}", f"found 9, wanted {WANTED_VANS}"),
        ("vans: {out: {date: 2026-06-04, from: nine, to: '11:00'}}", f"found 'nine', wanted {WANTED_VANS}; {CLOCK}"),
        ("vans: {out: {date: soon, from: '9:00', to: '11:00'}}", f"found 'soon', wanted {WANTED_VANS}; {DAY}"),
        (
            "vans: {out: {date: 2026-06-04, from: '11:00', to: '9:00'}}",
            f"found '9:00', wanted {WANTED_VANS}; later than `from`",
        ),
        (
            f"vans: {{out: {{{SLOT}, load_kg: lots}}}}",
            f"found 'lots', wanted {WANTED_VANS}; kilograms are a number such as 400",
        ),
        (f"vans: {{out: {{{SLOT}, load_kg: -1}}}}", f"found -1, wanted {WANTED_VANS}; kilograms cannot be below 0"),
        (f"vans: {{out: {{{SLOT}, load: 1}}}}", f"found 'load', wanted {WANTED_VANS}; did you mean load_kg?"),
        (
            f"vans: {{out: {{{SLOT}}}, back: {{date: 2026-06-01, from: '9:00', to: '11:00'}}}}",
            f"found a date, wanted {WANTED_VANS}; no earlier than the slot out",
        ),
        ("photographs: friday", f"found 'friday', wanted {WANTED_PHOTOGRAPHS}"),
        ("photographs: {date: 2026-06-05}", f"found nothing, wanted {WANTED_PHOTOGRAPHS}; {CLOCK}"),
        (
            "fixed: [{name: a, people: 2, minutes: 60}]",
            f"found 60, wanted {FIXED}; minutes are priced by `labour`, which the brief does not say",
        ),
        (
            "fixed: [{name: a, cost: 3, minutes: 60}]",
            f"found 3, wanted {FIXED}; either a cost, or people and minutes",
        ),
    ],
)  # fmt: skip
def test_wrong_values(tmp_path: Path, typed: str, said: str) -> None:
    """Each message, word for word: where, what was found, what was wanted."""
    assert read(tmp_path, typed)[1] == [f"brief.yaml [line 1] {said}"]


def test_a_van_may_have_a_name(tmp_path: Path) -> None:
    """Where a firm has several; slots without one are all of one van."""
    named = sound(tmp_path, "vans: {out: {date: 2026-06-04, from: '09:00', to: '11:00', van: white van}}").vans
    assert named is not None
    assert named.out is not None
    assert named.out.van == "white van"
