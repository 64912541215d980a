"""The chosen set applied, inspected, billed and timed again."""
