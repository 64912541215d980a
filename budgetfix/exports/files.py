"""Files of one job written together: all of them, or none."""

from __future__ import annotations

import contextlib
import os
from collections.abc import Iterable, Mapping
from datetime import date
from pathlib import Path

LONG_AGO = date(2000, 1, 1)
"""The day of files whose brief names no day of ordering: the clock would change the bytes."""


def write_whole(folder: Path, files: Mapping[str, bytes], gone: Iterable[str] = ()) -> None:
    """Write all of these files, or leave all as they were. The folder is made when it is not there.

    `gone`: files of an earlier time that do not belong beside these any more; they are taken away at the end.

    Each is first written whole beside its place, then moved there; when a move fails, what was already moved is
    put back. Errors: OSError, with nothing changed.
    """
    names = sorted(files)
    folder.mkdir(parents=True, exist_ok=True)
    try:
        for name in names:
            _park(folder / name, files[name])
        _move([folder / name for name in names])
    finally:
        for name in names:
            _beside(folder / name, "part").unlink(missing_ok=True)
    for name in sorted(gone):
        (folder / name).unlink(missing_ok=True)


def _park(place: Path, data: bytes) -> None:
    place.parent.mkdir(parents=True, exist_ok=True)
    if place.is_dir():
        raise IsADirectoryError(f"{place} is a folder")
    _beside(place, "part").write_bytes(data)


def _move(places: list[Path]) -> None:
    """The earlier file of each place is kept aside until all the new ones are there."""
    done: list[Path] = []
    try:
        for place in places:
            if place.exists():
                os.replace(place, _beside(place, "old"))
            done.append(place)
            os.replace(_beside(place, "part"), place)
    except OSError:
        for place in reversed(done):
            _put_back(place)
        raise
    for place in places:
        _beside(place, "old").unlink(missing_ok=True)


def _put_back(place: Path) -> None:
    old = _beside(place, "old")
    with contextlib.suppress(OSError):
        if old.exists():
            os.replace(old, place)
        else:
            place.unlink(missing_ok=True)


def _beside(place: Path, what: str) -> Path:
    return place.with_name(f".{place.name}.{what}")
