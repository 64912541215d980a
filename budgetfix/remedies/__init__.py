"""What could be done: candidates, each with one product sized to fit."""
