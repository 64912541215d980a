"""Files in: the only folder that opens files to read."""
