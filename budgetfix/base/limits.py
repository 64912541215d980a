"""How much the tool takes on: past these it refuses, and says which figure is past which limit."""

RECORD_BYTES = 4_000_000
"""Of the record of moves that an interrupted run leaves: a hundred bytes a file, so room for thousands of houses."""
MOST_MONEY_MINOR = 10**12
"""Any one sum of money, in minor units: ten thousand million in a currency of two digits. Tried to be exact there."""
MOST_ALL_MINOR = 10**15
"""All that a job could spend together, in minor units: a workbook keeps 15 digits of a sum."""
MOST_NUMBER = 10**12
"""Any number at all; larger ones are slips of a keyboard."""
MOST_WHOLE = 10**9
"""Points of a fault, amounts, and all else that is counted. Tried to be exact there."""
MOST_MINUTES = 10**6
"""Minutes of a session, a step or a wait: nearly two years by day and night."""
MOST_DAYS = 36_500
"""Days until goods come, or may be given back: a hundred years."""
FIRST_YEAR, LAST_YEAR = 1900, 2900
"""Dates: far enough from both ends of the calendar that no sum of days leaves it."""
MOST_PRODUCTS = 2_000
"""Of a catalogue."""
MOST_REMEDIES = 2_000
"""Of a catalogue."""
MOST_TOOLS = MOST_SHOPS = 200
"""Of a catalogue: each is a row of money in every program."""
MOST_STEPS = 40
"""Of one remedy."""
MOST_FAULTS = 2_000
"""Listed ones."""
MOST_SESSIONS = 60
"""In the list of hours: more than a year of Saturdays."""
MOST_PEOPLE = 6
"""At work on one job: each step is tried with every crew of them."""
MOST_HANDS = 1_000
"""That one step may ask for; more than there are is read, and never chosen."""
MOST_ERRANDS = 20
"""Rounds of shops."""
MOST_ROOMS = 32
"""Of one survey: each is inspected again and again."""
MOST_WALLS = 60
"""Of one room."""
MOST_THINGS_IN_ROOM = 100
"""Openings, furniture, pictures, lights, sockets and all else that is measured in one room."""
BOOK_BYTES = 200_000_000
"""A workbook on disk. Ours have some 100 kilobytes; ten photographs of a telephone, pasted in, have some 50 megabytes
and are never unpacked."""
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
