"""One file a kind of remedy; each is named by hand in the registry."""
