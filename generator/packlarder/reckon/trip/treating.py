"""Water that is made fit to drink: which, how, and how long it takes until it may be drunk."""

from packlarder.book.stop import Fills, WaterTreatment
from packlarder.figures import trips
from packlarder.reckon.trip.records import StopSums

_WITH_CHLORINE = frozenset({WaterTreatment.CHLORINE, WaterTreatment.FILTER_AND_CHLORINE})


def is_treated(stop: StopSums) -> bool:
    """Tell whether water that is filled at a stop is treated before it is drunk."""
    return stop.model.treatment is not None


def is_boiled(stop: StopSums) -> bool:
    """Tell whether water that is filled at a stop is boiled to be safe."""
    return stop.model.treatment is WaterTreatment.BOILING


def is_melted(stop: StopSums) -> bool:
    """Tell whether water that is filled at a stop is snow, which is melted first."""
    return stop.model.fills is Fills.SNOW


def wants_flame(stop: StopSums) -> bool:
    """Tell whether water that is filled at a stop is melted or boiled before it is drunk."""
    return is_melted(stop) or is_boiled(stop)


def wait_min(stop: StopSums) -> int:
    """Give how long water of a stop must boil, or stand with what was put in; cooling is not counted.

    A filter gives water that may be drunk at once.
    """
    by = stop.model.treatment
    if by is None or by is WaterTreatment.FILTER:
        return 0
    if by is WaterTreatment.BOILING:
        return rolling_boil_min(stop.conditions.height_m)
    if by in _WITH_CHLORINE:
        cold = stop.conditions.water_c <= trips.VERY_COLD.value
        return int((trips.CHLORINE_WAIT_COLD if cold else trips.CHLORINE_WAIT).value)
    return int(trips.CHLORINE_DIOXIDE_WAIT.value)


def rolling_boil_min(height_m: float) -> int:
    """Give how long water must boil to be safe, at a height."""
    high = height_m > trips.BOIL_LONGER_ABOVE.value
    return int((trips.ROLLING_BOIL_HIGH if high else trips.ROLLING_BOIL).value)
