"""Candidates, bills and brief as one integer problem."""
