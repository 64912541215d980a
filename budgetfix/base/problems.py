"""What is wrong in a user's file: data, gathered and shown all at once, never raised one by one."""

from __future__ import annotations

from dataclasses import dataclass

from budgetfix.base.signs import shown

LONGEST_WORDS = 400
"""Letters of what was found: a cell may hold 32,767 of them (Excel specifications and limits)."""


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """Where a value stands: `catalog.xlsx [Products!F17]` or `brief.yaml [line 8]`.

    `row` and `column` count from 1 and sort the places; `label` is what people read inside the brackets.
    """

    file: str
    sheet_index: int = 0
    row: int = 0
    column: int = 0
    label: str = ""

    def __str__(self) -> str:
        return f"{self.file} [{self.label}]" if self.label else self.file


@dataclass(frozen=True, slots=True, order=True)
class FileProblem:
    """One problem in one place: what was found, what was wanted, and (if it helps) what to do."""

    place: Place
    found: str
    wanted: str
    todo: str = ""

    def __str__(self) -> str:
        line = f"{_in_line(str(self.place))} found {_in_short(self.found)}, wanted {_in_line(self.wanted)}"
        return f"{line}; {_in_short(self.todo)}" if self.todo else line


def _in_line(text: str) -> str:
    """Whatever was found, a problem is one line: of a screen, and of what a script reads; nothing in it is obeyed."""
    return shown(" ".join(text.split()))


def _in_short(text: str) -> str:
    line = _in_line(text)
    return line if len(line) <= LONGEST_WORDS else f"{line[:LONGEST_WORDS]} ..."


class FilesRefused(Exception):
    """Raised once, by the pipeline, after every file was read: holds every problem of all files."""

    def __init__(self, problems: tuple[FileProblem, ...], marked: tuple[str, ...] = ()) -> None:
        super().__init__(f"{len(problems)} problems")
        self.problems = tuple(sorted(problems))
        self.marked = marked

    def __reduce__(self) -> tuple[type[FilesRefused], tuple[tuple[FileProblem, ...], tuple[str, ...]]]:
        return FilesRefused, (self.problems, self.marked)
