"""Printing: plain text, the user's own brackets left alone, bold only, nothing but the object under --json."""

from __future__ import annotations

import json
import shutil
import sys
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from typing import NoReturn

import typer

from budgetfix.base.signs import shown
from budgetfix.cli.streams import CannotShow, reaching

DONE, NO_PLAN, MISUSE, REFUSED, STOPPED = 0, 1, 2, 3, 4


def can_unicode() -> bool:
    """True where standard output takes any character."""
    return "utf" in (getattr(sys.stdout, "encoding", "") or "").lower()


def columns() -> int:
    """Columns to write in: 79, fewer on a narrower terminal; a pipe is as wide as it likes."""
    return min(shutil.get_terminal_size((80, 24)).columns - 1, 79)


def out(text: str) -> None:
    """Text to standard output, as narrow as the terminal, with what the encoding lacks replaced."""
    from rich.console import Console

    from budgetfix.exports.narrow import narrow

    text = narrow(_seen(text), columns())

    encoding = sys.stdout.encoding or "utf-8"
    safe = text.encode(encoding, "replace").decode(encoding)
    with _reaching():
        Console(markup=False, highlight=False, emoji=False, soft_wrap=True).print(safe, end="\n")


def err(text: str) -> None:
    """Text to standard error."""
    from rich.console import Console

    encoding = sys.stderr.encoding or "utf-8"
    safe = _seen(text).encode(encoding, "replace").decode(encoding)
    with suppress(CannotShow), reaching("stderr"):
        Console(stderr=True, markup=False, highlight=False, emoji=False, soft_wrap=True).print(safe, end="\n")


def _seen(text: str) -> str:
    """The text line by line, with whatever a terminal would obey written out: folders can be called anything."""
    return "\n".join(map(shown, text.split("\n")))


def obj(value: Mapping[str, object] | list[object]) -> None:
    """One JSON value and nothing else; a path that is no text is told by escapes, as all is where screens are plain."""
    text = json.dumps(value, ensure_ascii=not can_unicode(), indent=1)
    plain = text.encode("utf-8", "replace").decode("utf-8") == text
    with _reaching():
        sys.stdout.write((text if plain else json.dumps(value, indent=1)) + "\n")
        sys.stdout.flush()


@contextmanager
def _reaching() -> Iterator[None]:
    """While something is shown: where that cannot be, the run ends with a sentence that says why."""
    try:
        with reaching("stdout"):
            yield
    except CannotShow as why:
        stop(MISUSE, [f"What is to be shown here cannot be written: {why}. Files are as they should be."])


def stop(code: int, lines: Iterable[str]) -> NoReturn:
    """Say why on standard error, and leave."""
    for line in lines:
        err(line)
    raise typer.Exit(code)
