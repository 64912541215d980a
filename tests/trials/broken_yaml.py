"""Where every value of a YAML text stands, so that one of them can be typed over and its line is known."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from functools import lru_cache

from ruamel.yaml import YAML
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode, SequenceNode

Path = tuple[str | int, ...]


@dataclass(frozen=True)
class Spot:
    """One scalar. `line` (from 1): of its key, or of itself in a list. `start`, `end`: of its text; `key`: likewise."""

    path: Path
    line: int
    start: int
    end: int
    text: str
    key: tuple[int, int] | None = None


@lru_cache(maxsize=64)
def spots(text: str) -> tuple[Spot, ...]:
    """Every scalar of a sound text."""
    return tuple(_walk(text, YAML().compose(text), (), None))


def _walk(text: str, node: Node | None, path: Path, key: ScalarNode | None) -> Iterator[Spot]:
    if isinstance(node, MappingNode):
        for name, value in node.value:
            yield from _walk(text, value, (*path, name.value), name)
    elif isinstance(node, SequenceNode):
        for at, value in enumerate(node.value):
            yield from _walk(text, value, (*path, at), None)
    elif isinstance(node, ScalarNode):
        first, last = node.start_mark.index, node.end_mark.index
        line = (key or node).start_mark.line + 1
        span = None if key is None else (key.start_mark.index, key.end_mark.index)
        yield Spot(path, line, first, last, text[first:last], span)


def typed_over(text: str, changes: Iterable[tuple[int, int, str]]) -> str:
    """The text with (start, end, new) put in; they must not overlap."""
    for start, end, new in sorted(changes, reverse=True):
        text = text[:start] + new + text[end:]
    return text


def spelled(value: object) -> str:
    """A value as somebody would type it into YAML, on one line."""
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False)
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, bool) or value is None:
        return {True: "true", False: "false", None: "null"}[value]
    return json.dumps(value) if isinstance(value, list | dict) else str(value)
