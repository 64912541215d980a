"""What came out, in words: a line for each mutant that is left, a table by part, figures for the page."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from tests.mutants.judging import BY_TIME, KILLED, Verdict
from tests.mutants.parts import PARTS, Part
from tests.trials.page import placed

EXPLAINED = "explained"


@dataclass
class Told:
    """Counts of one part. `whole`: how many mutants there are; `left`: those that nobody noticed or explained."""

    whole: int = 0
    counts: dict[str, int] = field(default_factory=dict)
    left: list[str] = field(default_factory=list)

    @property
    def tried(self) -> int:
        return sum(self.counts.values())

    def count(self, *verdicts: str) -> int:
        """How many came out like that."""
        return sum(self.counts.get(verdict, 0) for verdict in verdicts)


def line_of(verdict: Verdict, why: str) -> str:
    """One line of a module's file: the verdict, and the mutant in words."""
    word = EXPLAINED if why and verdict.verdict not in (KILLED, BY_TIME) else verdict.verdict
    return f"{word}\t{verdict.mutant.told}\t{verdict.by}\n"


def read_lines(files: Iterable[Path]) -> Told:
    """The files of the modules of a part, put together; each survivor is printed."""
    told = Told()
    for file in files:
        first, *lines = file.read_text("utf-8").splitlines()
        told.whole += int(first.split("\t")[1])
        for line in lines:
            verdict, words, _ = line.split("\t")
            told.counts[verdict] = told.counts.get(verdict, 0) + 1
            if verdict not in (KILLED, BY_TIME, EXPLAINED):
                told.left.append(f"{verdict}: {words}")
                print(told.left[-1], flush=True)
    return told


HEADS = ("Part", "Mutants", "Tried", "Killed", "of them by time", "Explained", "Left")


def row(part: Part, one: Told) -> str:
    """Tried, killed, explained, left, as a line of the table."""
    counts = (
        one.whole,
        one.tried,
        one.count(KILLED, BY_TIME),
        one.count(BY_TIME),
        one.count(EXPLAINED),
        len(one.left),
    )
    return f"| {' | '.join((part.title, *(f'{count:,}' for count in counts)))} |"


def table(rows: Mapping[str, str], seed: int) -> str:
    """The rows of the parts, by their slugs, in the order of the parts."""
    lines = [f"| {' | '.join(HEADS)} |", f"| --- |{' ---: |' * (len(HEADS) - 1)}"]
    return "\n".join((*lines, *(rows[part.slug] for part in PARTS if part.slug in rows))) + f"\n\nSeed {seed}."


def page(text: str, told: Mapping[Part, Told], seed: int) -> str:
    """The page with the rows of these parts in its table; those of other parts stay as they are."""
    rows = {part.slug: line for part in PARTS for line in text.splitlines() if line.startswith(f"| {part.title} |")}
    rows |= {part.slug: row(part, one) for part, one in told.items()}
    return placed(text, "mutants", table(rows, seed))
