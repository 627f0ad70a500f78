"""The words for a trip's water, in one catalogue for page, booklet and plain text.

Phrases hold places in braces, into which the page puts figures of both systems and the others texts.
"""

from collections.abc import Mapping
from types import MappingProxyType

from packlarder.book.stop import Fills, OtherWater, WaterTreatment
from packlarder.reckon.trip.journey import Leg
from packlarder.reckon.trip.records import PlannedTrip
from packlarder.sheets import words
from packlarder.sheets.series import to_the_minute
from packlarder.sheets.trip_names import stop_called

PIECES: Mapping[str, str] = MappingProxyType(
    {
        **words.WATERS,
        "drink_ml": "in drinks that are dishes",
        "drinking_ml": "drunk plain",
        "washing_ml": "for washing",
        "spare_day_ml": "for the spare day",
        "margin_ml": "margin and rounding",
    }
)
"""The pieces of a leg's water, in the order of the records; those of its dishes are called as on the page of a dish."""
FILLS: Mapping[Fills, str] = MappingProxyType(
    {Fills.TAP: "tap", Fills.TREATED: "to be treated", Fills.SNOW: "snow"},
)
FILLED = "filled at {place}: {fills}"
FILLED_AT_HOME = "filled at home"
TREATED = "{water} must be made fit to drink: {way}."
WAYS: Mapping[WaterTreatment, str] = MappingProxyType(
    {
        WaterTreatment.BOILING: "boil it for {minutes}",
        WaterTreatment.FILTER: "filter it",
        WaterTreatment.FILTER_AND_CHLORINE: "filter it, chlorinate it, and wait {minutes}",
        WaterTreatment.CHLORINE: "chlorinate it, and wait {minutes}",
        WaterTreatment.CHLORINE_DIOXIDE: "treat it with chlorine dioxide, and wait {minutes}",
    }
)
LACKS = "The containers lack {water}."
FROM_OTHER = "{water} more, for heaters, cooling and washing, comes from the {where}: never drink it."
OTHERS: Mapping[OtherWater, str] = MappingProxyType({OtherWater.LAKE: "lake", OtherWater.SEA: "sea"})
LAKE_OR_SEA = "lake or sea"


def filled(trip: PlannedTrip, leg: Leg) -> str:
    """Say where a leg's water comes from: `filled at home`, `filled at the hut: tap`."""
    if leg.from_stop is None or leg.fills is None:
        return FILLED_AT_HOME
    return FILLED.format(place=stop_called(trip, leg.from_stop), fills=FILLS[leg.fills])


def way(by: WaterTreatment, minutes: int) -> str:
    """Say how water is made fit to drink, and for how long it boils or stands until then: `boil it for 3 min`."""
    return WAYS[by].format(minutes=to_the_minute(minutes))


def treated(water: str, by: WaterTreatment, minutes: int) -> str:
    """Say how much water must be made fit to drink, and how."""
    return TREATED.format(water=water, way=way(by, minutes))


def other_water(trip: PlannedTrip, leg: Leg) -> str:
    """Say where the water of a leg comes from that nobody carries: lake, sea, or either."""
    kinds = {trip.stops[index].model.other_water for index in leg.stops} - {None}
    return OTHERS[kind] if len(kinds) == 1 and (kind := kinds.pop()) is not None else LAKE_OR_SEA
