"""Where the demo jobs and the starter catalogue are: inside the installed package, or beside it in a checkout."""

from __future__ import annotations

from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

SCENARIOS = ("renter", "stager", "couple")


def demo_data() -> Traversable:
    """The folder `catalog_demo`."""
    inside = files("budgetfix") / "catalog_demo"
    return inside if inside.is_dir() else Path(str(files("budgetfix"))).parent / "catalog_demo"


def demo_files(scenario: str) -> dict[str, bytes]:
    """Every file of one demo job, by name. Errors: KeyError for an unknown scenario."""
    if scenario not in SCENARIOS:
        raise KeyError(scenario)
    return {
        item.name: item.read_bytes()
        for item in sorted((demo_data() / scenario).iterdir(), key=lambda item: item.name)
        if item.is_file()
    }


def starter_catalog() -> bytes:
    """The starter catalogue, as YAML text."""
    return (demo_data() / "starter" / "catalog.yaml").read_bytes()
