"""Giving water back: what tables offer to dried food, and how much of the lost water it takes up again.

Three waters are kept apart: the water offered, the water absorbed, and the water lost in drying. `DRYING_PAIRS` ties
the last to the water content before and after; the sum itself stands in `reckon`.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from packlarder.figures.dryness import Drying
from packlarder.figures.figure import Figure, Standing
from packlarder.figures.rows import listed, number_or_unknown, read_rows


class SoakWater(StrEnum):
    """The water that a published soak is for; hours for boiling water are not shortened again."""

    BOILING = "boiling"
    WARM = "warm"


@dataclass(frozen=True, slots=True, kw_only=True)
class Soaking:
    """Water offered to an air-dried food: US cups per US cup of dried pieces, and the shortest soak in hours.

    `other_cups` and `other_hours` are what another copy or body prints, None where nothing else was found.
    """

    id: str
    foods: tuple[str, ...]
    cups_per_cup: float
    hours: float
    water: SoakWater
    other_cups: float | None
    other_hours: float | None
    source: str
    standing: Standing


@dataclass(frozen=True, slots=True, kw_only=True)
class DryingPair:
    """A food of the table before and after drying.

    Water is in per cent of weight; the last two are g of fresh food and g of water lost, each per g dry.
    """

    fresh: str
    dried: str
    water_fresh_percent: float
    water_dried_percent: float
    fresh_per_dry: float
    water_per_dry: float
    source: str
    standing: Standing


@dataclass(frozen=True, slots=True, kw_only=True)
class WeighedSoak:
    """A soak that was weighed, all in g per g of dry food: the water offered and absorbed, the weight once drained.

    `stands_for_low` and `stands_for_high` bound the fresh food that it stands for.
    """

    fresh: str
    offered: float
    absorbed: float
    drained_weight: float
    stands_for_low: float
    stands_for_high: float
    source: str
    standing: Standing


def _soaking(row: Mapping[str, str]) -> Soaking:
    return Soaking(
        id=row["id"],
        foods=listed(row["foods"]),
        cups_per_cup=float(row["cups_per_cup"]),
        hours=float(row["hours"]),
        water=SoakWater(row["water"]),
        other_cups=number_or_unknown(row["other_cups"]),
        other_hours=number_or_unknown(row["other_hours"]),
        source=row["source"],
        standing=Standing(row["standing"]),
    )


def _drying_pair(row: Mapping[str, str]) -> DryingPair:
    return DryingPair(
        fresh=row["fresh"],
        dried=row["dried"],
        water_fresh_percent=float(row["water_fresh_percent"]),
        water_dried_percent=float(row["water_dried_percent"]),
        fresh_per_dry=float(row["fresh_per_dry"]),
        water_per_dry=float(row["water_per_dry"]),
        source=row["source"],
        standing=Standing(row["standing"]),
    )


SOAKINGS: Mapping[str, Soaking] = MappingProxyType({row["id"]: _soaking(row) for row in read_rows("soaking.csv")})
DRYING_PAIRS: tuple[DryingPair, ...] = tuple(map(_drying_pair, read_rows("drying_pairs.csv")))

_CARD = "US military recipe card A-11"
WEIGHED_SOAKS: tuple[WeighedSoak, ...] = (
    WeighedSoak(
        fresh="onion-raw",
        offered=6.2,
        absorbed=3.0,
        drained_weight=4.0,
        stands_for_low=8.0,
        stands_for_high=8.0,
        source=_CARD,
        standing=Standing.PUBLISHED,
    ),
    WeighedSoak(
        fresh="bell-pepper-green-raw",
        offered=16.7,
        absorbed=5.5,
        drained_weight=6.5,
        stands_for_low=15.0,
        stands_for_high=16.0,
        source=_CARD,
        standing=Standing.PUBLISHED,
    ),
)

UPTAKES: Mapping[Drying, Figure] = MappingProxyType(
    {
        Drying.FREEZE_DRIED: Figure(
            name="share of the water lost that freeze-dried food takes up again, at most",
            value=0.90,
            unit="of the water lost in drying",
            source="J. Food Eng. 72 (2006) 16-23, fruit, most of it in the first 30 s",
            standing=Standing.PUBLISHED,
        ),
        Drying.AIR_DRIED: Figure(
            name="share of the water lost that air-dried food takes up again",
            value=0.375,
            unit="of the water lost in drying",
            source=f"{_CARD}: onion 3.0 of 7.82, green pepper 5.5 of 15.04; the middle of the two",
            standing=Standing.COMPUTED,
            low=5.5 / 15.04,
            high=3.0 / 7.82,
        ),
    }
)
