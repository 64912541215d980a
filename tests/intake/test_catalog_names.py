"""Names of a catalog that are none, or stand twice: what is wrong beside them is told at its own line."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.intake.catalog_build import build_catalog
from budgetfix.intake.catalog_raw import raw_yaml_catalog
from budgetfix.intake.survey_file import read_survey

FRONT_ROOM = Path(__file__).parent / "rooms" / "front-room.yaml"


def told(folder: Path, text: str) -> list[str]:
    """Problems of a catalog beside a survey, as people read them."""
    path = folder / "catalog.yaml"
    path.write_text(text, encoding="utf-8")
    survey = read_survey(FRONT_ROOM).survey
    problems = build_catalog(raw_yaml_catalog(path), "EUR", "mm", ("f1",), ("declared",), survey)[1]
    return [str(problem) for problem in sorted(problems)]


@pytest.mark.parametrize(
    ("name", "found"), [("yes", ""), ("true", "yes"), ("[a]", "a list"), ("{a: 1}", "a block of keys")]
)
def test_a_name_that_is_no_word(tmp_path: Path, name: str, found: str) -> None:
    """A tick, a list or a block is no name of a remedy; it is told, and all else is read."""
    lines = told(tmp_path, f"remedies:\n- {{remedy: {name}, kind: declared}}\n")
    assert lines == ([f"catalog.yaml [line 2] found {found}, wanted words"] if found else [])


def test_beside_a_name_that_stands_twice(tmp_path: Path) -> None:
    """The second of two remedies or products with one name has its own problems at its own line."""
    text = (
        "products:\n"
        "- {product: p, price: 1}\n"
        "- {product: p, price: 1, shop: nowhere}\n"
        "remedies:\n"
        "- {remedy: a, kind: declared}\n"
        "- {remedy: a, kind: declared, on: Nothing, needs: [zzz]}\n"
    )
    assert told(tmp_path, text) == [
        "catalog.yaml [line 3] found 'p' a second time, wanted each name once",
        "catalog.yaml [line 3] found 'nowhere', wanted the name of a shop",
        "catalog.yaml [line 6] found 'a' a second time, wanted each name once",
        "catalog.yaml [line 6] found 'Nothing', wanted a name from the survey",
        "catalog.yaml [line 6] found 'zzz', wanted the name of a remedy",
    ]
