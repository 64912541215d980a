"""Rules in, findings out: what is off in a room, and by how much."""
