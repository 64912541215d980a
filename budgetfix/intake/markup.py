"""The markup of a workbook looked through before anybody builds anything of it: how much there is, and nothing odd."""

from __future__ import annotations

import re
from xml.parsers import expat

from budgetfix.base.limits import (
    CELLS,
    COLUMNS,
    ELEMENTS,
    ELEMENTS_ASIDE,
    FORMULA_SIGNS,
    MARKUP_DEPTH,
    ROWS,
)

ENCODINGS = ("utf-8", "utf-16", "us-ascii", "ascii")
"""ECMA-376, part 2: UTF-8 or UTF-16 (of which ASCII is a part)."""
SPREADING = ("mergeCell", "hyperlink", "table")
"""Elements whose `ref` is opened cell by cell."""
LONGEST_RANGE = 40
"""Signs of a range that are told."""
FILLED = ("v", "f", "is")
"""What a cell holds that is not empty."""
_CELL = re.compile(r"\$?([A-Z]{1,3})\$?([0-9]{1,7})")


class NotTaken(Exception):
    """A file that is refused as a whole: `found`, `wanted`."""

    def __init__(self, found: str, wanted: str) -> None:
        super().__init__(f"found {found}, wanted {wanted}")
        self.found = found
        self.wanted = wanted


class Markup:
    """All parts of one workbook, looked at one after the other. Errors: NotTaken."""

    def __init__(self) -> None:
        self.read_bytes = 0
        self.elements = self.aside = self.cells = self.shared = self.signs = 0

    def look(self, name: str, text: bytes) -> None:
        """Look through one part. Errors: NotTaken; ValueError for text that is no markup."""
        self.read_bytes += len(text)
        parser = expat.ParserCreate(namespace_separator=" ")
        look = _Part(self, name)
        parser.XmlDeclHandler = look.declared
        parser.StartDoctypeDeclHandler = look.doctype
        parser.StartElementHandler = look.start
        parser.EndElementHandler = look.end
        parser.CharacterDataHandler = look.words
        try:
            parser.Parse(text, True)
        except expat.ExpatError as error:
            raise ValueError(str(error)) from None


class _Part:
    """One part of a workbook while it is looked through."""

    def __init__(self, all: Markup, name: str) -> None:
        self.all = all
        self.name = name
        self.depth = self.row = self.column = 0
        self.is_list = self.in_shared = False
        self.at = ""
        self.length = 0

    def declared(self, _version: str, encoding: str | None, _standalone: int) -> None:
        if encoding is not None and encoding.lower() not in ENCODINGS:
            raise NotTaken(f"a part in {encoding[:40]}", "UTF-8, as spreadsheet programs save it")

    def doctype(self, *_said: object) -> None:
        raise NotTaken("a document type declaration inside", "a workbook as spreadsheet programs save it")

    def start(self, tag: str, attributes: dict[str, str]) -> None:
        word = tag.rpartition(" ")[2]
        self.depth += 1
        if self.depth == 1:
            self.is_list = word in ("worksheet", "sst")
        self._count()
        if word == "c":
            self._cell(attributes.get("r", ""))
        elif word == "row":
            self._row(attributes.get("r", ""))
        elif word in FILLED:
            self._filled()
            if word == "f" and attributes.get("t") == "shared":
                self.all.shared += 1
                self.in_shared, self.length = True, 0
                self._work()
        elif word in SPREADING:
            self._range(attributes.get("ref", ""))

    def end(self, _tag: str) -> None:
        self.depth -= 1
        self.in_shared = False

    def words(self, text: str) -> None:
        """The longest shared formula, times the cells that share one, is the work of telling each its own."""
        if self.in_shared:
            self.length += len(text)
            self.all.signs = max(self.all.signs, self.length)
            self._work()

    def _work(self) -> None:
        if self.all.signs * self.all.shared > FORMULA_SIGNS:
            raise NotTaken("very long formulas in very many cells", "shorter ones, or their results")

    def _count(self) -> None:
        self.all.elements += 1
        self.all.aside += not self.is_list
        if self.depth > MARKUP_DEPTH:
            raise NotTaken(f"markup {self.depth} deep", f"{MARKUP_DEPTH} at most")
        if self.all.elements > ELEMENTS or self.all.aside > ELEMENTS_ASIDE:
            raise NotTaken("more styles, texts and cells than any list of a home", "a smaller workbook")

    def _row(self, typed: str) -> None:
        self.row = int(typed) if typed.isascii() and typed.isdigit() and len(typed) < 9 else self.row + 1
        self.column = 0

    def _cell(self, typed: str) -> None:
        self.at = typed
        found = _CELL.fullmatch(typed)
        self.column = number_of(found[1]) if found else self.column + 1
        self.row = int(found[2]) if found else self.row
        self._cells(1)

    def _filled(self) -> None:
        where = f"something in {self.at}" if self.at else f"something in row {self.row:,}, column {self.column:,}"
        if self.row > ROWS:
            raise NotTaken(f"{where} ({self.name})", f"rows down to {ROWS:,}")
        if self.column > COLUMNS:
            raise NotTaken(f"{where} ({self.name})", f"{COLUMNS:,} columns at most")

    def _range(self, typed: str) -> None:
        self._cells(_area(typed), f", with the range {typed[:LONGEST_RANGE]} ({self.name})")

    def _cells(self, more: int, where: str = "") -> None:
        self.all.cells += more
        if self.all.cells > CELLS:
            raise NotTaken(f"{self.all.cells:,} cells, or more{where}", f"{CELLS:,} at most")


def number_of(letters: str) -> int:
    """28 for AB."""
    number = 0
    for letter in letters:
        number = number * 26 + ord(letter) - 64
    return number


def _area(typed: str) -> int:
    """Cells of a range such as A1:C9; 1 for anything else."""
    first, _, last = typed.partition(":")
    ends = [_CELL.fullmatch(one) for one in (first, last)]
    if ends[0] is None or ends[1] is None:
        return 1
    across, down = (abs(of(ends[1]) - of(ends[0])) + 1 for of in (_column, _line))
    return across * down


def _column(cell: re.Match[str]) -> int:
    return number_of(cell[1])


def _line(cell: re.Match[str]) -> int:
    return int(cell[2])
