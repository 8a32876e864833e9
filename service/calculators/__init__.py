"""Pure arithmetic: plain numbers in canonical units in, plain numbers out."""
