"""Figures that the rules and the points have settled, looked at again with the whole message in view."""

from __future__ import annotations

from grammar.scene.claims import Claim
from grammar.scene.scene import Scene
from grammar.told.batteries.bare_sizes import by_number, called
from grammar.told.batteries.cranking_so import cranking_so
from grammar.told.batteries.how_full import charge_shown
from grammar.told.batteries.lithium_limits import asked_to_give, beside_its_size
from grammar.told.batteries.volts_summed import adds_up
from grammar.told.batteries.weights import in_kilos
from grammar.told.cables.laid import laid
from grammar.told.chargers.asked_after import asked_after
from grammar.told.chargers.boxes import box_amps, of_a_box
from grammar.told.chargers.held import held_on
from grammar.told.chargers.off_alternator import off_alternator
from grammar.told.cold.degrees import told_under
from grammar.told.currents.by_phrase import by_phrase
from grammar.told.currents.emptied import emptied
from grammar.told.currents.its_load import its_load
from grammar.told.currents.kept_running import kept_running
from grammar.told.currents.on_plates import on_plates
from grammar.told.currents.products import summed
from grammar.told.currents.sunlit import of_the_sun
from grammar.told.currents.while_told import while_told
from grammar.told.currents.whose_amps import placed
from grammar.told.readings.load_test import drawn_as_read
from grammar.told.readings.quoted import without_marks
from grammar.told.readings.whole_volts import volts_of_as_many, whole_volts

MOST_FIGURES = 300  # a message with more is a table, which a person reads
LOOKS = (
    *(emptied, told_under, drawn_as_read, placed, of_the_sun, summed, laid, asked_to_give, volts_of_as_many),
    *(of_a_box, its_load, adds_up, in_kilos, by_number, charge_shown, whole_volts, off_alternator),
    *(called, box_amps, by_phrase, on_plates, held_on, while_told, cranking_so, without_marks, asked_after),
    *(beside_its_size, kept_running),
)


def looked_again(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims with those that a second look mends, one look after the other."""
    if sum(bool(item.dim) for item in scene.items) > MOST_FIGURES:
        return claims
    for look in LOOKS:
        claims = claims | look(scene, claims)
    return claims
