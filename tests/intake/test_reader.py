"""One record read field by field, and what stands inside lists and blocks."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date
from fractions import Fraction

import pytest

from budgetfix.base.problems import FileProblem, Place
from budgetfix.catalog.models import Catalog, Remedy
from budgetfix.intake.brief_bands import read_bands
from budgetfix.intake.brief_hours import as_clock, as_day, as_hours
from budgetfix.intake.catalog_changes import read_changes
from budgetfix.intake.catalog_links import link
from budgetfix.intake.catalog_raw import RawCatalog
from budgetfix.intake.catalog_steps import as_three
from budgetfix.intake.catalog_things import link_things
from budgetfix.intake.csv_rows import csv_place
from budgetfix.intake.inside import Inside, Part, at, each, named_place, only
from budgetfix.intake.raw_rows import RawCell, RawRow
from budgetfix.intake.reader import (
    Record,
    as_names,
    as_pairs,
    as_share,
    as_text,
    as_whole,
    as_yes,
    name_of,
    unknown_fields,
)
from budgetfix.room.survey import Survey

F = Fraction
PLACE = Place("a.yaml", 0, 1, 1, "line 1")


def record(value: object, problems: list[FileProblem]) -> Record:
    """A row with one cell, `field`; what stands inside it has lines of its own."""

    def inner(*keys: object) -> Place:
        return Place("a.yaml", 0, 2, 1, "/".join(map(str, keys)))

    return Record(RawRow("table", PLACE, {"field": RawCell(value, PLACE, at=inner)}), problems)


@pytest.mark.parametrize(
    ("how", "value", "found"),
    [
        (as_text, 7.0, "7"),
        (as_text, " a ", "a"),
        (as_text, date(2026, 6, 1), "2026-06-01"),
        (as_whole, "12", 12),
        (as_whole, 12.0, 12),
        (as_yes, "✓", True),
        (as_yes, True, True),
        (as_yes, 0, False),
        (as_yes, "no", False),
        (as_names, "a; b;", ("a", "b")),
        (as_names, ["a", 2], ("a", "2")),
        (as_pairs, "b:1; a c:0.5", (("a c", F(1, 2)), ("b", F(1)))),
        (as_pairs, {"b": 1, "a:b": 2}, (("a:b", F(2)), ("b", F(1)))),
        (as_share, "8.25%", F(33, 400)),
        (as_share, 0.0825, F(33, 400)),
        (as_clock, "9:05", 545),
        (as_day, "2026-06-01", date(2026, 6, 1)),
        (as_hours, "1.25", F(5, 4)),
        (as_three, {"low": 1, "likely": 2, "high": 3.5}, (F(1), F(2), F(7, 2))),
    ],
)
def test_plain_readers(how: Callable[[object], object], value: object, found: object) -> None:
    """What people type for words, numbers, lists, pairs, shares and times."""
    assert how(value) == found


@pytest.mark.parametrize(
    ("how", "value", "advice"),
    [
        (as_text, True, ""),
        (as_text, [1], ""),
        (as_whole, -1, ""),
        (as_whole, 1.5, ""),
        (as_yes, "perhaps", ""),
        (as_names, {"a": 1}, ""),
        (as_names, ["a", True], ""),
        (as_pairs, "a", "'a' has no colon"),
        (as_pairs, "a:1; a:2", "a name stands twice"),
        (as_pairs, ["a:1", ":2"], "':2' has no colon"),
        (as_share, 1.5, "a share is from 0% to 100%"),
        (as_share, "-5%", "a share is from 0% to 100%"),
        (as_clock, "24:00", "a time in quotes such as '09:00'"),
        (as_clock, 9, "a time in quotes such as '09:00'"),
        (as_day, 5, "a date such as 2026-06-06"),
        (as_hours, True, "hours are a number such as 3.5"),
        (as_three, {"low": 1}, "all three: low, likely, high; all three: low, likely, high"),
    ],
)
def test_plain_readers_refuse(how: Callable[[object], object], value: object, advice: str) -> None:
    """What they cannot take is a ValueError whose text is advice, for `Record.read` to tell."""
    with pytest.raises(ValueError, match=f"^{re.escape(advice)}$"):
        how(value)


def test_everything_inside_is_told() -> None:
    """Two bad items of a list are two problems, each with its own words and place; the default is kept."""
    problems: list[FileProblem] = []
    read = record(["1", "x", {"deep": [2, "y"]}], problems)

    def number(value: object) -> int:
        if isinstance(value, dict):
            return at("deep", value["deep"], numbers)
        return as_whole(value)

    def numbers(value: object) -> int:
        return sum(each(enumerate(value if isinstance(value, list) else []), lambda _, one: number(one)))

    assert read.read("field", -1, numbers, "numbers") == -1
    assert [(problem.found, problem.place.label) for problem in problems] == [("'x'", "1"), ("'y'", "2/deep/1")]
    assert not read.sound


def test_nothing_inside_is_called_nothing() -> None:
    """A missing value inside is `nothing`, not `None`."""
    problems: list[FileProblem] = []

    def how(_: object) -> int:
        raise Inside(Part(None, "say it", ("a",)))

    record({"a": None}, problems).read("field", 0, how, "a number")
    assert str(problems[0]) == "a.yaml [a] found nothing, wanted a number; say it"


def test_unknown_keys_inside() -> None:
    """Each unknown key is told with the nearest known one, or with all of them."""
    with pytest.raises(Inside) as caught:
        only({"sond": 1, "zz": 2, "sound": 3}, ("sound", "glaring"))
    assert caught.value.parts == (
        Part("sond", "did you mean sound?", ("sond",)),
        Part("zz", "known here: sound, glaring", ("zz",)),
    )


def test_places_of_names() -> None:
    """A name in a list has the list item's place, in a block its key's; elsewhere the cell's own."""
    listed = record(["a", "b"], []).row
    assert named_place(listed, "field", "b").label == "1"
    assert named_place(record({"b": 1}, []).row, "field", "b").label == "b"
    plain = RawRow("table", PLACE, {"field": RawCell("a; b", PLACE)}, {"gone": csv_place("a.csv", 3, 28)})
    assert named_place(plain, "field", "b") == PLACE
    assert named_place(plain, "gone", "b").label == "AB3"


def test_unknown_fields() -> None:
    """A field that nothing reads is told with the nearest known one."""
    problems: list[FileProblem] = []
    row = RawRow("table", PLACE, {"naem": RawCell("x", PLACE), "name": RawCell("y", PLACE)})
    unknown_fields(Record(row, problems), ["name"], row.cells)
    assert [str(problem) for problem in problems] == [
        "a.yaml [line 1] found 'naem', wanted a field that is known here; did you mean name?"
    ]


def test_spoilt_cells() -> None:
    """A cell that the file spoilt is told as what it is, whatever its value."""
    problems: list[FileProblem] = []
    row = RawRow("table", PLACE, {"field": RawCell("=", PLACE, "the error #REF!")})
    assert Record(row, problems).money("field", "EUR", 5) == 5
    assert str(problems[0]) == "a.yaml [line 1] found the error #REF!, wanted a price such as 12.50"


def test_bands_and_changes_without_lines() -> None:
    """Where a file has no lines of its own, the inner words are told at the cell."""
    with pytest.raises(Inside, match="no rule is called that"):
        read_bands({"a": "on"}, {}, "mm")
    problems: list[FileProblem] = []
    row = RawRow("remedies", PLACE, {"changes": RawCell("screen: botom = 5 | remove bed", PLACE)})
    assert read_changes(Record(row, problems), "changes", "mm") == ()
    assert [(problem.found, problem.place) for problem in problems] == [("'botom'", PLACE)]


def test_links_of_an_empty_catalog() -> None:
    """Nothing to link, nothing to tell; a thing that no survey has is told."""
    problems: list[FileProblem] = []
    raw = RawCatalog("c.csv", RawRow("top", PLACE))
    link(raw, Catalog(), (), (), problems)
    link_things(raw, Catalog(), Survey(), problems)
    assert problems == []
    raw.rows["remedies"] = [RawRow("remedies", PLACE, {"remedy": RawCell("m", PLACE), "on": RawCell("rug", PLACE)})]
    link_things(raw, Catalog(remedies=(Remedy(remedy="m", on="rug"),)), Survey(), problems)
    assert [problem.found for problem in problems] == ["'rug'"]


@pytest.mark.parametrize("value", [None, True, [1], {"a": 1}, "9" * 5000])
def test_a_name_that_cannot_be_read_is_none(value: object) -> None:
    """What reading it as a field refuses, one that looks for it passes over."""
    assert name_of(RawRow("table", PLACE, {"field": RawCell(value, PLACE)}), "field") == ""
    assert name_of(RawRow("table", PLACE), "field") == ""
    assert name_of(RawRow("table", PLACE, {"field": RawCell(" a  b ", PLACE)}), "field") == "a b"


@pytest.mark.parametrize("year", [1899, 2901])
def test_a_day_of_another_age_is_a_slip(year: int) -> None:
    """The day is named, since a cell that holds one is called a date only."""
    with pytest.raises(ValueError, match=f"{year}-06-01 is not in the years 1900 to 2900"):
        as_day(date(year, 6, 1))
    assert as_day(f"{year - 1 if year > 2000 else year + 1}-06-01").year in (1900, 2900)
