"""Every rule's case file, read aloud: a room, a start that is a fault, and what changes do to it.

A case file `cases/<slug>.yaml` holds: `rule`, `subject`; `room` with `home`, `rooms`, `walls`
and the tables of the survey, in its own field names and millimetres (there is one room, `r`); `start`, the
change that makes the fault; and `cases`, each with a `name`, a `change` to the room (instead of the start) and the
`severity` that it leaves: a number or fraction, `worse` (than the start) or `silent`. A change names things: `gone`,
or new values of fields, or a new thing with `add: <table>`; `home`, `facts` and `walls` (a list: all new)
change what no remedy can.
`cannot` names which of the eight usual cases cannot be, each with the reason; a law holds that all others are there.
"""

from __future__ import annotations

import copy
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from budgetfix.brief.models import Brief
from budgetfix.inspection.inspect import judge_one
from budgetfix.inspection.judging import Judge
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.room.items import ITEM_OF, TABLES
from budgetfix.room.survey import Household, RoomFacts, Survey, Wall

FILES = sorted((Path(__file__).parent / "cases").glob("*.yaml"))
Facts = dict[str, Any]
NEAR = Fraction(1, 1000)
"""Severities in the files may be rounded."""


def read(path: Path) -> Facts:
    """One case file as plain data."""
    data: Facts = YAML(typ="safe", pure=True).load(path.read_text(encoding="utf-8"))
    return data


def changed(room: Facts, change: Facts) -> Facts:
    """The room after a change."""
    room = copy.deepcopy(room)
    for name, new in change.items():
        if name == "home":
            room["home"].update(new)
        elif name == "facts":
            room["rooms"][0].update(new)
        elif name == "walls":
            room["walls"] = (
                new if isinstance(new, list) else [{**wall, **new.get(wall["wall"], {})} for wall in room["walls"]]
            )
        elif isinstance(new, dict) and "add" in new:
            fields = {key: value for key, value in new.items() if key != "add"}
            room.setdefault(new["add"], []).append({"name": name, **fields})
        else:
            assert any(item["name"] == name for table in TABLES for item in room.get(table, ())), name
            for table in TABLES:
                kept = [item for item in room.get(table, ()) if item["name"] != name or new != "gone"]
                room[table] = [{**item, **new} if item["name"] == name else item for item in kept]
    return room


def survey_of(room: Facts) -> Survey:
    """The survey that a case file describes."""
    tables: dict[str, Any] = {
        table: tuple(ITEM_OF[table].model_validate({"room": "r", **item}) for item in room.get(table, ()))
        for table in TABLES
    }
    return Survey(
        household=Household.model_validate(room["home"]),
        rooms=tuple(RoomFacts.model_validate({"room": "r", **facts}) for facts in room["rooms"]),
        walls=tuple(Wall.model_validate({"room": "r", **wall}) for wall in room["walls"]),
        **tables,
    )


def severity(data: Facts, change: Facts) -> Fraction | None:
    """What the rule makes of the room after a change; None where it is silent."""
    rule = next(rule for rule in RULES if rule.slug == data["rule"])
    survey = survey_of(changed(data["room"], change))
    look = Look(survey, "r")
    if data["subject"] not in rule.subjects(look):
        return None
    found = judge_one(Judge(rule, rule.band, rule.weight), Look(survey, "r"), data["subject"], Brief())
    return None if found is None else found.severity


def cases() -> list[tuple[str, Facts, Facts]]:
    """(id, file, case) of every case of every rule."""
    found = []
    for path in FILES:
        data = read(path)
        found += [(f"{path.stem}: {case['name']}", data, case) for case in data["cases"]]
    return found


@pytest.mark.parametrize(
    ("data", "case"), [(data, case) for _, data, case in cases()], ids=[name for name, _, _ in cases()]
)
def test_each_case_leaves_the_severity_it_says(data: Facts, case: Facts) -> None:
    """Just inside and at the edge a thing is sound, just outside it is not, and so on down the file."""
    found, wanted = severity(data, case.get("change", {})), str(case["severity"])
    if wanted == "silent":
        assert found is None
    elif wanted == "worse":
        start = severity(data, data.get("start", {}))
        assert found is not None
        assert start is not None
        assert found > start
    else:
        assert found is not None
        assert abs(found - Fraction(wanted)) <= NEAR


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_each_file_starts_with_a_fault_of_its_own_rule(path: Path) -> None:
    """What the cures cure and what is made worse is a fault to begin with."""
    data = read(path)
    start = severity(data, data.get("start", {}))
    assert path.stem == data["rule"]
    assert start is not None
    assert start > 0
