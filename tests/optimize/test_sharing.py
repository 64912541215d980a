from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from budgetfix.optimize.sharing import Answered, Memory, NoShare, Shared, share
from budgetfix.optimize.stock import Packs, Stock
from tests.optimize.many_houses import Jobs, Offer, best, random_houses, slow, too_many

ONE_LAMP = {"lamp": 1}
LAMP: Packs = (("lamp", 1),)
WANTS_IT = (Offer((0, 10, 50), LAMP), Offer((0, 30, 0), ()))
"""With the lamp 10 points are left, without it 30."""
WANTS_IT_MORE = (Offer((0, 10, 50), LAMP), Offer((0, 80, 0), ()))


def never() -> bool:
    """A clock that never ends."""
    return False


def shared(jobs: Jobs, stock: Stock) -> Shared | NoShare:
    """The search over lists of plans."""
    return share(stock, Memory(lambda wanted: best(jobs, wanted)), never)


def held(found: Shared | NoShare) -> list[Packs]:
    """What each job holds in the end."""
    assert isinstance(found, Shared)
    return [one.held for one in found.answers]


@pytest.mark.parametrize("block", range(10))
def test_it_agrees_with_every_way_to_share(block: int) -> None:
    """On six hundred portfolios drawn at random the sums are those of every plan beside every other."""
    for number in range(block * 60, block * 60 + 60):
        jobs, stock = random_houses(number)
        found, right = shared(jobs, stock), slow(jobs, stock)
        if right is None:
            assert isinstance(found, NoShare), number
            assert found.proven, number
        else:
            assert isinstance(found, Shared), number
            assert (found.left, found.proven) == (right, True), number
            assert not too_many(stock, held(found)), number


@given(st.integers(1000, 10**9))
@settings(deadline=None, max_examples=200)
def test_no_piece_stands_in_two_houses_on_one_day(number: int) -> None:
    """Whatever is shared, on no day are more packs of a piece in houses than there are."""
    jobs, stock = random_houses(number)
    found = shared(jobs, stock)
    assert isinstance(found, NoShare) or not too_many(stock, held(found))


def test_it_goes_where_it_does_more() -> None:
    """Of two houses on the same days the one that loses more without the lamp has it, whichever comes first."""
    same_days = Stock(ONE_LAMP, ((3, 10), (4, 11)))
    assert held(shared((WANTS_IT, WANTS_IT_MORE), same_days)) == [(), LAMP]
    assert held(shared((WANTS_IT_MORE, WANTS_IT), same_days)) == [LAMP, ()]


def test_dates_that_touch_share_a_day() -> None:
    """Taken back on the tenth it stands there on the tenth; on the eleventh the next house may have it."""
    assert held(shared((WANTS_IT, WANTS_IT_MORE), Stock(ONE_LAMP, ((3, 10), (10, 12))))) == [(), LAMP]
    assert held(shared((WANTS_IT, WANTS_IT_MORE), Stock(ONE_LAMP, ((3, 10), (11, 12))))) == [LAMP, LAMP]


def test_of_two_there_two_may_stand() -> None:
    """Two lamps serve two of three houses in one week; the one that loses least goes without."""
    week = ((1, 7),) * 3
    assert held(shared((WANTS_IT_MORE, WANTS_IT, WANTS_IT_MORE), Stock({"lamp": 2}, week))) == [LAMP, (), LAMP]
    assert held(shared((WANTS_IT_MORE, WANTS_IT, WANTS_IT_MORE), Stock({"lamp": 3}, week))) == [LAMP, LAMP, LAMP]


def test_one_that_wants_a_pair_may_get_one() -> None:
    """With three there and two wanted in each of two houses, one house gets its pair and the other a single."""
    pair = (Offer((0, 0, 0), (("lamp", 2),)), Offer((0, 20, 0), LAMP), Offer((0, 90, 0), ()))
    assert held(shared((pair, pair), Stock({"lamp": 3}, ((1, 7), (1, 7))))) == [(("lamp", 2),), LAMP]


def test_a_job_without_dates_holds_its_pieces_on_all_days() -> None:
    """What is not dated stands in the way of every other house, and of another one without dates."""
    assert held(shared((WANTS_IT, WANTS_IT_MORE), Stock(ONE_LAMP, (None, (300, 310))))) == [(), LAMP]
    assert held(shared((WANTS_IT, WANTS_IT_MORE), Stock(ONE_LAMP, (None, None)))) == [(), LAMP]


def test_three_that_meet_two_by_two() -> None:
    """The first and the last house do not meet, so both may have what the middle one goes without."""
    chain = Stock(ONE_LAMP, ((1, 5), (4, 9), (8, 12)))
    assert held(shared((WANTS_IT, WANTS_IT, WANTS_IT), chain)) == [LAMP, (), LAMP]


def test_hazards_come_first_in_the_sum() -> None:
    """One hazard point weighs more than any points."""
    safer = (Offer((0, 10, 0), LAMP), Offer((1, 0, 0), ()))
    nicer = (Offer((0, 0, 0), LAMP), Offer((0, 900, 0), ()))
    assert held(shared((nicer, safer), Stock(ONE_LAMP, ((1, 5), (1, 5))))) == [(), LAMP]


def test_two_that_cannot_do_without_it() -> None:
    """Each has a plan alone, not both: the piece, the day and the jobs are told."""
    must = (Offer((0, 0, 0), LAMP),)
    found = shared((must, must), Stock(ONE_LAMP, ((1, 5), (4, 8))))
    assert isinstance(found, NoShare)
    assert found.proven
    assert [(one.piece, one.day, one.jobs) for one in found.conflicts] == [("lamp", 4, (0, 1))]


def test_a_job_without_any_plan_is_named() -> None:
    """A job that has no plan of its own is told by its place."""
    found = shared((WANTS_IT, ()), Stock(ONE_LAMP, (None, None)))
    assert found == NoShare(True, (1,))


def test_nothing_is_asked_twice() -> None:
    """No job is answered twice under the same ceilings, nor under ceilings that its answer keeps anyway."""
    for number in range(100):
        jobs, stock = random_houses(number)
        asked: list[tuple[int, Packs]] = []

        def ask(
            wanted: Sequence[tuple[int, Packs]], jobs: Jobs = jobs, asked: list[tuple[int, Packs]] = asked
        ) -> list[Answered | None]:
            asked += wanted
            return best(jobs, wanted)

        share(stock, Memory(ask), never)
        assert len(asked) == len(set(asked))


def test_the_clock_leaves_a_plan_that_holds_and_a_floor() -> None:
    """Stopped at once, what is left to the later jobs stands in hand, with the bound of all pieces for everybody."""
    jobs, stock = (WANTS_IT, WANTS_IT_MORE), Stock(ONE_LAMP, ((3, 10), (4, 11)))
    found = share(stock, Memory(lambda wanted: best(jobs, wanted)), lambda: True)
    assert isinstance(found, Shared)
    assert not found.proven
    assert held(found) == [LAMP, ()]
    assert (found.left, found.floor) == ((0, 90, 50), (0, 20, 100))


def test_an_answer_without_proof_proves_nothing() -> None:
    """Where a job itself was stopped, the sum has its floor, and is not called best."""

    def ask(wanted: Sequence[tuple[int, Packs]]) -> list[Answered | None]:
        return [Answered((0, 10, 0), (0, 4 if at else 10, 0), LAMP) for at, _ in wanted]

    found = share(Stock(ONE_LAMP, ((1, 2), (3, 4))), Memory(ask), never)
    assert isinstance(found, Shared)
    assert (found.left, found.floor, found.proven) == ((0, 20, 0), (0, 14, 0), False)


def test_a_job_of_which_nothing_is_known_yet() -> None:
    """The clock ended before one job had any plan: there is none, and no proof that there is none."""

    def ask(wanted: Sequence[tuple[int, Packs]]) -> list[Answered | None]:
        return [Answered(None if at else (0, 1, 0), (0, 0, 0)) for at, _ in wanted]

    found = share(Stock(ONE_LAMP, (None, None)), Memory(ask), never)
    assert found == NoShare(False)
