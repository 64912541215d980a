"""While a command has a folder in hand: nobody else writes there, and what cannot be written is told in sentences."""

from __future__ import annotations

import errno
import os
import time
from collections.abc import Iterator, Sequence
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from budgetfix.cli import say

if TYPE_CHECKING:
    from budgetfix.pipeline.holding import Ended

WAITS, WAIT_SECONDS = 20, 0.1
"""How often to look whether another run is done, and how long to wait each time: two seconds, then it is told."""

BUSY = "Another run of budgetfix is at work in {}. Wait until it is done, then run this again. Nothing was written."
OPEN = (
    "{} is open in another program. Save it and close it there, then run this again.\n"
    "If nobody has it open, delete {}. Nothing was written."
)
MEANWHILE = "{} was changed while the plan was made: nothing was written. Save it, and run this again."
HALF = (
    "{} could be written only in part, and what was there not be put back: {}.\n"
    "Each file is whole, the earlier or the new one. Once that is mended, run this again: it ends what was begun."
)
ASTRAY = "{} is not what budgetfix leaves there, and may have come with the folder. Move it away, then run this again."
AHEAD = "An earlier run was ended while it wrote into {}. What it had begun is now done: all of its lists are there."
BACK = "An earlier run was ended while it wrote into {}. {} saved since, so its lists are as they were before it."
BACK_ALONE = "An earlier run was ended while it put the lists in {} back as they were. That is now done."
LEFT = "An earlier run was ended while it wrote into {}. Its lists are there now, but for {}, saved since: plan again."
NO_WRITING = "{} cannot be written to: {}. Nothing was written."
WHAT_TO_DO = {
    errno.ENOSPC: "Make room on that disk, then run this again.",
    errno.EDQUOT: "Make room in your share of that disk, then run this again.",
    errno.EFBIG: "Files of this size are not allowed there. Ask who looks after that disk, or copy the job elsewhere.",
    errno.EROFS: "Nothing can be written on that disk. Copy the job to another one.",
    errno.EACCES: "Close it in other programs; see to it that you may write there, or copy the job elsewhere.",
    errno.EPERM: "Close it in other programs; see to it that you may write there, or copy the job elsewhere.",
    errno.EISDIR: "Move that folder away, or give it another name, then run this again.",
    errno.ENOTDIR: "A file stands where a folder is wanted. Move it away, then run this again.",
    errno.EEXIST: "Something else stands there. Move it away, then run this again.",
    errno.ENOENT: "It was taken away meanwhile. Put it back, then run this again.",
    errno.ENAMETOOLONG: "Give the folder, or what the file is named after, a shorter name.",
    errno.EXDEV: "It is on another disk than the folder. Plan it by itself, or move it there.",
}
"""What to do about it, by the number of the error."""


@contextmanager
def at_work(folder: Path, names: Sequence[str] = ()) -> Iterator[None]:
    """Hold a folder, and its sub-folders of these names, as long as the command takes; end what an earlier run left.

    The end of the run where another one is at work there. What is no folder is held by nobody.
    """
    from budgetfix.exports.lock import Busy
    from budgetfix.pipeline.holding import holding

    with ExitStack() as stack:
        if folder.is_dir():
            with writing(folder):
                for wait in range(WAITS + 1):
                    try:
                        _tell(stack.enter_context(holding(folder, names)))
                        break
                    except Busy:
                        if wait == WAITS:
                            raise
                        time.sleep(WAIT_SECONDS)
        yield


def settle(folder: Path) -> None:
    """Before files are only read: end what an earlier run left half moved, if it did."""
    from budgetfix.pipeline.holding import left_over

    if folder.is_dir() and left_over(folder):
        with at_work(folder):
            pass


def _tell(ended: Sequence[Ended]) -> None:
    for one in ended:
        say.err(_told(one))


def _told(one: Ended) -> str:
    theirs = " and ".join(one.theirs)
    if not one.theirs:
        return (AHEAD if one.ahead else BACK_ALONE).format(one.folder)
    if one.ahead:
        return LEFT.format(one.folder, theirs)
    return BACK.format(one.folder, f"{theirs} {'was' if len(one.theirs) == 1 else 'were'}")


@contextmanager
def writing(folder: Path, meanwhile: str = MEANWHILE) -> Iterator[None]:
    """While files are written into a folder: where that cannot be, the run ends with sentences that say why.

    `meanwhile`: the sentence for a file that somebody saved in between.
    """
    from budgetfix.exports.files import HalfMoved
    from budgetfix.exports.lock import Busy
    from budgetfix.exports.moves import Astray, ChangedMeanwhile
    from budgetfix.pipeline.writing import OpenElsewhere

    try:
        yield
    except Busy as busy:
        _stop(BUSY.format(_shown(folder, busy)))
    except OpenElsewhere as opened:
        _stop(OPEN.format(*opened.args))
    except ChangedMeanwhile as changed:
        _stop(meanwhile.format(changed))
    except Astray as astray:
        _stop(ASTRAY.format(astray))
    except HalfMoved as half:
        cause = half.__cause__
        _stop(HALF.format(half, _why(cause) if isinstance(cause, OSError) else cause))
    except OSError as error:
        _stop(no_writing(folder, error))


def no_writing(folder: Path, error: OSError) -> str:
    """Which file, why, that nothing was written, and what to do.

    Of a move, the file that it was to become; of one to another disk, the folder that is there.
    """
    named = (str(name) for name in (error.filename2, error.filename) if isinstance(name, str | os.PathLike))
    place = next(named, str(folder))
    if error.errno == errno.EXDEV and error.filename2:
        place = str(Path(place).parent)
    line = NO_WRITING.format(place, _why(error))
    todo = WHAT_TO_DO.get(error.errno or 0)
    return f"{line}\n{todo}" if todo else line


def _why(error: OSError) -> str:
    return error.strerror or str(error)


def _shown(folder: Path, busy: Exception) -> str:
    """As it was typed, for that folder and those in it."""
    taken, root = Path(str(busy)), folder.resolve()
    return str(folder / taken.relative_to(root)) if taken.is_relative_to(root) else str(taken)


def _stop(text: str) -> NoReturn:
    say.stop(say.MISUSE, [text])
