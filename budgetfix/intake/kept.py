"""The earlier workbook of a job, to be kept beside the new one under the next free name."""

from __future__ import annotations

import errno
from itertools import count
from pathlib import Path

from budgetfix.base.problems import FileProblem
from budgetfix.intake.door import book_bytes

KEPT = "plan-kept-{}.xlsx"


def to_keep(plan_xlsx: Path, made: bytes) -> dict[str, bytes]:
    """The earlier workbook by the name that it gets; nothing where there is none, or the new one is the same.

    `made`: the new workbook. Errors: OSError where the earlier one cannot be had whole: what is typed there would go.
    """
    if not plan_xlsx.exists():
        return {}
    problems: list[FileProblem] = []
    old = book_bytes(plan_xlsx, problems)
    if old is None:
        raise OSError(
            errno.EIO, "; ".join(f"found {one.found}, wanted {one.wanted}" for one in problems), str(plan_xlsx)
        )
    if old == made:
        return {}
    names = (KEPT.format(number) for number in count(1))
    return {next(name for name in names if not (plan_xlsx.parent / name).exists()): old}


def as_it_is(plan_xlsx: Path) -> bytes | None:
    """The workbook, to be read back and to be held against what it is later on; None for none."""
    return _whole(plan_xlsx) if plan_xlsx.exists() else None


def changed(plan_xlsx: Path, read: bytes) -> bool:
    """True where the workbook is not as it was when it was read."""
    return not plan_xlsx.exists() or _whole(plan_xlsx) != read


def _whole(plan_xlsx: Path) -> bytes:
    """What stands there; nothing for what is no workbook that we take, which then is refused as none."""
    return book_bytes(plan_xlsx, []) or b""
