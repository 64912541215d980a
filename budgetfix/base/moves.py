"""What a run that writes several files is about to do, as a small record that outlives it when it is killed."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import PurePosixPath

ASIDE = ".budgetfix-aside"
"""The hidden folder beside the files: the new ones, whole, until they are moved, and the earlier ones."""
AHEAD, BACK = "moves.json", "back.json"
"""The record in it, by what is to be done with it: move the new files in, or the earlier ones back."""

MOVES, LINKS = "budgetfix moves", "links"
"""Keys of the record."""


@dataclass(frozen=True, slots=True)
class Stamp:
    """How a file looks from outside: bytes, and when it was last written to, in nanoseconds."""

    size: int
    changed_ns: int


@dataclass(frozen=True, slots=True)
class Move:
    """One file, by its name from the folder, with `/`. `was` None: none was there; `new` None: it is taken away."""

    name: str
    was: Stamp | None
    new: Stamp | None


@dataclass(frozen=True, slots=True)
class Link:
    """A sub-folder that is a link: its name, its own number on the disk, and when it was made, in nanoseconds.

    The system alone sets both: whoever sends a folder with a link and a record in it cannot know them.
    """

    name: str
    number: int
    made_ns: int


def moves_text(moves: tuple[Move, ...], links: tuple[Link, ...] = ()) -> bytes:
    """The record as it is written. `links`: sub-folders that moves go into though they lead elsewhere."""
    whole: dict[str, object] = {MOVES: [[move.name, _row(move.was), _row(move.new)] for move in moves]}
    if links:
        whole[LINKS] = [[link.name, link.number, link.made_ns] for link in links]
    return json.dumps(whole, ensure_ascii=True).encode()


def moves_of(data: bytes) -> tuple[Move, ...] | None:
    """The record as it was written; None for what is none of ours, or names a file outside of the folder."""
    whole = _whole(data)
    rows = whole.get(MOVES)
    if not isinstance(rows, list) or not all(_sound(row) for row in rows) or not whole.keys() <= {MOVES, LINKS}:
        return None
    return tuple(Move(name, _stamp(was), _stamp(new)) for name, was, new in rows)


def links_of(data: bytes) -> tuple[Link, ...]:
    """The links of a record; none where they are not as they are written."""
    rows = _whole(data).get(LINKS)
    if not isinstance(rows, list) or not all(_is_link(row) for row in rows):
        return ()
    return tuple(Link(*row) for row in rows)


def _whole(data: bytes) -> dict[str, object]:
    try:
        whole = json.loads(data)
    except (ValueError, RecursionError):
        return {}
    return whole if isinstance(whole, dict) else {}


def _is_link(row: object) -> bool:
    return isinstance(row, list) and len(row) == 3 and isinstance(row[0], str) and _numbers(row[1:])


def _row(stamp: Stamp | None) -> list[int] | None:
    return None if stamp is None else [stamp.size, stamp.changed_ns]


def _stamp(row: list[int] | None) -> Stamp | None:
    return None if row is None else Stamp(*row)


def _sound(row: object) -> bool:
    if not isinstance(row, list) or len(row) != 3 or not isinstance(row[0], str):
        return False
    path = PurePosixPath(row[0])
    inside = bool(path.parts) and not path.is_absolute() and ".." not in path.parts and "\0" not in row[0]
    return inside and all(_numbers(one) for one in row[1:])


def _numbers(row: object) -> bool:
    return row is None or (isinstance(row, list) and len(row) == 2 and all(type(one) is int for one in row))
