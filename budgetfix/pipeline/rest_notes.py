"""What was taken from a workbook without being said in so many words, told so that it can be put right."""

from __future__ import annotations

from budgetfix.outcome.left_out import some
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
