"""A flat before it is handed back: only what a landlord looks at is planned, and it is planned whole."""

from __future__ import annotations

import time
from datetime import date
from pathlib import Path

from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.portfolio_reading import read_jobs
from budgetfix.pipeline.reading import JobOptions, read

SURVEY = """
unit: mm
home: {rent: true, before_1978: false}
rooms: [{room: living room, kind: living room, ceiling: 2500, floor: hard}]
walls:
  - {wall: A, length: 3600}
  - {wall: B, length: 4500}
openings:
  - {name: hall door, wall: A, from_left: 250, width: 800, what: door, top: 2010, opens: in, hinge: left}
  - {name: window, wall: C, from_left: 1000, width: 1400, what: window, bottom: 900, top: 2100}
curtains:
  - {name: curtain, window: window, rod_height: 2160, rod_from_left: 950, rod_width: 1500, panel_width: 900, hem: 70}
furniture:
  - {name: sofa, what: sofa, wall: B, from_left: 1300, width: 2100, depth: 880, height: 800, seat: 430}
pictures:
  - {name: print, what: picture, wall: B, from_left: 2100, width: 300, height: 300, bottom: 1700, over: sofa}
marks:
  - {what: plug hole, wall: D, from_left: 1200, bottom: 1500, things: 4}
  - {what: scuff, wall: D, from_left: 2200, bottom: 600, things: 3}
"""
BRIEF = """
currency: EUR
budget: 25
hours: [3, 3]
profile: {profile}
lease: {{keep: {{curtain: in the cellar}}}}
"""
CATALOG = """
products:
  - {product: tub, name: Filler, what: filler, price: 6}
  - {product: tin, name: Touch-up paint, what: paint, price: 14}
"""


def plan(folder: Path, profile: str = "handing-back", brief: str = BRIEF) -> PlanBook:
    """The plan of the flat under a profile."""
    (folder / "survey.yaml").write_text(SURVEY, encoding="utf-8")
    (folder / "brief.yaml").write_text(brief.format(profile=profile), encoding="utf-8")
    (folder / "catalog.yaml").write_text(CATALOG, encoding="utf-8")
    book = planned(read(folder, JobOptions(), date(2027, 11, 1)), Wish(60.0, time.monotonic))
    assert isinstance(book, PlanBook)
    assert book.proven
    return book


def test_repairs_before_moving_out(tmp_path: Path) -> None:
    """Holes are filled and dry before they are painted in the next session, scuffs are cleaned, the landlord's curtain
    goes back; whether the print hangs well is asked by nobody.
    """
    book = plan(tmp_path)
    assert {row.id for row in book.chosen} == {"fill-holes/room", "clean-marks/room", "put-back/curtain"}
    assert (book.points_after, book.hazards_after) == (0, 0)
    rules = {row.rule for row in book.faults if not row.listed}
    assert rules == {"old-holes-show"}
    sessions = [task.session for task in book.tasks if task.candidate == "fill-holes/room"]
    assert sessions == [1, 2]
    assert {line.product for line in book.money if line.kind == "product"} == {"tub", "tin"}


def test_in_daily_life_nothing_is_put_back(tmp_path: Path) -> None:
    """Under the living profile the kept curtain is no fault, and looks count again."""
    book = plan(tmp_path, "living")
    ids = {*(row.id for row in book.chosen), *(row.id for row in book.left_out)}
    assert not any(id.startswith("put-back") for id in ids)
    assert {row.rule for row in book.faults} - {"old-holes-show"}


def test_without_a_lease_only_the_walls_count(tmp_path: Path) -> None:
    """Nothing is kept, so nothing is missing: holes and scuffs are what is left to do."""
    book = plan(tmp_path, brief="currency: EUR\nbudget: 25\nhours: [3, 3]\nprofile: {profile}\n")
    assert {row.id for row in book.chosen} == {"fill-holes/room", "clean-marks/room"}


def test_marks_typed_in_a_sheet_are_what_hangs(tmp_path: Path) -> None:
    """A line of marks is a patch on its wall: holes by what made them, other marks by their sort; 20 mm if not said."""
    plan(tmp_path)
    survey = read(tmp_path, JobOptions(), date(2027, 11, 1)).survey
    assert survey is not None
    holes, scuffs = survey.named["Marks 1"][1], survey.named["Marks 2"][1]
    assert dict(holes) | {"what": "old holes", "fixing": "screws", "things": 4, "width": 20.0} == dict(holes)
    assert dict(scuffs) | {"what": "mark", "group": "scuff", "things": 3, "height": 20.0} == dict(scuffs)


def test_among_several_jobs_the_flat_has_the_same_faults(tmp_path: Path) -> None:
    """What of the landlord's is not back is a fault in a folder of jobs, too."""
    (tmp_path / "flat").mkdir()
    plan(tmp_path / "flat")
    alone = read(tmp_path / "flat", JobOptions(), date(2027, 11, 1))
    (among,) = read_jobs(tmp_path, ["flat"], date(2027, 11, 1))
    assert among.faults == alone.faults
    assert len(among.faults) == 1
