"""A yes or no to a proposal: "one charger for three batteries, ok?" gets "Yes, with 3 outputs"."""

from __future__ import annotations

from dataclasses import replace

from service.reply import Answer

CONDITIONS = {  # how an answer that only proposes begins, and how it does where it was asked whether it may be so
    "charger-banks": (
        ("A charger with ", "Yes, with "),
        ("One output is ", "Yes: one output is "),
        ("One ", "Yes: one "),
    ),
    "charger-setting": (
        ("None of them: each ", "No: each of its settings "),
        ("None is made ", "Only just: none is made "),
    ),
}

JUDGED = ("information", "marginal", "no")


def granted(answer: Answer) -> Answer:
    """The answer opened with its yes, where what it proposes is what was asked for."""
    for begins, opens in CONDITIONS.get(answer.topic, ()):
        if answer.verdict in JUDGED and answer.headline.startswith(begins):
            return replace(answer, headline=f"{opens}{answer.headline.removeprefix(begins)}")
    return answer
