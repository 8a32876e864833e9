"""From a text to its parts: tokens, numbers, units, quantities. Knows no word of the trade but units."""
