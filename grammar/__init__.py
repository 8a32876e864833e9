"""What can be said to the battery desk: text in; quantities, facts and cues out. Knows no rule and no topic."""

from grammar.reader import read
from grammar.text.quantities import read_quantities

__all__ = ["read", "read_quantities"]
