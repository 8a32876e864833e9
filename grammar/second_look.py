"""Figures that the rules and the points have settled, looked at again with the whole message in view."""

from __future__ import annotations

from grammar.asked_to_give import asked_to_give, volts_of_as_many
from grammar.attach import Claim
from grammar.emptied import emptied
from grammar.laid import laid
from grammar.products import summed
from grammar.scene import Scene
from grammar.sunlit import of_the_sun
from grammar.tested_at import drawn_as_read
from grammar.under import told_under
from grammar.whose_amps import placed

LOOKS = (emptied, told_under, drawn_as_read, placed, of_the_sun, summed, laid, asked_to_give, volts_of_as_many)


def looked_again(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims with those that a second look mends, one look after the other."""
    for look in LOOKS:
        claims = claims | look(scene, claims)
    return claims
