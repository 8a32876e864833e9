"""A kind of battery that is only asked about: "how can I tell if mine is AGM or gel" states neither."""

from __future__ import annotations

from collections.abc import Sequence

from grammar.reading import Stated
from grammar.scene.scene import Scene

KIND = "battery.chemistry"


def without_kinds_asked(scene: Scene, stated: Sequence[Stated]) -> list[Stated]:
    """The facts without the kinds named in the sentence that asks how the kind is found out."""
    asked = {scene.clause(found.start) for found in scene.named("detail", "find_kind")}
    if not asked:
        return list(stated)
    spans = [scene.span(token, token + 1)[0] for token in range(len(scene.tokens)) if scene.clause(token) in asked]
    return [item for item in stated if item.fact != KIND or item.span[0] not in spans]
