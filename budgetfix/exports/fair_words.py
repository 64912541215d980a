"""What a fair plan is for each of two people, in sentences that the screen, the workbook and the page share."""

from __future__ import annotations

from budgetfix.outcome.book import PlanBook, Side


def fair_lines(book: PlanBook) -> tuple[str, ...]:
    """A sentence for each person, and one that holds the plan against half the money each; none for one household."""
    if not book.sides:
        return ()
    return (*(_side(side) for side in book.sides), *_half(book))


def fair_proof(within: str) -> str:
    """What is proven of a fair plan."""
    return f"no plan is fairer: none gives whoever comes off worse a larger part of a plan of their own{within}"


def _side(side: Side) -> str:
    name = side.person
    said = f"{name[:1].upper()}{name[1:]} gets {_share(side.gets, side.alone)} of what a plan for {name} alone would do"
    figures = f"({side.gets:,} of {side.alone:,} points by {name}'s own priorities)"
    if side.gets >= side.alone:
        return f"{said} {figures}, and gives nothing up."
    given = f", and gives up: {'; '.join(side.gives_up)}" if side.gives_up else ""
    return f"{said} {figures}{given}."


def _share(gets: int, alone: int) -> str:
    """Rounded down, so that only what is whole says 100 %; 0 where something is lost."""
    return f"{max(0, gets) * 100 // alone} %" if alone > 0 else "all" if gets >= alone else "0 %"


def _half(book: PlanBook) -> tuple[str, ...]:
    known = [side for side in book.sides if side.half is not None]
    if len(known) < len(book.sides):
        return ()
    first, second = (f"{_share(side.half or 0, side.alone)} for {side.person}" for side in book.sides)
    line = f"Half the money each, planned apart, would come to {first} and {second}"
    better = [side.person for side in book.sides if (side.half or 0) > side.gets]
    if better:
        return (f"{line}: better for {' and '.join(better)} than this plan.",)
    return (f"{line}: planned together, neither has less.",)
