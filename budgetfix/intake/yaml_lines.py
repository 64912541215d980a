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
from ruamel.yaml.composer import Composer
from ruamel.yaml.error import MarkedYAMLError, ReusedAnchorWarning, YAMLError
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode, SequenceNode

from budgetfix.base.limits import LONGEST_TEXT, NAME_SIGNS, NESTING, TEXT_BYTES, VALUES, YAML_BYTES
from budgetfix.base.problems import FileProblem, Place
from budgetfix.base.signs import tidied, whole, without
from budgetfix.intake.door import bytes_of
from budgetfix.intake.raw_rows import spoilt

A_TEXT = f"words of {LONGEST_TEXT:,} signs at most, without signs that do something"
Key = str | int
KeyPath = tuple[Key, ...]

_INT = re.compile(r"[-+]?\d{1,18}")
_FLOAT = re.compile(r"[-+]?(\d{1,18}\.\d{0,18}|\.\d{1,18})")
_LONG_NAME = re.compile(rf"[!&*%]\S{{{NAME_SIGNS}}}".encode())
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

    `name`: how the file is called in messages (default: its own name).
    """
    problems: list[FileProblem] = []
    data = bytes_of(path, TEXT_BYTES, problems, Place(name or path.name))
    return YamlFile(name or path.name, problems=problems) if data is None else parse_yaml(data, name or path.name)


def parse_yaml(data: bytes, name: str) -> YamlFile:
    """The same from bytes."""
    file = YamlFile(name)
    try:
        _short(data)
        text = data.decode("utf-8-sig")
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", ReusedAnchorWarning)  # YAML 1.2 allows it: the later one counts
            root = _reader().compose(text)
    except UnicodeDecodeError:
        _problem(file, 1, 1, "bytes that are not text", "a file saved as UTF-8")
        return file
    except TooMuch as error:
        _problem(file, error.line, 1, error.found, error.wanted)
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
        try:
            _measured(root, {})
        except TooMuch as error:
            _problem(file, error.line, 1, error.found, error.wanted)
            return file
        file.data = _mapping(file, root, (), ())
    elif root is not None and not (isinstance(root, ScalarNode) and _scalar(root) is None):
        _problem(file, root.start_mark.line + 1, 1, "no keys", "keys and values, such as `unit: cm`")
    return file


class TooMuch(Exception):
    """Blocks within blocks, or values, past our limits: `found`, `wanted`, and the `line` where that was so."""

    def __init__(self, line: int, found: str, wanted: str) -> None:
        super().__init__(f"line {line}: found {found}, wanted {wanted}")
        self.line = line
        self.found = found
        self.wanted = wanted


class Shallow(Composer):
    """Composes a file as long as it stays flat and short: composing calls itself as deep as the file goes."""

    depth = count = 0

    def compose_node(self, parent: object, index: object) -> object:
        """One value, with all that is in it. Errors: TooMuch."""
        self.count += 1
        self.depth += 1
        line = self.parser.peek_event().start_mark.line + 1
        _within(line, self.count // 2, self.depth)
        node = super().compose_node(parent, index)
        self.depth -= 1
        return node


def _short(data: bytes) -> None:
    """Errors: TooMuch."""
    if len(data) > YAML_BYTES:
        raise TooMuch(1, f"{len(data):,} bytes", f"{YAML_BYTES:,} at most")
    long = _LONG_NAME.search(data)
    if long is not None:
        line = data.count(b"\n", 0, long.start()) + 1
        raise TooMuch(line, f"a word of more than {NAME_SIGNS} signs behind {long[0][:1].decode()}", "shorter names")


def _reader() -> YAML:
    reader = YAML()
    reader.Composer = Shallow
    return reader


def _within(line: int, values: int, depth: int) -> None:
    """Errors: TooMuch."""
    if depth > NESTING:
        raise TooMuch(line, f"blocks within blocks, {depth} deep", f"{NESTING} at most")
    if values > VALUES:
        raise TooMuch(line, f"{values:,} values or more", f"{VALUES:,} at most, each counted as often as it is used")


def _measured(node: Node, known: dict[int, tuple[int, int]]) -> tuple[int, int]:
    """Values in a node, and how deep it goes; what is used by its name counts each time. Errors: TooMuch.

    A name stands behind what it names, so that is known already, or is what holds it.
    """
    if id(node) not in known:
        known[id(node)] = (1, 1)
        inside = node.value if isinstance(node, SequenceNode) else []
        if isinstance(node, MappingNode):
            inside = [value for _, value in node.value]
        parts = [_measured(one, known) for one in inside]
        values, depth = 1 + sum(count for count, _ in parts), 1 + max((deep for _, deep in parts), default=0)
        _within(node.start_mark.line + 1, values, depth)
        known[id(node)] = (values, depth)
    return known[id(node)]


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
    node.value = _readable(file, node)
    file.texts[path] = node.value
    return _scalar(node)


def _readable(file: YamlFile, node: ScalarNode) -> str:
    """The text of a value or key; noted, and left without them, where it holds signs that would do something."""
    text = tidied(whole(node.value))
    wrong = spoilt(text)
    if wrong:
        _problem(file, node.start_mark.line + 1, node.start_mark.column + 1, wrong, A_TEXT)
        return without(text)[:LONGEST_TEXT]
    return text


def _mapping(file: YamlFile, node: MappingNode, path: KeyPath, above: tuple[Node, ...]) -> dict[str, object]:
    found: dict[str, object] = {}
    before = ""
    for key_node, value_node in node.value:
        line, column = key_node.start_mark.line + 1, key_node.start_mark.column + 1
        key = " ".join(_readable(file, key_node).split()) if isinstance(key_node, ScalarNode) else ""
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
