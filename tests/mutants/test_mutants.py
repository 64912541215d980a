"""The judge of mutants is judged: a planted change is noticed, an equal one lives, the list is as old as the code."""

from __future__ import annotations

import ast
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from tests.mutants.choosing import case, own_tests, sampled
from tests.mutants.explained import explained, reason, stale
from tests.mutants.judging import KILLED, Verdict
from tests.mutants.keeping import Kept
from tests.mutants.operators import Mutant, mutants, mutated
from tests.mutants.parts import PARTS
from tests.mutants.swapped import ROOT
from tests.mutants.telling import Told, page
from tests.mutants.touched import Touched

SOURCE = '''"""Words."""

LIMIT = 3


def cut(items: list[int], most: int = 9) -> list[int]:
    """First ones."""
    if most >= LIMIT and items:
        raise ValueError("too many")
    return [one for one in items[1:] if one][:most]
'''


def changes(source: str) -> list[str]:
    """The mutants of a source, in words."""
    return [one.change for one in mutants("budgetfix/room/some.py", source)]


def test_every_kind_of_change() -> None:
    """A boundary, a turned comparison, constants, a part of a condition, a raise, a return, a filter, a slice."""
    assert changes(SOURCE) == [
        "3 -> 4",
        "3 -> 2",
        "9 -> 10",
        "9 -> 8",
        "most >= LIMIT and items -> most >= LIMIT or items",
        "most >= LIMIT and items -> items",
        "most >= LIMIT and items -> most >= LIMIT",
        "most >= LIMIT -> most > LIMIT",
        "most >= LIMIT -> most < LIMIT",
        "raise ValueError('too many') -> pass",
        "return [one for one in items[1:] if one][:most] -> return None",
        "for one in items[1:] if one -> for one in items[1:]",
        "1: -> :",
        "1 -> 2",
        "1 -> 0",
        ":most -> :",
    ]


def test_one_change_and_no_other() -> None:
    """The mutated tree reads as the source with that one change, for each mutant of it."""
    for one in mutants("budgetfix/room/some.py", SOURCE):
        text = ast.unparse(mutated(SOURCE, one))
        same = [line for line in text.splitlines() if line in ast.unparse(ast.parse(SOURCE)).splitlines()]
        assert len(text.splitlines()) - len(same) <= 1
        assert text != ast.unparse(ast.parse(SOURCE))


@pytest.mark.parametrize(
    ("line", "change"),
    [
        ("return max(a, b)", "max(a, b) -> min(a, b)"),
        ("total += a", "total += a -> total -= a"),
        ("total += a", "total += a -> pass"),
        ("return math.ceil(a)", "math.ceil(a) -> math.floor(a)"),
        ("return not a", "not a -> a"),
        ("return -a", "-a -> a"),
        ("found.append(a)", "found.append(a) -> pass"),
        ("known[a] = b", "known[a] = b -> pass"),
        ("return a if b else 0", "a if b else 0 -> a if not b else 0"),
        ("return a * b", "a * b -> a / b"),
        ("return 0.5", "0.5 -> 1.5"),
        ("return True", "True -> False"),
    ],
)
def test_more_changes(line: str, change: str) -> None:
    """Twins, steps, signs, calls, stores, choices, products, figures, yes and no."""
    assert change in changes(f"def work(a, b, total, found, known):\n    {line}\n")


def test_words_are_left_alone() -> None:
    """Nothing in a docstring, an annotation, a format, an import, an assert or a list of names is changed."""
    text = 'from a import b\n__all__ = ["b"]\nx: int | None\ndef f(a: int | str) -> str:\n    assert a\n    '
    assert changes(f'{text}"""Doc."""\n    print(f"{{a:03d}}")\n') == ["print(f'{a:03d}') -> pass"]


JUDGE = """
from pathlib import Path
from tests.mutants.judging import Case, judge
from tests.mutants.operators import mutants
module, test = "budgetfix/outcome/sharing.py", "tests/outcome/test_sharing.py::"
source = Path(module).read_text("utf-8")
named = {one.change: one for one in mutants(module, source)}
tests = (test + "test_without_use_all_share_alike",)
planted = ("amount_minor - sum(parts.values()) -> amount_minor + sum(parts.values())", "1 -> 2")
cases = [Case(named[change], tests, 1.0, cold) for change in planted for cold in (False, True)]
judge(module, source, cases, lambda found: print(found.mutant.change, found.verdict, found.by, sep=" | "))
"""


def test_a_planted_change_is_noticed_and_an_equal_one_lives() -> None:
    """In both ways of putting it in place: a minus turned into a plus is noticed, equal weights of 2 for 1 are not."""
    done = subprocess.run([sys.executable, "-c", JUDGE], cwd=ROOT, capture_output=True, text=True, check=True)
    killed = "tests/outcome/test_sharing.py::test_without_use_all_share_alike"
    change = "amount_minor - sum(parts.values()) -> amount_minor + sum(parts.values())"
    assert sorted(done.stdout.splitlines()) == [
        "1 -> 2 | survived | ",
        "1 -> 2 | survived | ",
        f"{change} | killed | {killed}",
        f"{change} | killed | {killed}",
    ]


def test_the_list_is_no_older_than_the_code() -> None:
    """Every explained mutant is still a mutant of the line that it names, and has a reason."""
    known = explained()
    assert known
    assert stale(known) == ()
    for one in known:
        of = mutants(one.module, (ROOT / one.module).read_text("utf-8"))
        assert set(one.changes) <= {mutant.change for mutant in of if mutant.text == one.line}, one


def test_a_stale_entry_is_found(tmp_path: Path) -> None:
    """A line that is gone, and a reason that says nothing, are seen; a reason is for its own line and change only."""
    module = "budgetfix/outcome/sharing.py"
    told = 'module = "{}"\nline = "{}"\nchanges = ["1 -> 2"]\nreason = "{}"\n'
    path = tmp_path / "explained.toml"
    entries = ((module, "gone = 1", "why"), (module, "return {}", " "))
    path.write_text("".join(f"[[explained]]\n{told.format(*one)}" for one in entries), "utf-8")
    assert stale(explained(path)) == (f"{module}: gone = 1", f"{module}: return {{}}")
    mutant = Mutant(module, 1, (1, 1), "gone = 1", "1 -> 2", (), ast.Pass(), "")
    assert reason(mutant, explained(path)) == "why"
    assert reason(replace(mutant, change="1 -> 0"), explained(path)) == ""


def test_quick_tests_of_its_own_judge_first() -> None:
    """Own tests before others, quick before slow, no more seconds than asked, and always one where there is any."""
    mutant = mutants("budgetfix/room/some.py", SOURCE)[4]
    own, other, slow = (
        "tests/room/test_some.py::test_a",
        "tests/room/test_other.py::test_b",
        "tests/room/test_c.py::test_c",
    )
    touched = Touched({other: 0.1, own: 0.2, slow: 30.0}, {mutant.module: {8: (own, other, slow)}})
    assert own_tests(mutant.module) == "tests/room/test_some"
    assert case(mutant, touched, 5.0).tests == (own, other)
    assert case(mutant, touched, 0.0).tests == (own,)
    assert not case(mutant, touched, 5.0).cold
    assert case(mutant, replace(touched, lines={}), 5.0).tests == ()


def test_a_share_is_drawn_by_the_seed() -> None:
    """The same seed draws the same mutants, another seed others; all are drawn where nothing is left out."""
    module = "budgetfix/catalog/bill.py"
    drawn, whole = sampled(module, 0.2, 1)
    assert (drawn, whole) == sampled(module, 0.2, 1)
    assert len(drawn) == round(0.2 * whole)
    assert drawn != sampled(module, 0.2, 2)[0]
    assert len(sampled(module, 1.0, 1)[0]) == whole


def test_parts_name_what_is_there() -> None:
    """Every module and every test of a part exists, and the whole chooser is in its part."""
    assert [path for part in PARTS for path in (*part.modules, *part.tests) if not (ROOT / path).exists()] == []
    chooser = sorted(str(path.relative_to(ROOT)) for path in (ROOT / "budgetfix" / "optimize").glob("[!_]*.py"))
    assert sorted(module for part in PARTS[3:] for module in part.modules) == chooser


def test_a_row_of_the_page_is_replaced_and_the_others_stay() -> None:
    """A run of one part writes its own figures; every row stands in the order of the parts."""
    bill, room = PARTS[0], PARTS[1]
    text = page(
        "<!-- figures: mutants -->\n<!-- end -->\n", {room: Told(1200, {"killed": 1000, "explained": 9}, [])}, 7
    )
    both = page(text, {bill: Told(8, {"killed": 5, "killed by time": 1, "survived": 2}, ["x", "y"])}, 7)
    assert both.splitlines()[3:-3] == [
        f"| {bill.title} | 8 | 8 | 6 | 1 | 0 | 2 |",
        f"| {room.title} | 1,200 | 1,009 | 1,000 | 0 | 9 | 0 |",
    ]
    assert page(both, {}, 7) == both


def test_a_kill_is_kept_while_module_and_test_stay_as_they_are(tmp_path: Path) -> None:
    """What was killed need not be judged again; a kill by a test that has changed since, or of nobody, is not known."""
    mutant = mutants("budgetfix/catalog/bill.py", (ROOT / "budgetfix/catalog/bill.py").read_text("utf-8"))[0]
    kept = Kept(tmp_path, mutant.module)
    kept.note(Verdict(mutant, KILLED, "tests/catalog/test_bill.py::test_tax_rounds_half_up"))
    kept.write()
    again = Kept(tmp_path, mutant.module).verdict(mutant)
    assert again is not None
    assert again.by == "tests/catalog/test_bill.py::test_tax_rounds_half_up"
    kept.note(Verdict(mutant, KILLED, "tests/catalog/test_gone.py::test_it"))
    kept.kills = {key: (by, "other") for key, (by, _) in kept.kills.items()}
    kept.write()
    assert Kept(tmp_path, mutant.module).verdict(mutant) is None
    assert Kept(None, mutant.module).verdict(mutant) is None
