"""A drawing as a crisp picture for workbooks, the same to the byte on every machine: it brings its own letters."""

from __future__ import annotations

from importlib.resources import as_file, files

from budgetfix.exports.drawings.picture import Picture

LETTERS = "DejaVuSans.ttf"
FAMILY = "DejaVu Sans"
SHARP = 3.0
"""Dots for one unit: 1,080 across a picture of 360 units."""


def png(picture: Picture, sharp: float = SHARP) -> bytes:
    """The picture as PNG, `sharp` dots a unit."""
    import resvg_py

    with as_file(files("budgetfix.exports.drawings") / LETTERS) as letters:
        return bytes(
            resvg_py.svg_to_bytes(
                svg_string=picture.svg,
                width=round(picture.width * sharp),
                height=round(picture.height * sharp),
                skip_system_fonts=True,
                font_files=[str(letters)],
                sans_serif_family=FAMILY,
                font_family=FAMILY,
            )
        )
