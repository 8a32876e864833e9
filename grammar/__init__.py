"""What can be said to the battery desk: text in, quantities, facts, cues and clauses out. Knows no rule and no answer."""

from grammar.quantities import read_quantities
from grammar.reader import read

__all__ = ["read", "read_quantities"]
