"""One folder in one run's hands: locked against others, and what an earlier run left half moved is ended first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from budgetfix.base.moves import ASIDE
from budgetfix.exports.lock import held
from budgetfix.exports.moves import Astray, carry_on, sweep
from budgetfix.intake.houses import houses
from budgetfix.intake.unfinished import unfinished


@dataclass(frozen=True)
class Ended:
    """An interrupted run that was ended now: in which folder, whether `ahead` or back, and what was left alone."""

    folder: str
    ahead: bool
    theirs: tuple[str, ...]


@contextmanager
def holding(folder: Path, names: Sequence[str] = ()) -> Iterator[tuple[Ended, ...]]:
    """Hold a folder and its sub-folders of these names; what an earlier run left there unmoved is swept away.

    Errors: Busy, Astray, OSError; nothing is held then.
    """
    inside = [folder / name for name in names]
    with held([folder, *inside]):
        ended = settled(folder)
        for house in inside:
            ended += _ended(house)
        for one in (folder, *inside):
            sweep(one)
        yield ended


def left_over(folder: Path) -> bool:
    """Whether an earlier run left anything half moved here, or in the folder of jobs in which this one is."""
    return unfinished(folder) is not None or any(_among(*above) for above in _above(folder))


def settled(folder: Path) -> tuple[Ended, ...]:
    """End what an earlier run began here, or in the folder of jobs around it. Errors: Busy, Astray, OSError."""
    around = tuple(one for above in _above(folder) if _among(*above) for one in _ended(above[0]))
    return (*around, *_ended(folder))


def _above(folder: Path) -> tuple[tuple[Path, str], ...]:
    """The folder in which this one is, as it was typed if it can be, and its name there; both of a link and its end."""
    real = folder.resolve()
    parent = folder.parent if folder.parent.resolve() == real.parent else real.parent
    return ((parent, real.name), *(((folder.parent, folder.name),) if folder.is_symlink() else ()))


def _among(above: Path, name: str) -> bool:
    """Whether moves of the folder above are of this one, too."""
    left = unfinished(above)
    if left is None or not any(move.name.startswith(f"{name}/") for move in left.moves or ()):
        return False
    jobs = houses(above)
    return jobs is not None and name in jobs.jobs


def _ended(folder: Path) -> tuple[Ended, ...]:
    """Under the lock of every folder in question, since another run may be at it right now."""
    left = unfinished(folder)
    if left is None:
        return ()
    if left.moves is None:
        raise Astray(str(folder / ASIDE))
    inside = {(folder / move.name).parent for move in left.moves}
    with held([folder, *(one for one in inside if one.is_dir())]):
        left = unfinished(folder)
        if left is None or left.moves is None:
            return ()
        done = carry_on(folder, left.moves, left.back, left.links)
    return (Ended(str(folder), done.ahead, done.theirs),)
