"""The commands. Each parses, calls one function, prints."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from budgetfix import __version__
from budgetfix.cli import say


def _examples(*lines: str) -> str:
    """Two commands to copy, each on a line of its own; the mark in front keeps them from being filled."""
    return "\b\nExamples:\n" + "\n".join(f"  budgetfix {line}" for line in lines)


app = typer.Typer(
    name="budgetfix",
    help="Which fixes for a room, with which products, in what order, for what money and hours.",
    epilog=_examples("demo", "plan --help"),
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
)

Job = Annotated[Path, typer.Argument(metavar="JOB", help="The job folder, or a folder of jobs.")]
Json = Annotated[bool, typer.Option("--json", help="Print one JSON object and nothing else.")]
Quiet = Annotated[bool, typer.Option("--quiet", "-q", help="Print nothing but problems.")]
Budget = Annotated[str | None, typer.Option(metavar="MONEY", help="The most to spend, over the brief.")]
Hours = Annotated[str | None, typer.Option(metavar="4,3,3", help="Hours by session, over the brief.")]
Catalog = Annotated[str | None, typer.Option(metavar="FILE", help="Another catalogue.")]
RoomAfter = Annotated[
    Path | None,
    typer.Option(metavar="FILE", help="Also write the survey of the rooms as they will stand; a new .yaml file."),
]
Seconds = Annotated[float, typer.Option(metavar="N", help="Time for choosing.", min=0.0)]


def _version(wanted: bool) -> None:
    if wanted:
        say.out(f"budgetfix {__version__}")
        raise typer.Exit()


@app.callback()
def _all(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Show the version.")
    ] = False,
) -> None:
    """Measure the room, say what you may spend, and get the purchase list and the task list that do most."""


@app.command(epilog=_examples("demo", "demo my-copy --scenario stager"))
def demo(
    folder: Annotated[Path | None, typer.Argument(metavar="FOLDER", help="Where the copy goes.")] = None,
    scenario: Annotated[str, typer.Option(metavar="NAME", help="renter, stager or couple.")] = "renter",
    quiet: Quiet = False,
) -> None:
    """Copy a ready-made job into FOLDER, inspect it and plan it."""
    from budgetfix.cli.commands import run_demo

    run_demo(folder or Path(scenario), scenario, quiet)


@app.command(
    short_help="Write a blank survey, a starter catalogue and a brief.",
    epilog=_examples("start my-room", "start flat/bedroom --unit in"),
)
def start(
    folder: Annotated[Path, typer.Argument(metavar="FOLDER", help="A new or empty folder.")],
    unit: Annotated[str, typer.Option(metavar="in|cm|mm", help="What a bare number means.")] = "cm",
    currency: Annotated[str, typer.Option(metavar="CODE", help="Currency, such as EUR.")] = "EUR",
    quiet: Quiet = False,
) -> None:
    """Write a blank survey workbook, a starter catalogue with example prices, and a brief."""
    from budgetfix.cli.commands import run_start

    run_start(folder, unit, currency, quiet)


@app.command(epilog=_examples("inspect my-room", "inspect my-room --json"))
def inspect(job: Job, json: Json = False, quiet: Quiet = False) -> None:
    """Measure the room against the rules, and list what is off. Writes nothing but a marked copy."""
    from budgetfix.cli.commands import run_inspect

    run_inspect(job, json, quiet)


@app.command(
    short_help="Choose the fixes that do most, and write the lists.",
    epilog=_examples("plan my-room --budget 300 --hours 4,3", "plan my-room --room-after next/survey.yaml"),
)
def plan(
    job: Job,
    budget: Budget = None,
    hours: Hours = None,
    catalog: Catalog = None,
    seconds: Seconds = 60.0,
    room_after: RoomAfter = None,
    json: Json = False,
    quiet: Quiet = False,
) -> None:
    """Choose the fixes that do most, place them in your sessions, and write the lists into JOB."""
    from budgetfix.cli.commands import PlanWords, run_plan

    run_plan(job, PlanWords(budget, hours, catalog, seconds, json, quiet, room_after))


@app.command(
    short_help="Read the ticks back, and plan what is left.",
    epilog=_examples("replan my-room", "replan my-room --day 2026-06-07"),
)
def replan(
    job: Annotated[Path, typer.Argument(metavar="JOB", help="The job folder, with its plan.xlsx.")],
    day: Annotated[
        str | None, typer.Option(metavar="DATE", help="The day from which to plan, as 2026-06-07; default today.")
    ] = None,
    budget: Budget = None,
    hours: Hours = None,
    catalog: Catalog = None,
    seconds: Seconds = 60.0,
    room_after: RoomAfter = None,
    json: Json = False,
    quiet: Quiet = False,
) -> None:
    """Read plan.xlsx back: what was bought, paid and done. Plan the rest with what is left of money and hours.

    --budget and --hours are those of the whole job. The earlier workbook is kept beside the new one.
    """
    from budgetfix.cli.commands import PlanWords
    from budgetfix.cli.replan import run_replan

    run_replan(job, PlanWords(budget, hours, catalog, seconds, json, quiet, room_after), day)


@app.command(
    short_help="Set two plans side by side: what would more money change?",
    epilog=_examples("compare my-room --budget +100", "compare my-room --session 2026-06-14=4", "compare flat house"),
)
def compare(
    job: Annotated[Path, typer.Argument(metavar="JOB", help="A job folder.")],
    other: Annotated[Path | None, typer.Argument(metavar="OTHER", help="Another one; JOB again if none.")] = None,
    budget: Annotated[
        str | None, typer.Option(metavar="MONEY", help="For the second: the most to spend, or +100.")
    ] = None,
    hours: Annotated[str | None, typer.Option(metavar="4,3,3", help="For the second: hours by session.")] = None,
    session: Annotated[
        str | None, typer.Option(metavar="DATE=HOURS", help="For the second: one session more, for everybody.")
    ] = None,
    catalog: Annotated[str | None, typer.Option(metavar="FILE", help="For the second: another catalogue.")] = None,
    brief: Annotated[Path | None, typer.Option(metavar="FILE", help="For the second: another brief.")] = None,
    seconds: Annotated[float, typer.Option(metavar="N", help="Time for choosing each.", min=0.0)] = 60.0,
    json: Json = False,
    quiet: Quiet = False,
) -> None:
    """Plan a job twice, as it is and with what you say otherwise, or two jobs; show what differs. Writes nothing."""
    from budgetfix.cli.compare import CompareWords, run_compare

    run_compare(job, other, CompareWords(budget, hours, session, catalog, brief, seconds, json, quiet))


@app.command(epilog=_examples("rules rod-too-narrow", "rules --kinds"))
def rules(
    slug: Annotated[str | None, typer.Argument(metavar="SLUG", help="A rule, or a kind of remedy.")] = None,
    kinds: Annotated[bool, typer.Option("--kinds", help="List the kinds of remedies.")] = False,
    json: Json = False,
) -> None:
    """List the rules, or show the manual page of one."""
    from budgetfix.cli.commands import run_rules

    run_rules(slug, kinds, json)
