"""Measured findings as trees: asked, branched, exact, guarded."""

from __future__ import annotations

from itertools import chain, combinations

from budgetfix.framing.crumbs import Alone, alone, without_crumbs, without_shadows
from budgetfix.framing.frame import frame
from budgetfix.framing.measured import MeasuredTree, changed_by, gone, measured_tree, touched
from budgetfix.inspection.guard import worse_than
from budgetfix.inspection.inspect import look_again, look_at
from budgetfix.inspection.look import Question
from budgetfix.optimize.growth import GrownTree
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.remedies.clashes import clashes
from budgetfix.room.survey import Change
from tests.framing.small_jobs import measured_ground

BASE = measured_ground()
assert BASE.survey is not None
ROOM = BASE.survey


def one(id: str, *changes: Change, own: bool = True) -> Candidate:
    """A candidate of ten minutes."""
    return Candidate(id=id, kind="move", name=id, changes=changes, work=(Work(id, 10, 10, 10, 10),), own=own)


MOVES = (
    one("hang-lower", Change("pictures", "print", (("bottom", 980.0),))),
    one("hang-low-left", Change("pictures", "print", (("bottom", 980.0), ("from_left", 1500.0)))),
    one("rug-in", Change("rugs", "rug", (("gap", 700.0),))),
    one("sofa-along", Change("furniture", "sofa", (("from_left", 900.0),))),
    one("strap", Change("furniture", "bookcase", (("fixed", True),))),
    one("take-rug", Change("rugs", "rug", remove=True)),
)
FRAMED = frame(BASE, MOVES, clashes(ROOM, MOVES))


def subsets(ids: tuple[str, ...]) -> list[frozenset[str]]:
    """Every set of these ids that excludes nothing in itself."""
    options = {option.id: option for option in FRAMED.problem.options}
    found = chain.from_iterable(combinations(ids, size) for size in range(len(ids) + 1))
    return [frozenset(ids) for ids in found if not any(b in options[a].excludes for a in ids for b in ids)]


def test_every_leaf_is_what_an_inspection_of_the_changed_room_finds() -> None:
    """For every set that can be chosen, each tree's exact leaf equals the block looked at in the changed room."""
    against = {option.id: frozenset(option.excludes) for option in FRAMED.problem.options}
    for tree in FRAMED.trees:
        grown = GrownTree(measured_tree(tree), against)
        for chosen in subsets(tuple(FRAMED.candidates)):
            after = changed_by(ROOM, FRAMED.candidates, chosen)
            away = gone(ROOM, after, tree.block.room)
            seen = look_again(tree.block, after, BASE.brief, tree.before, away, tree.absences)
            leaf = grown.exact(chosen)
            assert tree.look(chosen) == seen
            assert (leaf.hazards, leaf.points) == (seen.hazards, seen.points), (tree.block.name, sorted(chosen))


def test_a_rug_taken_away_keeps_its_points() -> None:
    """Emptying the room cures nothing: the rug's findings stay, because a bare floor is a fault too."""
    tree = next(tree for tree in FRAMED.trees if tree.block.name == "rug size")
    before, after = tree.look(frozenset()), tree.look(frozenset({"take-rug"}))
    assert after.points >= before.points > 0
    assert any(finding.kept for finding in after.findings)


def test_only_what_touches_a_question_branches() -> None:
    """The rug has no say in how the picture hangs; the sofa has."""
    tree = next(tree for tree in FRAMED.trees if tree.block.name == "picture group")
    touching = tree.touching(frozenset(), frozenset())
    assert "rug-in" not in touching
    assert {"hang-lower", "sofa-along"} <= set(touching)


def test_a_question_is_touched_before_and_after() -> None:
    """A picture that leaves wall B touches what was asked of wall B, and one that comes to it too."""
    question = Question("pictures", "r", None, None, "B")
    leaves = Change("pictures", "print", (("wall", "C"),))
    assert touched(ROOM, (leaves,), (question,), "r")
    assert not touched(ROOM, (leaves,), (Question("pictures", "r", None, None, "D"),), "r")


def test_the_guard_names_what_is_left_more_than_a_quarter_worse() -> None:
    """A picture hung at 2.2 m is worse; with the rule in may_worsen it is nobody's business."""
    tree = next(tree for tree in FRAMED.trees if tree.block.name == "picture group")
    up = changed_by(ROOM, {"up": one("up", Change("pictures", "print", (("bottom", 1900.0),)))}, ("up",))
    seen = look_at(tree.block, up, BASE.brief)
    assert [finding.rule for finding in worse_than(tree.before, seen, ())] == ["art-off-height"]
    assert worse_than(tree.before, seen, ("art-off-height",)) == ()


def test_what_is_gone_is_told() -> None:
    """The removed rug is the one thing that is gone."""
    after = changed_by(ROOM, FRAMED.candidates, ("take-rug",))
    assert [item.name for _, item in gone(ROOM, after, FRAMED.trees[0].block.room)] == ["rug"]


def test_bounds_are_never_above_what_a_completion_leaves() -> None:
    """For every partial choice of every tree: bound <= exact, for each completion of it."""
    for tree in FRAMED.trees:
        bounds = {
            chosen: tree.bound(chosen, frozenset()) for chosen in subsets(tuple(FRAMED.candidates)) if len(chosen) < 3
        }
        for chosen, (hazards, points) in bounds.items():
            for whole in subsets(tuple(FRAMED.candidates)):
                if chosen <= whole:
                    seen = tree.look(whole)
                    assert hazards <= seen.hazards
                    assert points <= seen.points


def test_crumbs_are_dropped_but_never_the_users_own() -> None:
    """Ten minutes for 5 points is a crumb, 50 points are none; what is the user's stays."""
    effects = {"small": Alone(0, 5), "good": Alone(0, 50), "safe": Alone(3, 0), "mine": Alone(0, 0)}
    many = (one("good"), one("mine", own=False), one("safe"), one("small"))
    assert [it.id for it in without_crumbs(many, effects, ())] == ["good", "mine", "safe"]
    assert [it.id for it in without_crumbs(many, effects, ("small",))] == ["good", "mine", "safe", "small"]


def test_ours_gives_way_to_the_users_version_unless_it_does_more() -> None:
    """Same kind, same thing: the user's stands; ours stays only where it takes away more by itself."""
    slide = Change("rugs", "rug", (("gap", 700.0),))
    many = (one("mine", slide, own=False), one("ours", slide))
    assert [it.id for it in without_shadows(many, {"mine": Alone(0, 9), "ours": Alone(0, 9)})] == ["mine"]
    assert [it.id for it in without_shadows(many, {"mine": Alone(0, 9), "ours": Alone(0, 10)})] == ["mine", "ours"]


def test_alone_is_what_each_does_by_itself() -> None:
    """Strapping the bookcase takes away a hazard, hanging lower only points; inspections are handed on."""
    effects, memories = alone(BASE, MOVES)
    assert effects["strap"].hazards > 0
    assert effects["hang-lower"].points > 0
    assert effects["hang-lower"].hazards == 0
    assert any(frozenset({"strap"}) in memory for memory in memories.values())
    assert isinstance(FRAMED.trees[0], MeasuredTree)
