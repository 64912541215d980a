"""Words in, words out, an exit code: the only folder that prints and reads the clock."""

from __future__ import annotations


def main() -> None:
    """Run the command line."""
    from budgetfix.cli.streams import open_all

    open_all()
    from budgetfix.cli.app import app

    app(prog_name="budgetfix")
