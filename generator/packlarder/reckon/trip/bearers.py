"""Who carries which pack: each goes to whoever carries least so far for what they can bear, the heaviest first."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace

from packlarder.reckon.trip.records import Eater, TripPack


def with_bearers(packs: Sequence[TripPack], eaters: Sequence[Eater]) -> tuple[TripPack, ...]:
    """Give packs to people; what lies in another pack goes with it, what is bought on the way is shared out last."""
    strong = [one for one in eaters if one.burden > 0]
    outer = [pack for pack in packs if not pack.inside]
    weight_g: dict[str, float] = defaultdict(float)
    for pack in packs:
        weight_g[pack.inside or pack.mark] += pack.grams
    load_g = {one.name: 0.0 for one in strong}
    bearer: dict[str, str] = {}
    for pack in sorted(outer, key=lambda pack: (pack.bought_at is not None, -weight_g[pack.mark])) if strong else ():
        chosen = min(strong, key=lambda one: round(load_g[one.name] / one.burden, 6))
        load_g[chosen.name] += weight_g[pack.mark]
        bearer[pack.mark] = chosen.name
    return tuple([replace(pack, bearer=bearer.get(pack.inside or pack.mark, "")) for pack in packs])
