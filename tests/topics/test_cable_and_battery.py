"""A cable told twice, how long one may be, and the battery beside the cable."""

import pytest

from tests.talks import on, plain, talk


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        (
            "95 mm2 or 2x50 mm2 for 400A, 10 m there and back, 12V?",
            "Neither will do for 400 A: 95 mm² may carry 385 A, two of 50 mm² may carry 294 A; fit 120 mm²",
        ),
        ("two times 70 mm2 or one 120 mm2 for 300 A over 6 m, 12 V?", "Take 120 mm²:"),
        ("2x35 mm2 or 70 mm2 for a Pike, 5 m?", "Take 70 mm²:"),
        ("is 2x70 mm2 ok for 350 A over 5 m at 12 V?", "We can't say yet: two of 70 mm² side by side may carry 396 A"),
        ("2x95 mm2 or 70 mm2 for 350 A, 5 m, 12 V?", "Take two of 95 mm²:"),
        ("50 or 70 mm2 for a Pike, 5 m?", "Take 70 mm²:"),
    ],
)
def test_a_cable_told_twice_counts_twice_at_the_share_of_cables_side_by_side(text, opens):
    assert plain(on("cable-size", text).headline).startswith(opens)


def test_two_batteries_are_no_two_cables():
    assert plain(on("cable-size", "what size cable for a Pike with 2x 100 Ah, 5 m").headline).startswith("Use 70 mm²")


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("how far can I go with 70 mm² from the battery to a Pike", "At most 8 m (26.2 ft) one way, as our catalogue"),
        ("I have 50 mm2 cable. How long can the run be for a Minnow?", "At most 10 m (32.8 ft) one way"),
        ("max length of 25 mm2 for 120 A, 24 V?", "At most 13.9 m (45.6 ft) one way: over that 25 mm² loses 2.40 V"),
        ("What is the longest run of 4/0 AWG for a 340 A motor at 12 V?", "At most 33.5 ft (10.2 m) one way"),
        (
            "1) Is 800 A CCA enough for the Pike 2) how far may the battery be from it with 70 mm²",
            "At most 8 m (26.2 ft) one way",
        ),
    ],
)
def test_how_far_a_cable_may_go(text, opens):
    assert plain(on("cable-size", text).headline).startswith(opens)


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("how far from the battery must the fuse be with 70 mm2, Pike", "fuse-size"),
        ("how far can I go with a 100 Ah battery and a Minnow", "run-time"),
        ("what size cable for a Pike over 5 m", "cable-size"),
    ],
)
def test_other_distances_are_no_longest_run(text, topic):
    found = talk(text).answers[0]
    assert found.topic == topic
    assert "At most" not in found.headline


@pytest.mark.parametrize(
    ("turns", "opens"),
    [
        (
            ("will my battery run the Pike", "95Ah AGM 800CCA, 35mm2 cable 7m each way"),
            "No: the battery would do, but the 35 mm² cable may carry only 210 A, and the Pike draws 260 A;",
        ),
        (
            ("700 CCA flooded, 25 mm2, 9 m one way, Minnow. ok?",),
            "No: the battery would do, but the 25 mm² cable loses 12.9 %",
        ),
        (("800 CCA AGM with 95 mm2, 4 m, Pike?",), "Yes: your 800 CCA AGM battery holds"),
    ],
)
def test_battery_and_cable_are_each_told(turns, opens):
    assert plain(on("run-check", *turns).headline).startswith(opens)


@pytest.mark.parametrize(
    ("text", "ends"),
    [
        ("Pike 12V, AGM 90Ah, 6m run 35mm2 one way. OK?", "; the battery needs 650 CCA."),
        ("Pike, 4 m one way, is 70 mm2 cable thick enough?", "may carry 330 A."),  # no battery is told of
    ],
)
def test_beside_the_cable_the_battery_is_told_of(text, ends):
    assert plain(on("cable-size", text).headline).endswith(ends)


@pytest.mark.parametrize(
    ("turns", "opens"),
    [
        (
            ("what size battery box fits a group 31", "ok and will one of those drive a Pike"),
            "We can't say yet: a group 31 battery usually has 650 to 1150 CCA, and the Pike needs 650 CCA",
        ),
        (("does a group 27 agm run the minnow",), "We can't say yet: a group 27 battery"),
        (("will a group 24 run the Pike",), "We can't say yet: a group 24 battery usually has 500 to 800 CCA"),
        (("will my battery run the Pike",), "We can't say yet: the Pike needs a battery of 650 CCA or more"),
        (("will a group 31 with 700 CCA run the Pike",), "Yes: your 700 CCA battery"),
    ],
)
def test_a_case_size_tells_what_is_usual(turns, opens):
    assert plain(on("run-check", *turns).headline).startswith(opens)
