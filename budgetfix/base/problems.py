"""What is wrong in a user's file: data, gathered and shown all at once, never raised one by one."""

from __future__ import annotations

from dataclasses import dataclass

from budgetfix.base.signs import SHORT, shortened

LONGEST_WANTED = 4_000
"""Signs: every kind of remedy by its name takes half of that."""


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
        place, found, todo = str(self.place), shortened(self.found, 2 * SHORT), shortened(self.todo, 4 * SHORT)
        line = f"{shortened(place, 2 * SHORT)} found {found}, wanted {shortened(self.wanted, LONGEST_WANTED)}"
        return f"{line}; {todo}" if todo else line


class FilesRefused(Exception):
    """Raised once, by the pipeline, after every file was read: holds every problem of all files."""

    def __init__(self, problems: tuple[FileProblem, ...], marked: tuple[str, ...] = ()) -> None:
        super().__init__(f"{len(problems)} problems")
        self.problems = tuple(sorted(problems))
        self.marked = marked

    def __reduce__(self) -> tuple[type[FilesRefused], tuple[tuple[FileProblem, ...], tuple[str, ...]]]:
        return FilesRefused, (self.problems, self.marked)
