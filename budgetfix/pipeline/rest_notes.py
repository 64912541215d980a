"""What was taken from a workbook without being said in so many words, told so that it can be put right."""

from __future__ import annotations

from budgetfix.base.days import day_words
from budgetfix.base.money import write_money
from budgetfix.outcome.left_out import some
from budgetfix.outcome.since import Since
from budgetfix.outcome.so_far import SoFar
from budgetfix.pipeline.rest_money import Paid


def notes_of(paid: Paid) -> tuple[str, ...]:
    """Sentences on lines that count as bought without a tick: by a sum that was typed, and by work that is done."""
    names = {one.planned.id: one.planned.line.name for one in paid.lines}
    told = ((paid.summed, "a sum is typed there"), (paid.counted, "work that needs it is done"))
    return tuple(
        f"Counted as bought though not ticked, because {why}: {some([names[id] for id in ids])}."
        for ids, why in told
        if ids
    )


def typed_notes(so_far: SoFar, currency: str) -> tuple[str, ...]:
    """Sentences on what was typed beside no tick, or beside a word that says otherwise."""
    lines = [
        f"{one.planned.line.name}: sold out, and {write_money(one.paid_minor, currency)} was typed as paid; it counts."
        for one in so_far.lines
        if one.state == "sold out" and one.paid_minor
    ]
    steps = [
        f"{one.planned.task.name}: {one.real_minutes} minutes are typed, but it is not ticked as done. They come off "
        "their session, and it is still to do."
        for one in so_far.steps
        if one.real_minutes and not one.done
    ]
    return (*lines, *steps)


def unused_notes(since: Since) -> tuple[str, ...]:
    """What was bought and is not used, each with the last day to give it back where that is known."""
    words = [name if day is None else f"{name} (until {day_words(day)})" for name, day in since.unused]
    return (f"Bought, not used; see whether it can be given back: {', '.join(words)}.",) if words else ()
