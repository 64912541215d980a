"""Source files as the laws see them: a tree for each module, and calls under the names they were imported by."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

REPO = Path(__file__).resolve().parents[2]


@dataclass(frozen=True)
class Source:
    """One .py file. `name` is dotted, from the root that was read (`budgetfix.room.survey`)."""

    name: str
    path: Path
    text: str

    @property
    def folder(self) -> str:
        """The folder of the house it stands in (`room`), or its own name at the top (`__main__`)."""
        return ".".join(self.name.split(".")[1:2])

    @cached_property
    def tree(self) -> ast.Module:
        """The parsed file."""
        return ast.parse(self.text, str(self.path))

    @cached_property
    def bound(self) -> dict[str, str]:
        """Names that imports bind, anywhere in the file, with what they stand for in dots."""
        return dict(_bound(self.tree))

    @cached_property
    def in_memory(self) -> frozenset[str]:
        """Names that hold a file in memory: assigned from `BytesIO(...)` or `StringIO(...)`."""
        return frozenset(
            target.id
            for node in ast.walk(self.tree)
            if isinstance(node, ast.Assign) and isinstance(node.value, ast.Call) and self.is_memory(node.value)
            for target in node.targets
            if isinstance(target, ast.Name)
        )

    def dotted(self, node: ast.expr) -> str:
        """`io.open` for `open` after `from io import open`; `?.read_text` where the owner is worked out."""
        if isinstance(node, ast.Name):
            return self.bound.get(node.id, node.id)
        if isinstance(node, ast.Attribute):
            return f"{self.dotted(node.value)}.{node.attr}"
        return "?"

    def is_memory(self, node: ast.expr) -> bool:
        """Whether an expression is a file in memory, so that using it opens nothing."""
        if isinstance(node, ast.Call):
            return self.dotted(node.func).split(".")[-1] in {"BytesIO", "StringIO"}
        return isinstance(node, ast.Name) and node.id in self.in_memory

    def calls(self) -> Iterator[tuple[ast.Call, str]]:
        """Every call with the dotted name of what is called."""
        for node in ast.walk(self.tree):
            if isinstance(node, ast.Call):
                yield node, self.dotted(node.func)

    def at(self, node: ast.AST, what: str) -> str:
        """A breach as one line: which module, which line, what."""
        return f"{self.name}:{getattr(node, 'lineno', 1)} {what}"


def _bound(tree: ast.Module) -> Iterator[tuple[str, str]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield (alias.asname, alias.name) if alias.asname else (alias.name.split(".")[0],) * 2
        elif isinstance(node, ast.ImportFrom):
            for alias in node.names:
                yield alias.asname or alias.name, f"{node.module or ''}.{alias.name}"


def sources(root: Path, package: str = "budgetfix") -> tuple[Source, ...]:
    """All modules of a package below `root`, by name."""
    found = []
    for path in sorted((root / package).rglob("*.py")):
        parts = path.relative_to(root).with_suffix("").parts
        name = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
        found.append(Source(name, path, path.read_text("utf-8")))
    return tuple(found)


def plant(root: Path, files: dict[str, str]) -> Path:
    """Write a small tree below `root` to plant a violation in; gives `root` back."""
    for name, text in files.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return root
