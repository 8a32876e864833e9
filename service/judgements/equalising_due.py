"""Whether a wet-cell battery is due to be equalised, by how far its cells are apart."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import reference
from service.case import Case
from service.rules.readings import NEAR, limit
from service.told import equal_cells

ASKED = regex(
    r"\b(?:do|does|should|shall|must|needs?|is|are|would|time to|due|worth)\b[^.?!;]{0,30}\bequali[sz]\w*"
    r"|\bequali[sz]\w*[^.?!;]{0,16}\b(?:needed|necessary|due|now)\b",
    re.IGNORECASE,
)


def told(case: Case, spread: float | None) -> str:
    """The answer where it is asked whether to equalise; "" where it is not, or where a cell fails."""
    if spread is None and equal_cells.alike(case.text):
        spread = 0.0
    if spread is None or not ASKED.search(case.text) or spread >= limit("gravity-spread") - NEAR:
        return ""
    least = reference.value("care", "equalise-spread")
    case.source(least.cite)
    due = f"a wet-cell battery is equalised from {least.value:.3f} on"
    if spread >= float(least.value) - NEAR:
        return f"Yes, once it is charged right through: the cells differ by {spread:.3f}, and {due}, watched."
    apart = "all cells read alike" if spread < NEAR else f"the cells differ by only {spread:.3f}"
    return f"Not for its cells: {apart}, and {due}, or about every 3 months in use."
