"""What a verdict means in words, and what each reply to a question back would lead to."""

from __future__ import annotations

from collections.abc import Sequence

THEN = {"yes": "yes", "no": "no", "marginal": "only just", "needs-facts": "one more fact is needed"}
MEANS = {  # what a verdict means where yes and no alone could be taken the wrong way
    "replacement": {"yes": "keep it", "marginal": "in its last years", "no": "time for a new one"},
    "load-voltage": {"yes": "as it should be", "no": "too weak"},
    "standing-drain": {"yes": "half is left by then", "marginal": "about half is left", "no": "under half by then"},
    "fuse-size": {"yes": "yes", "no": "too thin", "marginal": "only just"},
    "freeze-point": {"yes": "it will not freeze", "marginal": "close to freezing", "no": "it can freeze"},
}
UNDECIDED = {"", "information", "needs-facts"}


def outcomes(verdicts: Sequence[str], topic: str) -> list[str]:
    """In words what each of several replies would lead to; "" for all of them where they decide nothing.

    >>> outcomes(["yes", "no", "information"], "load-voltage"), outcomes(["yes", "yes"], "run-check")
    (['as it should be', 'too weak', ''], ['', ''])
    """
    differ = set(verdicts)
    if differ <= UNDECIDED or (len(differ) == 1 and len(verdicts) > 1):
        return [""] * len(verdicts)
    means = MEANS.get(topic, THEN)
    return ["" if verdict == "information" else means.get(verdict, THEN.get(verdict, verdict)) for verdict in verdicts]
