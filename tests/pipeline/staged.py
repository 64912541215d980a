"""The stager's bedroom staged in several houses of one week: the demo's own survey, and a smaller catalogue."""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import date, timedelta
from pathlib import Path

from tests.proof.job_files import load_yaml
from tests.scenarios import DEMO

REMEDIES = ("t13", "t14", "t15", "t20")
"""Center the bed, nightstands, headboard with prints, bed dressing."""
PRODUCTS = ("s04", "s06", "s07", "s11", "s12", "b14")
ORDERED = date(2026, 6, 1)


def stage(folder: Path, houses: Mapping[str, int], budgets: Mapping[str, float] | None = None) -> None:
    """One folder with a catalogue and a bedroom a house; `houses`: by folder, days after the demo's own dates."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "catalog.yaml").write_text(dumped(_catalog()), encoding="utf-8")
    for name, days in houses.items():
        (folder / name).mkdir()
        (folder / name / "survey.yaml").write_text(dumped(_bedroom()), encoding="utf-8")
        brief = {**_brief(days), "budget": (budgets or {}).get(name, 900)}
        (folder / name / "brief.yaml").write_text(dumped(brief), encoding="utf-8")


def dumped(value: object) -> str:
    """As JSON, which is YAML; dates as text."""
    return json.dumps(value, default=str)


def _catalog() -> dict[str, object]:
    whole = load_yaml(DEMO / "stager" / "catalog.yaml")
    return {
        **whole,
        "products": [one for one in whole["products"] if one["product"] in PRODUCTS],
        "remedies": [one for one in whole["remedies"] if one["remedy"] in REMEDIES],
    }


def _bedroom() -> dict[str, object]:
    whole = load_yaml(DEMO / "stager" / "survey.yaml")
    return {
        key: [one for one in rows if one.get("room", "bedroom") == "bedroom"] if isinstance(rows, list) else rows
        for key, rows in whole.items()
    }


def _brief(days: int) -> dict[str, object]:
    whole = load_yaml(DEMO / "stager" / "brief.yaml")

    def moved(on: object) -> str:
        return str(date.fromisoformat(str(on)) + timedelta(days=days))

    vans = {
        way: {**{key: value for key, value in slot.items() if key != "task"}, "date": moved(slot["date"])}
        for way, slot in whole["vans"].items()
    }
    hours = [{**session, "date": moved(session["date"])} for session in whole["hours"]]
    kept = {key: whole[key] for key in ("currency", "labour", "people", "load", "profile")}
    return {**kept, "vans": vans, "hours": hours, "ordered": str(ORDERED), "catalog": "../catalog.yaml"}
