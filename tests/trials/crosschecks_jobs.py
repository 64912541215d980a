"""Jobs for the cross-checks: a small measured room, and random listed faults around nights on which clocks change."""

from __future__ import annotations

import json
import shutil
from datetime import date, timedelta
from pathlib import Path
from random import Random
from typing import Any

from tests.proof.every_plan import best_plan
from tests.proof.job_files import read_job
from tests.proof.random_jobs import ORDERED, draw
from tests.trials.crosschecks_child import REPO

NIGHTS = (
    date(2026, 3, 8),
    date(2026, 3, 29),
    date(2026, 10, 25),
    date(2026, 11, 1),
    date(2026, 12, 31),
    date(2028, 2, 29),
)
"""Clocks go forward and back in North America and in Europe; the year ends; a leap day."""
DEMO, SHEETS = -1, -2
"""The renter's room of the demo; a job whose catalogue is a CSV file, as a spreadsheet program saves it."""
STARTS = ("00:00", "00:30", "02:30", "03:00", "23:15")
SURVEY = """\
unit: cm
rooms:
  - {room: Zoë's room, kind: living room, ceiling: 250}
walls:
  - {wall: A, length: 400}
  - {wall: B, length: 500}
  - {wall: C, length: 400}
  - {wall: D, length: 500}
openings:
  - {name: door, what: door, wall: A, from_left: 20, width: 80, top: 200}
furniture:
  - {name: sofa, what: sofa, wall: B, from_left: 150, width: 200, depth: 90, height: 80, main: yes}
pictures:
  - {name: Straße bei Nacht, what: picture, wall: B, from_left: 200, width: 80, height: 60, bottom: 150, over: sofa}
faults:
  - {fault: İz, points: 120, what: "Old holes show: ½ dozen – naïve", where: wall A}
"""
FAULTS = "fault,points,what,safety\nstain,80,Ein Fleck überm Sofa,\ncord,40,A cord across the way,yes\n"
CATALOG = """\
currency: EUR
products:
  - {product: filler, name: Füller 1 kg, price: 4.99, pack: 1}
remedies:
  - {remedy: fill, name: Fill the old holes, answers: {İz: 0.8}, hours: 0.5, uses: {filler: 0.3}}
  - {remedy: fill-all, name: Fill and paint, answers: {İz: 1, stain: 0.5}, hours: 1.5, cost: 12.50}
  - {remedy: clip, name: Clip the cord to the skirting, answers: {cord: 1}, hours: 0.25, cost: 3.20}
"""
TABLE = """\
remedy;name;answers;cost;hours;pick_one
wash;"Den Fleck ""überm Sofa"" waschen";stain:0.5;1.20;0.5;wall
paint;Streichen;"stain:1; cord:-0.1";12.50;1.5;wall
clip;"Clip the cord; to the skirting";cord:1;3.20;0.25;
"""
BRIEF = """\
currency: EUR
budget: 20
hours:
  - {date: 2026-03-29, start: '00:30', hours: 2.5}
  - {date: 2026-10-25, start: '01:30', hours: 1}
ordered: 2026-03-28
"""


def write_room(folder: Path) -> None:
    """A measured room with letters of several languages, and sessions in the nights on which clocks change."""
    files = (("survey.yaml", SURVEY), ("faults.csv", FAULTS), ("catalog.yaml", CATALOG), ("brief.yaml", BRIEF))
    _write(folder, *files)


def _write(folder: Path, *files: tuple[str, str]) -> None:
    folder.mkdir(parents=True)
    for name, text in files:
        (folder / name).write_text(text, encoding="utf-8", newline="\n")


def write_listed(folder: Path, number: int) -> None:
    """A random job of listed faults, its dates moved next to a night on which something about the clock changes."""
    faults, catalog, brief = draw(number)
    _moved(brief, Random(f"night {number}"))
    folder.mkdir(parents=True)
    (folder / "faults.csv").write_text(faults, encoding="utf-8", newline="\n")
    for name, what in (("catalog.yaml", catalog), ("brief.yaml", brief)):
        (folder / name).write_text(json.dumps(what, indent=1), encoding="utf-8", newline="\n")


def _moved(brief: dict[str, Any], dice: Random) -> None:
    by = dice.choice(NIGHTS) - ORDERED - timedelta(days=dice.choice((1, 2)))
    brief["ordered"] = str(ORDERED + by)
    if isinstance(brief.get("finish_by"), str):
        brief["finish_by"] = str(date.fromisoformat(brief["finish_by"]) + by)
    days = set()
    for block in brief["hours"] or ():
        if isinstance(block, dict) and "date" in block:
            block["date"] = str(date.fromisoformat(block["date"]) + by)
            if block["date"] not in days:
                block["start"] = dice.choice(STARTS[:-1])
            days.add(block["date"])


def write_job(folder: Path, index: int, seed: int) -> None:
    """Job `index` of a pool: the room first, listed faults with something to do after it; or the demo."""
    if index == DEMO:
        shutil.copytree(REPO / "catalog_demo" / "renter", folder)
    elif index == SHEETS:
        _write(folder, ("faults.csv", FAULTS), ("catalog.csv", TABLE), ("brief.yaml", BRIEF))
    elif index == 0:
        write_room(folder)
    else:
        dice = Random(f"{seed}/pool/{index}")
        while True:
            write_listed(folder, dice.randrange(100_000))
            best = best_plan(read_job(folder))
            if best is not None and best.chosen:
                return
            shutil.rmtree(folder)
