"""An answer beside the one before: whether it is the same, whether what was told changes it."""

from __future__ import annotations

import pytest

from tests.test_headlines import head


@pytest.mark.parametrize(
    ("turns", "topic", "opens"),
    [
        (("Is a 30 A charger fine on a 100 Ah AGM?", "And would you say the same for gel?"), "charger-size",
         "No, not the same: 30 A is too much"),
        (("Is a 30 A charger fine on a 100 Ah gel?", "Would you say the same of a 100 Ah AGM?"), "charger-size",
         "No, not the same: 30 A suits"),
        (("is 12.3 at rest ok for an AGM?", "is it the same for a wet one?"), "rest-voltage", "Yes, the same: 12.3 V"),
        (("Is a 720 CCA AGM enough for the Pike?", "it is really 480 CCA, does that change anything?"), "run-check",
         "Yes: your 480"),
        (("Is a 720 CCA AGM enough for the Pike?", "it is really 800 CCA, does that change anything?"), "run-check",
         "No, it stays a yes: your 800"),
        (("Is a 500 CCA AGM enough for the Pike?", "it is really 480 CCA, would that change it?"), "run-check",
         "No, it stays a no: your 480"),
        # told by a figure and not by a verdict
        (("fuse for the minnow with 35 mm2", "does that change with 25 mm2?"), "fuse-size", "No: fit a 175 A fuse"),
        (("how many outputs for engine, house and thruster?", "The thruster bank will be 24 V, two 12 V 75 Ah AGM in "
          "series. Does that change the outputs?"), "charger-banks", "Yes: 2 outputs"),
        # nothing was answered before, or no comparison is asked
        (("Is it the same for gel: a 30 A charger on 100 Ah?",), "charger-size", "No: 30 A"),
        (("Is a 720 CCA AGM enough for the Pike?", "and 480 CCA?"), "run-check", "No: your 480"),
    ],
)  # fmt: skip
def test_an_answer_is_compared_with_the_one_before(turns, topic, opens):
    assert head(*turns, topic=topic)[: len(opens)] == opens
