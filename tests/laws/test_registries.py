"""Law 3: registries are written out by hand, whole, and nothing is found by scanning."""

from __future__ import annotations

import ast
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.laws.source import REPO, Source, plant, sources

REGISTRIES = (
    ("budgetfix.inspection.registry", "SECTIONS", "budgetfix.inspection.rules"),
    ("budgetfix.remedies.registry", "KINDS", "budgetfix.remedies.kinds"),
)
SCANNING = {"importlib.import_module", "__import__", "globals", "vars"}


def listed(registry: Source, name: str) -> set[str]:
    """What the names in the assignment to `name` stand for, in dots."""
    found: set[str] = set()
    for node in registry.tree.body:
        target = (
            node.target
            if isinstance(node, ast.AnnAssign)
            else node.targets[0]
            if isinstance(node, ast.Assign)
            else None
        )
        if (
            isinstance(target, ast.Name)
            and target.id == name
            and isinstance(node, ast.AnnAssign | ast.Assign)
            and node.value
        ):
            found |= {
                registry.dotted(part) for part in ast.walk(node.value) if isinstance(part, ast.Name | ast.Attribute)
            }
    return found


def unnamed(root: Path) -> list[str]:
    """Rules and kinds that their registry does not name: they would not exist, without a word."""
    by_name = {source.name: source for source in sources(root)}
    found = []
    for registry, constant, folder in REGISTRIES:
        named = listed(by_name[registry], constant) if registry in by_name else set()
        for name in sorted(by_name):
            inside = name.startswith(folder + ".")
            if inside and not any(one == name or one.startswith(name + ".") for one in named):
                found.append(f"{name} is not named in {constant}")
    return found


def scans(root: Path) -> list[str]:
    """Modules of inspection and remedies that look for modules instead of naming them."""
    found = []
    for source in sources(root):
        if source.folder not in {"inspection", "remedies"}:
            continue
        found += [source.at(call, name) for call, name in source.calls() if name in SCANNING]
        if any(origin.split(".")[0] in {"pkgutil", "importlib", "glob", "inspect"} for origin in source.bound.values()):
            found.append(source.at(source.tree, "imports a way to scan"))
    return found


@pytest.mark.parametrize("law", [unnamed, scans])
def test_registries_are_whole_and_written_by_hand(law: Callable[[Path], list[str]]) -> None:
    """Every rule and kind is named in its registry, and no code goes looking for them."""
    assert law(REPO) == []


def test_a_forgotten_rule_or_kind_is_found(tmp_path: Path) -> None:
    """One rule and one kind are named, one of each is forgotten, one is imported but left out of the tuple."""
    plant(
        tmp_path,
        {
            "budgetfix/inspection/registry.py": (
                "from budgetfix.inspection.rules import kept\n"
                "from budgetfix.inspection.rules.idle import RULE as IDLE\n"
                "SECTIONS: tuple[tuple[str, tuple[Rule, ...]], ...] = (('Rugs', (kept.RULE,)),)\n"
            ),
            "budgetfix/inspection/rules/__init__.py": "",
            "budgetfix/inspection/rules/kept.py": "",
            "budgetfix/inspection/rules/idle.py": "",
            "budgetfix/inspection/rules/lost.py": "",
            "budgetfix/remedies/registry.py": (
                "from budgetfix.remedies.kinds.kept import KIND as KEPT\nKINDS = {'kept': KEPT}\n"
            ),
            "budgetfix/remedies/kinds/kept.py": "",
            "budgetfix/remedies/kinds/lost.py": "",
        },
    )
    assert unnamed(tmp_path) == [
        "budgetfix.inspection.rules.idle is not named in SECTIONS",
        "budgetfix.inspection.rules.lost is not named in SECTIONS",
        "budgetfix.remedies.kinds.lost is not named in KINDS",
    ]


@pytest.mark.parametrize(
    "text",
    ["import pkgutil", "from importlib import import_module as get", "import glob", "globals()", "__import__('rules')"],
)
def test_a_planted_scan_is_found(text: str, tmp_path: Path) -> None:
    """Each usual way to collect modules by scanning is seen."""
    assert len(scans(plant(tmp_path, {"budgetfix/inspection/planted.py": text}))) == 1
