"""The sheet of a trip, built from its sums and the safety rules' findings."""

from collections.abc import Iterator, Sequence
from datetime import date
from statistics import fmean

from packlarder.book.household import Household
from packlarder.book.trip import Trip
from packlarder.measure import in_celsius, in_fahrenheit, in_feet, in_metres, in_percent, written
from packlarder.reckon.trip.records import Eater, StopSums, TripSums
from packlarder.safety import Finding, on_the_page
from packlarder.sheets import trip_names as names
from packlarder.sheets import trip_water_words as water_words
from packlarder.sheets import trip_words as words
from packlarder.sheets import words as common
from packlarder.sheets.dish import caution, day
from packlarder.sheets.facts import Fact
from packlarder.sheets.printed import Printed
from packlarder.sheets.trip_figures import alike, energy, heavy, weight
from packlarder.sheets.trip_figures import fuel as fuel_weight
from packlarder.sheets.trip_load import day_rows, fed_table, fuel_sheets, kit_rows, rubbish_facts
from packlarder.sheets.trip_menu import menu_days
from packlarder.sheets.trip_packing import bearer_rows, fill_list, packing_list
from packlarder.sheets.trip_plan import load_rows, plan_days, short_groups
from packlarder.sheets.trip_sheet import PersonRow, StopRow, TripSheet
from packlarder.sheets.trip_water import containers_of, leg_rows, leg_total, stop_water_rows


def trip_sheet(trip: TripSums, findings: Sequence[Finding], household: Household) -> TripSheet:
    """Build the sheet of a trip."""
    model = trip.model
    return TripSheet(
        id=trip.id,
        name=model.name,
        about=model.about,
        gone=trip.gone,
        dates=dates(model.starts, trip.ends),
        strip=tuple(strip_of(trip, household)),
        people=tuple(_person(eater, model) for eater in trip.eaters),
        stops=tuple(_stop(trip, stop) for stop in trip.stops),
        menu=menu_days(trip, household),
        packing=packing_list(trip),
        food_weight=weight(trip.grams),
        bearing=bearer_rows(trip),
        fills=fill_list(trip),
        shortfall=short_groups(trip),
        loads=load_rows(trip),
        plan=plan_days(trip),
        legs=leg_rows(trip, household),
        stop_waters=stop_water_rows(trip),
        containers=containers_of(trip),
        fuels=fuel_sheets(trip),
        days=day_rows(trip),
        fed=fed_table(trip),
        kit=kit_rows(trip),
        rubbish=rubbish_facts(trip),
        cautions=tuple(caution(finding) for finding in on_the_page(findings)),
        missing=tuple(common.MISSING.format(what=gap.what, missing=gap.missing) for gap in trip.gaps),
        notes=model.notes,
    )


def dates(first: date, last: date) -> str:
    """Print the days from one to another: 26 June 2027 to 1 July 2027, with the year once where it is the same."""
    if first == last:
        return day(first)
    start = f"{first.day} {common.MONTHS[first.month - 1]}"
    return names.DAYS.format(first=start if first.year == last.year else day(first), last=day(last))


def strip_of(trip: TripSums, household: Household) -> Iterator[Fact]:
    """Give what people ask first of a trip; what was not worked out is left out."""
    days = str(trip.last_day)
    spare = any(meal.spare for meal in trip.meals)
    yield _fact("days", alike(words.DAYS_AND_SPARE.format(days=days) if spare else days))
    yield _fact("people", alike(str(len(trip.eaters))))
    heaviest = trip.journey.heaviest
    if heaviest is not None:
        yield _fact("water", leg_total(trip, heaviest, household))
    for fuel in trip.journey.fuels:
        label = words.STRIP["fuel" if len(trip.journey.fuels) == 1 else "fuel_of"].format(fuel=fuel.fuel)
        yield _of(label, fuel_weight(fuel.need_g))
    if trip.packs:
        yield _fact("food", heavy(trip.grams))
    fed = [one.energy_kcal for one in trip.journey.fed if one.day <= trip.last_day]
    if fed:
        yield _fact("energy", alike(energy(fmean(fed))))


def _fact(key: str, figure: Printed) -> Fact:
    return _of(words.STRIP[key], figure)


def _of(label: str, figure: Printed) -> Fact:
    return Fact(label=label, metric=figure.metric[0], us=figure.us[0])


def _person(eater: Eater, trip: Trip) -> PersonRow:
    return PersonRow(
        name=eater.name,
        appetite=in_percent(eater.portion),
        avoids=tuple(one.value for one in eater.model.avoided),
        says=tuple(_said(eater, trip)),
    )


def _said(eater: Eater, trip: Trip) -> Iterator[str]:
    model = eater.model
    yield from names.person_told(eater)
    if model.drinks is not None and model.drinks != trip.drinking:
        yield words.DRINKS.format(water=written(model.drinks))
    if eater.burden == 0:
        yield words.CARRIES_NOTHING
    elif eater.burden != 1:
        yield words.CARRIES.format(share=in_percent(eater.burden))


def _stop(trip: TripSums, stop: StopSums) -> StopRow:
    model, there = stop.model, stop.conditions
    return StopRow(
        place=model.place,
        day=names.DAY.format(number=model.day),
        on=names.short_date(stop.on),
        height=Printed((in_metres(there.height_m),), (in_feet(there.height_m),)),
        air=_degrees(there.air_c),
        water=_degrees(there.water_c),
        windy=model.windy,
        fills=_fills(trip, stop),
        other_water="" if model.other_water is None else water_words.OTHERS[model.other_water],
        to_buy=model.to_buy,
    )


def _fills(trip: TripSums, stop: StopSums) -> str:
    """Say what there is to fill up with, and how it is made fit to drink."""
    model = stop.model
    fills = "" if model.fills is None else water_words.FILLS[model.fills]
    known = next((one for one in trip.journey.stops if one.stop == stop.index), None)
    if model.treatment is None or known is None:
        return fills
    return words.TREATED_BY.format(fills=fills, way=water_words.way(model.treatment, known.wait_min))


def _degrees(celsius: float) -> Printed:
    return Printed((in_celsius(celsius),), (in_fahrenheit(celsius),))
