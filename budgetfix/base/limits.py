"""How much the tool takes on: past these it refuses, and says which figure is past which limit."""
