"""The sums of a dish turned, so that each figure's row over the numbers of servings lies in one piece."""

from typing import NamedTuple

from packlarder.book.bring_back import Way


class PartColumns(NamedTuple):
    """The fields of `PartSums`, in their order, each for every number of servings."""

    dry_g: tuple[float, ...]
    fresh_g: tuple[float | None, ...]
    way: tuple[Way | None, ...]
    offered_ml: tuple[float, ...]
    absorbed_ml: tuple[float | None, ...]
    drained_ml: tuple[float, ...]


class StepColumns(NamedTuple):
    """The fields of `StepSums`, in their order, each for every number of servings."""

    start_min: tuple[float, ...]
    end_min: tuple[float, ...]
    boil_up_min: tuple[float, ...]
    cook_min: tuple[float, ...]
    wait_min: tuple[float, ...]
    water_ml: tuple[float, ...]
    from_drain_ml: tuple[float, ...]
    standing_ml: tuple[float, ...]
    drained_ml: tuple[float, ...]
    heater_ml: tuple[float, ...]
    heated_ml: tuple[float, ...]
    boiled_off_ml: tuple[float, ...]
    rounds: tuple[int, ...]
    vessels: tuple[int, ...]
    heat_kj: tuple[float, ...]
    steeped_c: tuple[float | None, ...]


class WaterColumns(NamedTuple):
    """The fields of `WaterSums`, in their order, each for every number of servings."""

    in_food_ml: tuple[int, ...]
    drained_away_ml: tuple[int, ...]
    pot_ml: tuple[int, ...]
    boiled_off_ml: tuple[int, ...]
    drink_ml: tuple[int, ...]
    heater_ml: tuple[int, ...]
    spare_ml: tuple[int, ...]
    carry_ml: tuple[int, ...]
    hot_ml: tuple[int, ...]
