"""Small measured rooms cut from the demos' surveys, with some products of the starter catalogue."""

from __future__ import annotations

import tempfile
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

from ruamel.yaml import YAML

from budgetfix.exports.survey_yaml import survey_yaml
from budgetfix.intake.survey_file import read_survey
from budgetfix.room.items import TABLES, Item
from budgetfix.room.survey import Survey, moved
from tests.inspection.turned import rebuilt
from tests.laws.source import REPO
from tests.trials.laws_walk import ORDERED, Files, Raw

DEMO = REPO / "catalog_demo"
KEPT = {
    "openings": 1.0,
    "curtains": 0.7,
    "furniture": 0.3,
    "pictures": 0.45,
    "rugs": 0.6,
    "lights": 0.5,
    "sockets": 0.7,
}
"""How likely a thing of the demo stands in the small room."""
LINKS = ("over", "on", "at", "under", "socket", "also_window")
STEPS_MM = (-100.0, -50.0, -25.0, 25.0, 50.0, 100.0)


@cache
def whole_rooms() -> tuple[tuple[Survey, str], ...]:
    """Every room of the three demos."""
    found = []
    for name in ("renter", "stager", "couple"):
        survey = read_survey(DEMO / name / "survey.yaml").survey
        assert survey is not None
        found += [(survey, facts.room) for facts in survey.rooms]
    return tuple(found)


@cache
def starter() -> Raw:
    """The starter catalogue as data."""
    data = YAML(typ="safe", pure=True).load((DEMO / "starter" / "catalog.yaml").read_text("utf-8"))
    return dict(data)


def room_job(dice: Random) -> Files:
    """A random small room, some products, some money and hours."""
    for _ in range(50):
        survey = _cut(dice, *dice.choice(whole_rooms()))
        if _readable(survey):
            return Files(_brief(dice), _shelf(dice), (), survey)
    raise AssertionError("no room in fifty can be read")


def _cut(dice: Random, survey: Survey, room: str) -> Survey:
    """One room with some of its things, a few of them moved by up to 100 mm or 4 in."""
    tables: dict[str, tuple[Item, ...]] = {}
    for table in TABLES:
        mine = [one for one in survey.table(table) if one.room == room]
        tables[table] = tuple(_nudged(dice, one) for one in mine if dice.random() < KEPT[table])
    there = {one.name for things in tables.values() for one in things}
    linked = {table: tuple(_unlinked(one, there) for one in things) for table, things in tables.items()}
    return rebuilt(
        survey,
        rooms=(survey.facts(room),),
        walls=survey.walls_of(room),
        guessed=frozenset(pair for pair in survey.guessed if pair[0] in there or pair[0] == room),
        **linked,
    )


def _nudged(dice: Random, one: Item) -> Item:
    where = "rod_from_left" if hasattr(one, "rod_from_left") else "from_left"
    if dice.random() < 0.7 or getattr(one, where) < 150:
        return one
    return moved(one, **{where: getattr(one, where) + dice.choice(STEPS_MM)})


def _unlinked(one: Item, there: set[str]) -> Item:
    gone = {name: "" for name in LINKS if getattr(one, name, "") and getattr(one, name) not in there}
    return moved(one, **gone) if gone else one


def _readable(survey: Survey) -> bool:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "survey.yaml"
        path.write_bytes(survey_yaml(survey))
        found = read_survey(path)
    return found.survey == survey


def _shelf(dice: Random) -> Raw:
    whole = starter()
    products = sorted(dice.sample(range(len(whole["products"])), dice.randint(4, 18)))
    return {**whole, "currency": "EUR", "products": [whole["products"][at] for at in products]}


def _brief(dice: Random) -> Raw:
    brief: dict[str, Any] = {"currency": "EUR", "ordered": str(ORDERED)}
    brief["budget"] = dice.choice((None, 0, 20, 45, 80, 150, 300))
    brief["hours"] = dice.choice((None, [1], [2], [1.5, 1], [2, 2], [0.75, 1, 1.5]))
    if dice.random() < 0.3:
        brief["people"] = 2
    if dice.random() < 0.3:
        brief["setup_minutes"] = dice.choice((5, 10))
    if dice.random() < 0.3 and brief["budget"]:
        brief["contingency"] = dice.choice((5, 12.5))
    if dice.random() < 0.3:
        brief["profile"] = "listing"
    if dice.random() < 0.3:
        brief["limits"] = {"holes": dice.choice((0, 2, 4))}
    return brief
