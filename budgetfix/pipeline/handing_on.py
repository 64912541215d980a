"""Pieces that a fair plan leaves idle, handed on to the other houses.

Pieces are shared out by what households would do. The fair plan of two people is made of its household's share, and
may use less of it: then the house keeps what its fair plan holds, and all others share the stock once more.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from budgetfix.optimize.sharing import Answered, Memory, NoShare, Shared, settled, share
from budgetfix.optimize.stock import Packs, Stock, within

FairHeld = Callable[[Sequence[tuple[int, Packs]]], Sequence[Packs | None]]
"""By (job, ceilings of its answer): the packs that its fair plan holds; None where it has none."""


def handed_on(stock: Stock, memory: Memory, found: Shared, fair: FairHeld, stopped: Callable[[], bool]) -> Shared:
    """The best allocation beside the fair plans: every house whose fair plan holds less keeps just that.

    Unproven, with what the others had before, where the clock ended before they were answered as well again.
    """
    kept: dict[int, Answered] = {}
    while fresh := _idle(found, fair, kept):
        kept |= fresh
        alone = tuple(
            _missed(one, found.answers[at], fresh[at]) if at in fresh else one for at, one in enumerate(found.alone)
        )
        beside = _beside(memory, kept)
        again = share(stock, beside, stopped)
        if isinstance(again, NoShare) or (not again.proven and again.left > found.left):
            answers = tuple(kept.get(at, one) for at, one in enumerate(found.answers))
            return replace(found, answers=answers, alone=alone, floor=tuple(0 for _ in found.left))
        found = replace(settled(stock, beside, again, stopped), alone=alone)
    return found


def _idle(found: Shared, fair: FairHeld, kept: dict[int, Answered]) -> dict[int, Answered]:
    """Answers with what their fair plans hold, where that is less."""
    open = [at for at in range(len(found.answers)) if at not in kept]
    told = fair([(at, found.answers[at].under) for at in open])
    return {
        at: replace(found.answers[at], held=held)
        for at, held in zip(open, told, strict=True)
        if held is not None and held != found.answers[at].held
    }


def _beside(memory: Memory, kept: dict[int, Answered]) -> Memory:
    """What is known of the others; a house that keeps its pieces has one answer."""

    def ask(wanted: Sequence[tuple[int, Packs]]) -> list[Answered | None]:
        others = memory.of([one for one in wanted if one[0] not in kept])
        rest = iter(others)
        return [_same(kept[at], ceilings) if at in kept else next(rest) for at, ceilings in wanted]

    return Memory(ask)


def _same(answer: Answered, ceilings: Packs) -> Answered | None:
    return answer if within(answer.held, ceilings) else None


def _missed(alone: Packs, household: Answered, fair: Answered) -> Packs:
    """A house whose fair plan leaves a piece idle does not miss it."""
    had, keeps = dict(household.held), dict(fair.held)
    same = [
        (piece, packs if had.get(piece, 0) == keeps.get(piece, 0) else keeps.get(piece, 0)) for piece, packs in alone
    ]
    return tuple((piece, packs) for piece, packs in same if packs)
