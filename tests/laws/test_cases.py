"""Law 4: every rule has a case file and a manual page, every module has a test, every test a docstring."""

from __future__ import annotations

import ast
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from tests.laws.source import REPO, Source, plant, sources

RULES = "budgetfix.inspection.rules."
KINDS = "budgetfix.remedies.kinds."
CASES = Path("tests/inspection/cases")
WANTED: dict[str, Callable[[str], bool]] = {
    "just inside": lambda severity: severity == "0",
    "at the edge": lambda severity: severity == "0",
    "just outside": lambda severity: _number(severity) > 0,
    "glaring": lambda severity: _number(severity) >= 1,
    "beyond glaring": lambda severity: _number(severity) > 1,
    "a change that cures": lambda severity: severity == "0",
    "a change that makes it worse": lambda severity: severity == "worse",
    "silent": lambda severity: severity == "silent",
}
"""What the cases of a rule begin with, and what each must leave."""


def _number(severity: str) -> Fraction:
    return Fraction(-1) if severity in ("silent", "worse") else Fraction(severity)


def slug(source: Source) -> str:
    """The slug that a module's name stands for."""
    return source.name.split(".")[-1].replace("_", "-")


def without_case(root: Path) -> list[str]:
    """Rules whose case file is missing or empty, and case files that no rule owns."""
    rules = {slug(source) for source in sources(root) if source.name.startswith(RULES)}
    files = {path.stem for path in (root / CASES).glob("*.yaml") if path.stat().st_size}
    return [f"{one} has no cases" for one in sorted(rules - files)] + [
        f"cases without a rule: {one}" for one in sorted(files - rules)
    ]


def without_each_case(root: Path) -> list[str]:
    """Case files that lack one of the eight cases, or claim one that is not what its name says.

    A case that cannot be stands under `cannot` with the reason, in words, and then there is none of its name.
    """
    found = []
    for path in sorted((root / CASES).glob("*.yaml")):
        data: dict[str, Any] = YAML(typ="safe", pure=True).load(path.read_text(encoding="utf-8")) or {}
        cannot = {name: str(why).split() for name, why in data.get("cannot", {}).items()}
        found += [f"{path.stem}: {name} is none of the eight" for name in cannot if name not in WANTED]
        for wanted, fits in WANTED.items():
            left = [str(case["severity"]) for case in data.get("cases", ()) if case["name"].startswith(wanted)]
            if wanted in cannot and (left or len(cannot[wanted]) < 4):
                found.append(f"{path.stem}: {wanted} is there, or no reason says why it cannot be")
            if wanted not in cannot and not left:
                found.append(f"{path.stem}: nothing {wanted}")
            found += [f"{path.stem}: {wanted} leaves {severity}" for severity in left if not fits(severity)]
    return found


def without_page(root: Path) -> list[str]:
    """Rules and kinds without a docstring to make a manual page of, and rules whose slug is not their file's name."""
    found = []
    for source in sources(root):
        if not source.name.startswith((RULES, KINDS)):
            continue
        if not (ast.get_docstring(source.tree) or "").strip():
            found.append(f"{source.name} has no docstring")
        typed = [
            word.value
            for call, name in source.calls()
            if name.endswith("Rule")
            for word in call.keywords
            if word.arg == "slug"
        ]
        if any(isinstance(value, ast.Constant) and value.value != slug(source) for value in typed):
            found.append(f"{source.name} has another slug")
    return found


def untested(root: Path) -> list[str]:
    """Modules that no test imports. Rules are held by their cases; packages and the entry point only pass on."""
    imported: set[str] = set()
    for test in sources(root, "tests"):
        if not test.name.startswith("tests.laws"):
            imported |= {test.bound[name] for name in test.bound} | _modules(test)
    found = []
    for source in sources(root):
        passes_on = source.path.name in {"__init__.py", "__main__.py"}
        if not passes_on and not source.name.startswith(RULES) and source.name not in imported:
            found.append(source.name)
    return found


def _modules(test: Source) -> set[str]:
    return {node.module for node in ast.walk(test.tree) if isinstance(node, ast.ImportFrom) and node.module}


def speechless(root: Path) -> list[str]:
    """Tests without a docstring that someone could read aloud."""
    return [
        source.at(node, node.name)
        for source in sources(root, "tests")
        for node in ast.walk(source.tree)
        if isinstance(node, ast.FunctionDef) and node.name.startswith("test_") and not ast.get_docstring(node)
    ]


@pytest.mark.parametrize("law", [without_case, without_each_case, without_page, untested, speechless])
def test_everything_is_shown_and_told(law: Callable[[Path], list[str]]) -> None:
    """Rules have cases and pages, modules have tests, tests have docstrings."""
    assert law(REPO) == []


def test_rules_without_cases_or_pages_are_found(tmp_path: Path) -> None:
    """One rule is in order; one lacks everything; one case file has lost its rule, one is empty."""
    plant(
        tmp_path,
        {
            "budgetfix/inspection/rules/rod_too_low.py": '"""A page."""\nRULE = Rule(slug="rod-too-low")\n',
            "budgetfix/inspection/rules/rug_adrift.py": 'RULE = Rule(slug="rug")\n',
            "budgetfix/inspection/rules/rug_bare.py": '"""A page."""\n',
            "tests/inspection/cases/rod-too-low.yaml": "cases: []\n",
            "tests/inspection/cases/rug-bare.yaml": "",
            "tests/inspection/cases/stray.yaml": "cases: []\n",
        },
    )
    assert without_case(tmp_path) == ["rug-adrift has no cases", "rug-bare has no cases", "cases without a rule: stray"]
    assert without_page(tmp_path) == [
        "budgetfix.inspection.rules.rug_adrift has no docstring",
        "budgetfix.inspection.rules.rug_adrift has another slug",
    ]


EIGHT = {
    "just inside": 0,
    "at the edge, 200 mm": 0,
    "just outside": "1/20",
    "glaring": 1,
    "beyond glaring": "3/2",
    "a change that cures": 0,
    "a change that makes it worse": "worse",
    "silent": "silent",
}


def case_file(cases: dict[str, object], cannot: str = "") -> str:
    """A case file with these names and severities."""
    return "cases:\n" + "".join(f"  - {{name: '{name}', severity: {left}}}\n" for name, left in cases.items()) + cannot


def test_a_file_that_lacks_one_of_the_eight_cases_is_found(tmp_path: Path) -> None:
    """Each of the eight is missed when it is not there; a reason stands in for it, one word does not."""
    for missing in EIGHT:
        file = case_file({name: left for name, left in EIGHT.items() if name != missing})
        wanted = missing.split(",")[0]
        plant(tmp_path, {"tests/inspection/cases/rug-adrift.yaml": file})
        assert without_each_case(tmp_path) == [f"rug-adrift: nothing {wanted}"]
        plant(tmp_path, {"tests/inspection/cases/rug-adrift.yaml": f"{file}cannot: {{{wanted}: no}}\n"})
        assert len(without_each_case(tmp_path)) == 1
        plant(tmp_path, {"tests/inspection/cases/rug-adrift.yaml": f"{file}cannot: {{{wanted}: it is whole or not}}\n"})
        assert without_each_case(tmp_path) == []


@pytest.mark.parametrize(
    ("name", "left"),
    [
        ("at the edge, 200 mm", "1/20"),
        ("just outside", 0),
        ("glaring", "1/2"),
        ("beyond glaring", 1),
        ("a change that cures", "1/10"),
        ("a change that makes it worse", 1),
        ("silent", 0),
    ],
)
def test_a_case_that_is_not_what_its_name_says_is_found(name: str, left: object, tmp_path: Path) -> None:
    """Beyond glaring with severity 1 is glaring, a cure leaves nothing, and so on."""
    plant(tmp_path, {"tests/inspection/cases/rug-adrift.yaml": case_file({**EIGHT, name: left})})
    assert without_each_case(tmp_path) == [f"rug-adrift: {name.split(',')[0]} leaves {left}"]


def test_a_reason_beside_its_case_and_a_misspelt_reason_are_found(tmp_path: Path) -> None:
    """What is there can be, and a reason for a case that nobody asks for hides nothing."""
    reasons = "cannot: {glaring: it is whole or not, gleaming: it is whole or not}\n"
    plant(tmp_path, {"tests/inspection/cases/rug-adrift.yaml": case_file(EIGHT, reasons)})
    assert without_each_case(tmp_path) == [
        "rug-adrift: gleaming is none of the eight",
        "rug-adrift: glaring is there, or no reason says why it cannot be",
    ]


def test_an_untested_module_is_found(tmp_path: Path) -> None:
    """Three spellings of an import count as a test; a law does not, nor does being mentioned in words."""
    plant(
        tmp_path,
        {
            "budgetfix/__init__.py": "",
            **{f"budgetfix/room/{name}.py": "" for name in ("a", "b", "c", "law", "words")},
            "tests/room/test_a.py": "from budgetfix.room.a import Wall\n",
            "tests/room/test_b.py": "from budgetfix.room import b\n",
            "tests/room/test_c.py": "import budgetfix.room.c as c\n",
            "tests/laws/test_law.py": "import budgetfix.room.law as law\n",
            "tests/room/test_words.py": "text = 'budgetfix.room.words'\n",
        },
    )
    assert untested(tmp_path) == ["budgetfix.room.law", "budgetfix.room.words"]


def test_a_test_without_a_docstring_is_found(tmp_path: Path) -> None:
    """Helpers may be silent, tests may not."""
    plant(tmp_path, {"tests/test_a.py": "def help():\n    pass\n\n\ndef test_it():\n    assert help() is None\n"})
    assert speechless(tmp_path) == ["tests.test_a:5 test_it"]
