"""budgetfix: which fixes for a room, with which products, in what order, for what money and hours."""

__version__ = "0.7.0"
