"""What a remedy changes, as words in one cell."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.catalog.models import SetChange
from budgetfix.exports.catalog_text import changes_text, set_text
from budgetfix.intake.catalog_build import build_catalog
from budgetfix.intake.catalog_raw import raw_csv_catalog

SET = (("from_left", 1500.0), ("hem", -10.0), ("pad", True), ("round", False), ("stack", None), ("wall", "B"))
CHANGES = (
    SetChange(item="screen", set=(("bottom", 554.5),)),
    SetChange(item="old lamp", remove=True),
    SetChange(table="lights", item="new lamp", set=(("lumens", 1055.0), ("what", "floor lamp")), add=True),
)


def test_words() -> None:
    """Lengths in the book's unit, yes and no, nothing as `none`; lumens are no length."""
    assert set_text(SET, "cm") == "from_left = 150; hem = -1; pad = yes; round = no; stack = none; wall = B"
    assert changes_text(CHANGES, "cm") == (
        "screen: bottom = 55.45 | remove old lamp | add lights new lamp: lumens = 1055; what = floor lamp"
    )
    assert (set_text((), "mm"), changes_text((), "mm")) == ("", "")


@pytest.mark.parametrize("unit", ["in", "cm", "mm"])
def test_words_read_back(tmp_path: Path, unit: str) -> None:
    """Whatever is written into the cell is read back as the same changes, in every unit."""
    path = tmp_path / "catalog.csv"
    path.write_text(
        f"remedy,kind,on,set,changes\nm,k,rug,{set_text(SET, unit)},{changes_text(CHANGES, unit)}\n", encoding="utf-8"
    )
    catalog, problems = build_catalog(raw_csv_catalog(path), "EUR", unit, (), ("k",))
    assert problems == []
    assert (catalog.remedies[0].set, catalog.remedies[0].changes) == (SET, CHANGES)
