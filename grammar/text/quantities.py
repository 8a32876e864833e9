"""The quantities of a text."""

from __future__ import annotations

from grammar.reading import Quantity
from grammar.text.parts import parts


def read_quantities(text: str) -> list[Quantity]:
    """The quantities in their order. A range gives two of one span, bound "low" and "high". Raises nothing.

    >>> [(one.value, one.unit, one.kind) for one in read_quantities("2 x 100Ah, 20' of 2/0")]
    [(2.0, '', 'count'), (100.0, 'ampere_hour', ''), (20.0, 'foot', ''), ('2/0', '', 'wire_gauge')]
    """
    return [quantity for part in parts(text) for quantity in part.quantities]
