"""Mutants that no test can or need notice, each with its reason: `explained.toml` beside this file."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from pathlib import Path

from tests.mutants.operators import Mutant
from tests.mutants.touched import ROOT

HOME = Path(__file__).with_name("explained.toml")


@dataclass(frozen=True)
class Explained:
    """`changes` of one line of a module, by the words of its mutants; the reason holds for each of them."""

    module: str
    line: str
    changes: tuple[str, ...]
    reason: str

    def covers(self, mutant: Mutant) -> bool:
        """True where the reason is for this mutant."""
        return mutant.module == self.module and mutant.text == self.line and mutant.change in self.changes


def explained(path: Path = HOME) -> tuple[Explained, ...]:
    """All of them, as they are written."""
    told = tomllib.loads(path.read_text("utf-8")).get("explained", [])
    return tuple(Explained(one["module"], one["line"], tuple(one["changes"]), one["reason"]) for one in told)


def reason(mutant: Mutant, known: tuple[Explained, ...]) -> str:
    """Why nobody needs to notice it; empty where nothing is said."""
    return next((one.reason for one in known if one.covers(mutant)), "")


def stale(known: tuple[Explained, ...]) -> tuple[str, ...]:
    """Entries whose line is no longer in its module, or that say nothing."""
    return tuple(
        f"{one.module}: {one.line}"
        for one in known
        if not one.reason.strip() or one.line not in {line.strip() for line in _lines(one.module)}
    )


def _lines(module: str) -> list[str]:
    return (ROOT / module).read_text("utf-8").splitlines()
