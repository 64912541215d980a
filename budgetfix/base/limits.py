"""How much the tool takes on: past these it refuses, and says which figure is past which limit."""

RECORD_BYTES = 4_000_000
"""Of the record of moves that an interrupted run leaves: a hundred bytes a file, so room for thousands of houses."""
