"""The booklet of a trip, built from its sums and from what the rules found."""

from collections.abc import Iterator
from datetime import date

from packlarder.book.household import Household
from packlarder.measure import in_percent
from packlarder.reckon.trip.records import Eater
from packlarder.safety.whole import CheckedTrip
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets import words
from packlarder.sheets.dish import day
from packlarder.sheets.printed import System
from packlarder.sheets.trip_cards import fuel_cards, safety_card
from packlarder.sheets.trip_dish import opening_id, served_alike
from packlarder.sheets.trip_field_menu import menu
from packlarder.sheets.trip_field_sheet import Goer, TripBook
from packlarder.sheets.trip_field_water import leg_cards, spot_cards, water_notes
from packlarder.sheets.trip_lists import bearers, cooled, fills, kit, packed, packing, rubbish
from packlarder.sheets.trip_names import from_to, person_told
from packlarder.sheets.trip_opening import trip_opening


def trip_book(checked: CheckedTrip, household: Household, *, edition: str, on: date) -> TripBook:
    """Build the booklet of a trip."""
    trip, system = checked.sums, System(household.units.value)
    groups = served_alike(trip)
    ids = {meal.number: opening_id(group) for group in groups for meal in group}
    openings = tuple(trip_opening(group, trip, household, system) for group in groups)
    return TripBook(
        id=trip.id,
        file=trip.place.file,
        name=trip.model.name,
        about=trip.model.about,
        dates=from_to(trip),
        language=household.language,
        edition=edition,
        day=day(on),
        on=on,
        people=tuple(_goer(one) for one in trip.eaters),
        how_to_use=trip_words.HOW_TO_USE,
        menu=menu(trip, ids),
        legs=leg_cards(trip, household, system),
        on_the_spot=spot_cards(trip, system),
        water_notes=water_notes(trip, system),
        fuels=fuel_cards(trip, system),
        fuel_notes=(trip_words.FUEL_MARGIN.format(share=in_percent(trip.fuel_margin)),),
        packing=packing(trip, system),
        packed=packed(trip, system),
        cooled=cooled(trip),
        bearers=bearers(trip, system),
        fills=fills(trip, system),
        kit=kit(trip),
        rubbish=rubbish(trip),
        openings=openings,
        safety=safety_card(trip, checked.findings, openings, ids),
        notes=trip.model.notes,
    )


def _goer(eater: Eater) -> Goer:
    return Goer(
        name=eater.name,
        about=words.COMMA.join(_about(eater)),
        avoids=words.COMMA.join(one.value for one in eater.model.avoided),
    )


def _about(eater: Eater) -> Iterator[str]:
    yield from person_told(eater)
    if eater.portion != 1:
        yield trip_words.EATS.format(share=in_percent(eater.portion))
