"""What a term of the trade means, from the table of meanings."""

from __future__ import annotations

from service import reference
from service.case import Case
from service.reference import Row
from service.reply import Answer
from service.topic import Topic

TOPIC = Topic("meaning", "What a term means")

UNKNOWN = "We can't say yet: please tell us the term as it stands on the label or in the manual, and where you met it."
LONGEST = 30  # words of a headline


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The meaning of each term asked about; of kinds that are merely named beside another term, nothing."""
    terms = asked(case)
    if not terms:
        return TOPIC.says("needs-facts", UNKNOWN)
    first = [meaning(terms[0])]
    for term in terms[1:]:
        if len(" ".join((*first, meaning(term))).split()) <= LONGEST:
            first.append(meaning(term))
    rest = [term for term in terms if meaning(term) not in first]
    for term in rest:  # what each term means comes before what there is to say of any: the first steps are shown
        case.step(f"{meaning(term)}.", term["id"].cite)
    for term in terms:
        more = str(term["more"].value) if "more" in term else f"{meaning(term)}."
        case.step(more, term["id"].cite)
    return TOPIC.says("information", f"{'; '.join(first)}.")


def asked(case: Case) -> list[Row]:
    """The rows of the terms in the question: the strong ones, else the weak ones."""
    rows = [row for row in reference.rows("meanings") if case.says(f"term:{row['id'].value}")]
    return [row for row in rows if "weak" not in row] or rows


def meaning(term: Row) -> str:
    """One term in words: "Inrush is the short jump of current ..."."""
    return f"{term['name'].value} is {term['short'].value}"
