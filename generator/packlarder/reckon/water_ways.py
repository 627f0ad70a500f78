"""The waters of one dry gram: offered, absorbed, drained, by the way its component comes back."""

from collections.abc import Mapping

from packlarder.book.bring_back import BringBack, Warmth, Way
from packlarder.faults import Gap
from packlarder.figures.dryness import Drying
from packlarder.figures.hands import PLENTY
from packlarder.figures.soaking import UPTAKES
from packlarder.reckon.measures import in_grams
from packlarder.reckon.records import WaterPerGram, Yielded

ALWAYS_BOILING = frozenset({Way.POUR_OVER})
STAYS_IN = frozenset({Way.MIX, Way.MOISTEN, Way.POUR_OVER})
"""Ways in which all the water that is given stays with the food."""


def water_per_gram(
    back: BringBack, dried: Drying | None, yielded: Yielded | None, per: Mapping[str, float]
) -> WaterPerGram | Gap:
    """Work out the waters of one dry gram; a Gap says what to weigh or write where they can not be known.

    `per` gives the weight of the component's measures. Where the author names no amounts, the water lost in drying is
    the guide: what is absorbed is less than what was lost (figures/soaking), what is offered is more (figures/hands).
    """
    amount_g = None if back.amount is None else in_grams(back.amount, per)
    if back.amount is not None and amount_g is None:
        return Gap(what="its water", missing=f"weigh {_spoken(back)} of it and write it under `weighs`")
    rule = _uptake(dried, yielded)
    offered = _stated(back.water.quantity.base if back.water.quantity else None, amount_g)
    takes = _stated(back.takes.base if back.takes else None, amount_g)
    assumed = offered is None or (takes is None and back.way is Way.SOAK)
    offered, takes = _filled(back.way, offered, takes, rule, yielded)
    if offered is None:
        help = "write an amount with its water, like `soak: 50 g, with: 300 mL hot water`"
        return Gap(what="its water", missing=help)
    return WaterPerGram(
        way=back.way,
        warmth=Warmth.BOILING if back.way in ALWAYS_BOILING else back.water.warmth,
        offered_ml=offered,
        takes_ml=takes,
        wait_min=back.wait.base if back.wait else 0,
        stir_at_min=back.stir_at.base if back.stir_at else None,
        cosy=back.cosy,
        assumed=assumed and back.way is not Way.IN_THE_POT,
    )


def _spoken(back: BringBack) -> str:
    return f"{back.amount.number:g} {back.amount.noun or back.amount.unit.name}" if back.amount else "a measure"


def _stated(water_ml: float | None, amount_g: float | None) -> float | None:
    return None if water_ml is None or not amount_g else water_ml / amount_g


def _uptake(dried: Drying | None, yielded: Yielded | None) -> float | None:
    if yielded is None or yielded.lost_ml == 0:
        return None
    drying = Drying.FREEZE_DRIED if dried is Drying.FREEZE_DRIED else Drying.AIR_DRIED
    return yielded.lost_ml * UPTAKES[drying].value


def _filled(
    way: Way, offered: float | None, takes: float | None, rule: float | None, yielded: Yielded | None
) -> tuple[float | None, float | None]:
    """Fill what the author left out of offered and absorbed."""
    lost = yielded.lost_ml if yielded and yielded.lost_ml else None
    if way is Way.IN_THE_POT:
        return 0.0, takes if takes is not None else rule
    if way is Way.MOISTEN:
        given = offered if offered is not None else takes if takes is not None else rule
        return given, given
    if way in STAYS_IN:
        given = offered if offered is not None else lost
        return given, given
    offered = offered if offered is not None else None if lost is None else lost * PLENTY.value
    takes = takes if takes is not None else rule
    return offered, None if offered is None else offered if takes is None else min(takes, offered)
