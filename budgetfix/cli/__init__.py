"""Words in, words out, an exit code: the only folder that prints and reads the clock."""

from __future__ import annotations

import sys

BROKEN_OFF = 130
"""The exit code after Ctrl-C: 128 and the number of the signal, as shells have it."""


def main() -> None:
    """Run the command line. Ctrl-C ends it without a word, also while it is being loaded."""
    try:
        from budgetfix.cli.streams import open_all

        open_all()
        from budgetfix.cli.app import app

        app(prog_name="budgetfix")
    except KeyboardInterrupt:
        sys.exit(BROKEN_OFF)
