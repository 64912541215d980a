"""What an earlier plan has left behind, as far as framing what is left of the job must know it."""

from __future__ import annotations

from dataclasses import dataclass

from budgetfix.inspection.inspect import Seen
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.survey import Survey


@dataclass(frozen=True)
class Rest:
    """Sessions count from 0, as in the brief; those that are gone keep their places and have no minutes.

    `told` False: nothing was ticked or typed, so all of the job is left.
    """

    told: bool = False
    live: int = 0
    """The first session that is not gone."""
    day: int = 0
    """The day, as sessions without dates count them, on which new goods are ordered."""
    prepaid: tuple[tuple[str, int], ...] = ()
    """(tool, sessions of hire that are paid for): those not used yet, and those of `held`."""
    in_hand: tuple[tuple[str, str, int], ...] = ()
    """(candidate, product, first session in which it is there) of goods bought for that candidate: no errand."""
    arriving: tuple[tuple[str, int], ...] = ()
    """(product, first session in which what was bought is there)."""
    sold_out: tuple[tuple[str, str], ...] = ()
    """(product, why in words) of which no more can be had."""
    earliest: tuple[tuple[str, int, int], ...] = ()
    """(candidate, place of the step among those left, first session) where a wait counts from a step that is done."""
    begun: tuple[str, ...] = ()
    """Candidates of which some steps are done: the others must be."""
    done: tuple[Candidate, ...] = ()
    """Candidates that are done, whole."""
    whole: tuple[Candidate, ...] = ()
    """The begun ones with all their steps."""
    origin: Survey | None = None
    """The rooms before anything was done."""
    first: tuple[Seen, ...] = ()
    """What was found then, block by block: what the guard measures against."""
    held: tuple[tuple[str, tuple[int, ...]], ...] = ()
    """(tool, whole sessions, as `wholes` counts them) of hire that is paid for and in use in a session not gone."""

    covered: tuple[tuple[str, str], ...] = ()
    """(candidate, product) where what is on hand is enough for it beside all others that may have it: no new order."""

    unended: tuple[str, ...] = ()
    """Candidates that are begun and cannot be ended: they stay as they are, with all that they have taken."""

    def needs_order(self, candidate: str, product: str) -> bool:
        """True where a candidate's goods are still to be ordered and fetched, as far as this rest says."""
        return self.there(candidate, product) is None and (candidate, product) not in self.covered

    def there(self, candidate: str, product: str) -> int | None:
        """First session in which goods bought for a candidate are there; None where none were."""
        return next((at for id, name, at in self.in_hand if (id, name) == (candidate, product)), None)


WHOLE_JOB = Rest()
"""Where nothing came before."""
