"""Standard streams that are shut, or lead to a full disk."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager

NAMES = ("stdin", "stdout", "stderr")


class CannotShow(Exception):
    """What is to be shown cannot be written; the text is the system's reason."""


def open_all() -> None:
    """Streams that were shut before the command began lead nowhere.

    Else Python has none there, and the next file that is opened takes the number of what is printed by native code.
    Processes that are begun get them as well, and as with Python's own nobody has to close them.
    """
    for number, name in enumerate(NAMES):
        if getattr(sys, name) is None:
            nowhere = os.open(os.devnull, os.O_RDWR)
            os.set_inheritable(nowhere, True)
            setattr(sys, name, os.fdopen(nowhere, "w" if number else "r", encoding="utf-8", closefd=False))


@contextmanager
def reaching(name: str) -> Iterator[None]:
    """While something is written to `stdout` or `stderr`. Errors: CannotShow, and that stream leads nowhere after it.

    A reader that has gone, such as `head`, is none: the command line ends quietly then.
    """
    try:
        yield
    except BrokenPipeError:
        raise
    except OSError as error:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, NAMES.index(name))
        os.close(nowhere)
        raise CannotShow(error.strerror or str(error)) from error
