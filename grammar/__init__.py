"""What can be said to the battery desk: text in; quantities, facts and cues out. Knows no rule and no topic."""

from grammar.quantities import read_quantities
from grammar.reader import read

__all__ = ["read", "read_quantities"]
