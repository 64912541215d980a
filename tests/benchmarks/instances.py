"""Instances found below folders of benchmark files, each with what it should reach."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

from tests.benchmarks.as_jobs import WRITERS, house, maps, scale

HOUSES = "houses"


@dataclass(frozen=True)
class Instance:
    """One job to write. `kind`: how its answer reads (points, sessions, or points and money).

    `may_stop`: reaching the value is enough, because nobody has proven it by this solver, or it packs bins.
    """

    family: str
    name: str
    kind: str
    reference: str
    write: Callable[[Path], None]
    may_stop: bool = False

    @property
    def key(self) -> str:
        """Its name among all sets."""
        return f"{self.family}/{self.name}"


@dataclass(frozen=True)
class Family:
    """One set: instances that map, how many do not, and who is to be cited."""

    name: str
    citation: str
    instances: tuple[Instance, ...]
    unmapped: tuple[str, ...] = ()


def found(paths: Sequence[Path]) -> Iterator[Family]:
    """Every set below these files and folders, by name."""
    for path in paths:
        if path.is_file():
            yield of_file(path)
        elif (path / "optima.json").is_file():
            yield of_houses(path)
        else:
            inner = (one for one in path.iterdir() if one.is_dir() or one.suffix == ".json")
            yield from found(sorted(inner))


def of_file(path: Path) -> Family:
    """The instances of one set."""
    whole = json.loads(path.read_text(encoding="utf-8"))
    kind = whole["kind"]
    mapped = [one for one in whole["instances"] if maps(kind, one["data"])]
    return Family(
        whole["set"],
        _citation(whole),
        tuple(_instance(whole, kind, one) for one in mapped),
        tuple(one["name"] for one in whole["instances"] if one not in mapped),
    )


def _citation(whole: dict[str, Any]) -> str:
    """Who is to be cited: for the whole set, or for each instance where the set says so."""
    own = [(one["name"], one["published"].get("source")) for one in whole["instances"]]
    each = [f"{name}: {source}" for name, source in own if source]
    citation = str(whole["source"]["citation"])
    return "; ".join(each) if citation.startswith("see each") and each else citation


def _instance(whole: dict[str, Any], kind: str, one: dict[str, Any]) -> Instance:
    data = one["data"]
    reference = round(one["reference_value"] * scale(data))
    by_solver = any("HiGHS" in run["solver"] and run["status"] == "optimal" for run in one.get("verified", []))
    bins = kind == "packing" and not data["precedence"]
    return Instance(
        whole["set"],
        one["name"],
        "sessions" if kind == "packing" else "points",
        str(reference),
        partial(WRITERS[kind], data),
        bins or not by_solver,
    )


def of_houses(folder: Path) -> Family:
    """The houses of a folder, with points removed and least spend."""
    optima = json.loads((folder / "optima.json").read_text(encoding="utf-8"))
    made = []
    for name in sorted(optima):
        text = (folder / name).read_text(encoding="utf-8")
        reference = f"{optima[name]['points']} for {optima[name]['cost_minor']}"
        made.append(Instance(HOUSES, Path(name).stem, "points and money", reference, partial(house, text)))
    return Family(HOUSES, "synthetic houses of 1 to 32 rooms, proven by a separate program", tuple(made))
