"""Files out: the only folder that writes."""
