"""How much the tool takes on: past these it refuses, and says which figure is past which limit."""

BOOK_BYTES = 32_000_000
"""A workbook on disk, photographs pasted into it and all; one of ours has some 100 kilobytes."""
TEXT_BYTES = 8_000_000
"""A CSV or JSON file: some 20,000 products."""
YAML_BYTES = 2_000_000
"""A YAML file: some 5,000 products. Reading takes about half a second for each 100 kilobytes."""
UNPACKED_BYTES = 64_000_000
"""All that is read of a workbook, unpacked: 250,000 cells take about a quarter of it."""
PARTS = 2_000
"""Parts of a workbook (sheets, styles, pictures): one a sheet, one a picture, and some twenty more."""
CELLS = 250_000
"""Cells of a workbook, those under merged, linked and table ranges included: 10,000 rows of 25 columns."""
ROWS = 20_000
"""The lowest row with something in it."""
COLUMNS = 500
"""The column farthest right with something in it, of which ours read 80."""
ELEMENTS = 1_500_000
"""Pieces of markup in a workbook: a cell is three of them at most."""
ELEMENTS_ASIDE = 120_000
"""Pieces of markup outside of sheets and texts: bloated style lists of old workbooks have some 100,000."""
MARKUP_DEPTH = 100
"""Markup within markup: workbooks go down to about 15."""
FORMULA_SIGNS = 20_000_000
"""Signs of formulas that are shared by several cells, times the cells: each is worked out anew for its cell."""
VALUES = 100_000
"""Values of a YAML file, each counted as often as it is used by its name: 5,000 products of 20 fields."""
NESTING = 40
"""Blocks within blocks of a YAML file: a catalogue goes down to about six."""
NAME_SIGNS = 500
"""A tag or an anchor of a YAML file, of which ours use none."""
LONGEST_TEXT = 10_000
"""Signs of any one text of a file, a list of names in one cell included."""
LONGEST_NAME = 300
"""Signs of a name, or of a sentence about one thing: three lines of a page."""
