"""The survey as records, its geometry, and changes to it."""
