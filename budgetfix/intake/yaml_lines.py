"""YAML (1.2; JSON is YAML) with the line of every value, doubled keys refused, and nothing guessed.

Numbers that only a program would write (`3_4.50`, `0x10`, `1e3`, `.inf`) stay text, so that readers refuse them.
"""

from __future__ import annotations

import re
import warnings
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from pathlib import Path

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError, ReusedAnchorWarning, YAMLError
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode, SequenceNode

from budgetfix.base.problems import FileProblem, Place

Key = str | int
KeyPath = tuple[Key, ...]

_INT = re.compile(r"[-+]?\d{1,18}")
_FLOAT = re.compile(r"[-+]?(\d{1,18}\.\d{0,18}|\.\d{1,18})")
_DATE = re.compile(r"\d{4}-\d{2}-\d{2}")


@dataclass
class YamlFile:
    """What a file says. `data` holds dict, list, str, int, float, bool, date and None; keys are always text.

    `lines` gives line and column (from 1; of the key, where there is one) by path of keys and list places
    (from 0); `texts` gives each scalar as typed.
    """

    file: str
    data: dict[str, object] = field(default_factory=dict)
    problems: list[FileProblem] = field(default_factory=list)
    lines: dict[KeyPath, tuple[int, int]] = field(default_factory=dict)
    texts: dict[KeyPath, str] = field(default_factory=dict)

    def line_of(self, *keys: Key) -> int:
        """The line (from 1) of the value at those keys, or of the nearest thing above it that exists."""
        return self._mark(keys)[0]

    def place(self, *keys: Key) -> Place:
        """`brief.yaml [line 8]` of the value at those keys."""
        line, column = self._mark(keys)
        return Place(self.file, 0, line, column, f"line {line}")

    def text_of(self, *keys: Key) -> str | None:
        """The scalar as typed (`12.50` stays `12.50`); None where there is no scalar."""
        return self.texts.get(keys)

    def decimal_of(self, *keys: Key) -> Decimal | None:
        """A plain number exactly as typed; None where there is none."""
        text = self.texts.get(keys, "")
        return Decimal(text) if _INT.fullmatch(text) or _FLOAT.fullmatch(text) else None

    def _mark(self, keys: KeyPath) -> tuple[int, int]:
        while keys and keys not in self.lines:
            keys = keys[:-1]
        return self.lines.get(keys, (1, 1))


def load_yaml(path: Path, name: str | None = None) -> YamlFile:
    """Read a file into a `YamlFile`; whatever is wrong with it as YAML is in `problems`, all at once.

    `name`: how the file is called in messages (default: its own name). Errors: OSError.
    """
    return parse_yaml(path.read_bytes(), name or path.name)


def parse_yaml(data: bytes, name: str) -> YamlFile:
    """The same from bytes."""
    file = YamlFile(name)
    try:
        text = data.decode("utf-8-sig")
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", ReusedAnchorWarning)  # YAML 1.2 allows it: the later one counts
            root = YAML().compose(text)
    except UnicodeDecodeError:
        _problem(file, 1, 1, "bytes that are not text", "a file saved as UTF-8")
        return file
    except MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        line, column = (mark.line + 1, mark.column + 1) if mark else (1, 1)
        _problem(file, line, column, _said(error), "YAML, with even indents and a space behind each colon")
        return file
    except YAMLError:
        _problem(file, 1, 1, "signs that YAML does not allow", "plain text")
        return file
    if isinstance(root, MappingNode):
        file.data = _mapping(file, root, (), ())
    elif root is not None and not (isinstance(root, ScalarNode) and _scalar(root) is None):
        _problem(file, root.start_mark.line + 1, 1, "no keys", "keys and values, such as `unit: cm`")
    return file


def _said(error: MarkedYAMLError) -> str:
    return " ".join(str(error.problem or error.context or "something else").split())


def _problem(file: YamlFile, line: int, column: int, found: str, wanted: str, todo: str = "") -> None:
    file.problems.append(FileProblem(Place(file.file, 0, line, column, f"line {line}"), found, wanted, todo))


def _value(file: YamlFile, node: Node, path: KeyPath, above: tuple[Node, ...]) -> object:
    file.lines[path] = (node.start_mark.line + 1, node.start_mark.column + 1)
    if any(node is outer for outer in above):
        _problem(file, *file.lines[path], "a block that holds itself", "a value")
        return None
    if isinstance(node, MappingNode):
        return _mapping(file, node, path, above)
    if isinstance(node, SequenceNode):
        return [_value(file, item, (*path, place), (*above, node)) for place, item in enumerate(node.value)]
    if not isinstance(node, ScalarNode):
        return None
    file.texts[path] = node.value
    return _scalar(node)


def _mapping(file: YamlFile, node: MappingNode, path: KeyPath, above: tuple[Node, ...]) -> dict[str, object]:
    found: dict[str, object] = {}
    before = ""
    for key_node, value_node in node.value:
        line, column = key_node.start_mark.line + 1, key_node.start_mark.column + 1
        key = key_node.value if isinstance(key_node, ScalarNode) else ""
        if not isinstance(key_node, ScalarNode):
            _problem(file, line, column, "a block as a key", "a word as a key")
        elif node.flow_style and key.isdigit() and isinstance(value_node, ScalarNode) and not value_node.value:
            _problem(file, line, column, f"{before + ',' + key!r}", f"a point, not a comma: {before}.{key}")
        elif key in found:
            first = file.lines[(*path, key)][0]
            _problem(file, line, column, f"{key!r} twice (first on line {first})", "each key once")
        else:
            found[key] = _value(file, value_node, (*path, key), (*above, node))
            file.lines[(*path, key)] = (line, column)
        before = value_node.value if isinstance(value_node, ScalarNode) else ""
    return found


def _scalar(node: ScalarNode) -> object:
    """The value of a scalar: quoted ones are text; plain ones by YAML 1.2, numbers in plain digits only."""
    text: str = node.value
    if node.style is not None:
        return text
    if text in ("", "~", "null", "Null", "NULL"):
        return None
    if text.lower() in ("true", "false") and text in (text.lower(), text.upper(), text.capitalize()):
        return text.lower() == "true"
    if _INT.fullmatch(text):
        return int(text)
    if _FLOAT.fullmatch(text):
        return float(text)
    return _as_date(text) if _DATE.fullmatch(text) else text


def _as_date(text: str) -> date | str:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return text
