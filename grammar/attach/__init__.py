"""Which fact a quantity states, by rules in a written order: a file a dimension."""
