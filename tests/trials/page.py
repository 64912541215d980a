"""The figures of a run, as Markdown, and their places in a page of the documents."""

from __future__ import annotations

import re

from tests.trials.trial import Result


class NoPlace(Exception):
    """The page has no place for the figures of that name."""


def figures(result: Result) -> str:
    """The promises of one trial as a table, and below it what was measured, if anything was."""
    rows: list[tuple[str, ...]] = [("What is promised", "Tried", "Broken", "Seen")]
    rows += [(row.promise, f"{row.tried:,}", f"{row.broken:,}", row.seen) for row in result.rows]
    tables = [_table(rows, "lrrl")]
    if result.measured:
        tables.append(_table(list(result.measured), "l" + "r" * (len(result.measured[0]) - 1)))
    return "\n\n".join(tables)


def placed(page: str, name: str, text: str) -> str:
    """The page with what stands between the marks of `name` replaced. Errors: NoPlace."""
    begin, end = f"<!-- figures: {name} -->", "<!-- end -->"
    found = re.search(f"{re.escape(begin)}.*?{re.escape(end)}", page, re.DOTALL)
    if found is None:
        raise NoPlace(name)
    return f"{page[: found.start()]}{begin}\n{text}\n{end}{page[found.end() :]}"


def promises(page: str, name: str) -> tuple[str, ...]:
    """The promises whose figures stand in the page under `name`, in their order. Errors: NoPlace."""
    found = re.search(f"<!-- figures: {re.escape(name)} -->\n(.*?)<!-- end -->", page, re.DOTALL)
    if found is None:
        raise NoPlace(name)
    first = found.group(1).split("\n\n")[0]
    lines = [line for line in first.splitlines() if line.startswith("| ")]
    return tuple(line.split(" | ")[0].removeprefix("| ") for line in lines[2:])


def _table(rows: list[tuple[str, ...]], sides: str) -> str:
    heads = ("---:" if side == "r" else "---" for side in sides)
    return "\n".join(f"| {' | '.join(row)} |" for row in (rows[0], tuple(heads), *rows[1:]))
