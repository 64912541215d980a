"""One file a rule; each is named by hand in the registry."""
