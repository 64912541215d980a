"""A workbook unpacked within limits and packed anew: openpyxl gets only parts that were measured and looked through.

Nothing is unpacked before the list of parts was held against the limits, and no part further than its share of them,
whatever size it claims. Pictures, charts, programs, other files inside, links to other files and their stored values
stay out of the new parcel. Workbooks are parcels of parts (ECMA-376, part 2): these are stored or deflated, in UTF-8 or
UTF-16, and a document type declaration is an error there.
"""

from __future__ import annotations

import io
import struct
import zipfile
import zlib
from collections.abc import Iterator
from typing import IO
from xml.etree import ElementTree

from budgetfix.base.limits import BOOK_BYTES, PARTS, UNPACKED_BYTES
from budgetfix.intake.markup import Markup, NotTaken

NO_PARCEL = (zipfile.BadZipFile, zlib.error, struct.error, EOFError, ValueError, LookupError, RuntimeError, OSError)
"""What the standard library says of bytes that are no parcel, or a damaged or locked one; all of it is in memory."""
ENTRY = b"PK\x01\x02"
"""How each entry of the list of parts begins (the ZIP file format, 4.3.12)."""
PIECE = 65_536
READ = (".xml", ".rels")
PROGRAMS = ("vbaproject.bin", "/macrosheets/", "/activex/")
"""Names of parts that run."""
ASIDE = (
    "xl/externallinks/", "xl/media/", "xl/embeddings/", "xl/drawings/", "xl/charts/", "xl/diagrams/", "xl/ctrlprops/",
    "xl/querytables/", "xl/connections.xml", "xl/webextensions/", "xl/slicers/", "xl/slicercaches/", "xl/model/",
    "xl/threadedcomments/", "xl/persons/", "xl/calcchain.xml", "customxml/", "customui/", "_xmlsignatures/",
)  # fmt: skip
"""Parts that say nothing about a room: not unpacked, not carried on. Any program makes the order of formulas anew."""
UNRELATED = (
    "drawing", "image", "oleObject", "package", "externalLink", "externalLinkPath", "vbaProject", "connections",
    "queryTable", "control", "ctrlProp", "customXml", "attachedToolbars", "xlMacrosheet", "printerSettings",
    "calcChain",
)  # fmt: skip
"""Ties to such parts, by the last word of their type."""


def repacked(data: bytes) -> bytes:
    """The workbook with what may be read of it, not compressed. Errors: NotTaken, and those of NO_PARCEL."""
    if len(data) > BOOK_BYTES:
        raise NotTaken(f"{len(data):,} bytes", f"{BOOK_BYTES:,} at most")
    if data.count(ENTRY) > PARTS:
        raise NotTaken(f"{data.count(ENTRY):,} parts in the workbook", f"{PARTS:,} at most")
    made = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(made, "w", zipfile.ZIP_STORED) as new:
        parts = old.infolist()
        _names(parts)
        wanted = [part for part in parts if _is_read(part.filename)]
        claimed = sum(part.file_size for part in wanted)
        if claimed > UNPACKED_BYTES:
            raise _too_much(claimed)
        markup = Markup()
        for part in wanted:
            text = _unpacked(old, part, UNPACKED_BYTES - markup.read_bytes)
            markup.look(part.filename, text)
            new.writestr(part.filename, _untied(text) if part.filename.endswith(".rels") else text)
    return made.getvalue()


def _names(parts: list[zipfile.ZipInfo]) -> None:
    names = [part.filename.lower() for part in parts]
    if len(set(names)) < len(names):
        raise NotTaken("a part of the workbook twice", "each part once")
    for name in names:
        if name.endswith(PROGRAMS[0]) or any(folder in f"/{name}" for folder in PROGRAMS[1:]):
            raise NotTaken("a workbook with macros", "one without, saved as .xlsx")


def _is_read(name: str) -> bool:
    return name.lower().endswith(READ) and not name.lower().startswith(ASIDE)


def _too_much(size: int) -> NotTaken:
    return NotTaken(f"{size:,} bytes when unpacked", f"{UNPACKED_BYTES:,} at most")


def _unpacked(parcel: zipfile.ZipFile, part: zipfile.ZipInfo, most: int) -> bytes:
    """A part, piece by piece. What goes on behind the size that it claims is damage. Errors: NotTaken, BadZipFile."""
    if part.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
        raise zipfile.BadZipFile("neither stored nor deflated")
    text = bytearray()
    with parcel.open(name=part, mode="r") as packed:
        for piece in _pieces(packed):
            text += piece
            if len(text) > most:
                raise _too_much(UNPACKED_BYTES - most + len(text))
    if len(text) != part.file_size:
        raise zipfile.BadZipFile("another size than it claims")
    return bytes(text)


def _pieces(packed: IO[bytes]) -> Iterator[bytes]:
    while piece := packed.read(PIECE):
        yield piece


def _untied(text: bytes) -> bytes:
    """Ties between parts without those to parts that are not read. Errors: ElementTree.ParseError."""
    root = ElementTree.fromstring(text)
    for tie in list(root):
        if tie.get("Type", "").rpartition("/")[2] in UNRELATED:
            root.remove(tie)
    made: bytes = ElementTree.tostring(root)
    return made
