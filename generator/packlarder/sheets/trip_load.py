"""What a trip burns, carries and eats: fuel by stop, load by day, what each person gets, kit and rubbish."""

from collections.abc import Iterator, Sequence
from functools import partial
from statistics import fmean

from packlarder.figures.trips import DAY_ENERGY, DAY_FOOD, DAY_SALT, PROTEIN_SHARE, DayRange
from packlarder.measure import NO_BREAK, in_grams, in_percent
from packlarder.reckon.trip.feeds import beside_ranges
from packlarder.reckon.trip.journey import DayLoad, Fed, Fuel
from packlarder.reckon.trip.records import TripSums
from packlarder.sheets import trip_names as names
from packlarder.sheets import trip_words as words
from packlarder.sheets.facts import Fact
from packlarder.sheets.printed import Line, Printed, Run, System
from packlarder.sheets.trip_figures import alike, bulk, energy, heavy, scales, weight, within
from packlarder.sheets.trip_figures import fuel as fuel_weight
from packlarder.sheets.trip_journey_sheet import DayRow, FedRow, FedTable, FuelSheet, KitRow, StopFuelRow
from packlarder.sheets.trip_menu import date_of, named
from packlarder.sheets.words import set_line


def _ends(planned: DayRange) -> tuple[float, float]:
    return 0.0 if planned.least is None else planned.least.value, planned.most.value


LEAST_KCAL, MOST_KCAL = _ends(DAY_ENERGY)
LEAST_G, MOST_G = _ends(DAY_FOOD)
RANGES = (DAY_ENERGY, PROTEIN_SHARE, DAY_SALT)
"""The ranges that a row says something of; food goes with energy."""


def fuel_sheets(trip: TripSums) -> tuple[FuelSheet, ...]:
    """Set each fuel of a trip."""
    return tuple(_fuel(trip, fuel) for fuel in trip.journey.fuels)


def _fuel(trip: TripSums, fuel: Fuel) -> FuelSheet:
    return FuelSheet(
        fuel=fuel.fuel,
        stoves=named(fuel.stoves),
        stops=tuple(
            StopFuelRow(
                place=names.SPARE_DAY if one.stop is None else names.stop_called(trip, one.stop),
                cooking=fuel_weight(one.cooking_g),
                treating=fuel_weight(one.treating_g),
                melting=fuel_weight(one.melting_g),
                weight=fuel_weight(one.grams),
            )
            for one in fuel.stops
        ),
        margin=fuel_weight(fuel.margin_g),
        need=fuel_weight(fuel.need_g),
        taken=tuple(_taken(fuel)),
    )


def _taken(fuel: Fuel) -> Iterator[Printed]:
    """Name the cartridges that come along, in both systems."""
    metric, us = (names.cartridges(fuel, partial(_on_scales, system)) for system in (System.METRIC, System.US))
    return (Printed((one,), (other,)) for one, other in zip(metric, us, strict=True))


def _on_scales(system: System, grams: float) -> str:
    return scales(grams).text(system, 0)


def day_rows(trip: TripSums) -> tuple[DayRow, ...]:
    """Set what is eaten and carried day by day."""
    return tuple(_day(trip, load, [one for one in trip.journey.fed if one.day == load.day]) for load in loads(trip))


def loads(trip: TripSums) -> Sequence[DayLoad]:
    """Give what is carried on each day but the spare one."""
    return [load for load in trip.journey.days if load.day <= trip.last_day]


def _day(trip: TripSums, load: DayLoad, fed: Sequence[Fed]) -> DayRow:
    kcal = fmean(one.energy_kcal for one in fed) if fed else 0.0
    complete = all(one.complete for one in fed)
    return DayRow(
        day=names.day_called(trip, load.day),
        on=date_of(trip, load.day),
        food=weight(load.food_g),
        carried=weight(load.carried_g),
        volume=_least(bulk(load.volume_ml), known=not load.unmeasured or not load.volume_ml),
        energy=_least(alike(energy(kcal)), known=complete),
        carried_short=heavy(load.carried_g),
        energy_short=_bare(kcal),
        short_day=str(load.day),
        food_g=load.food_g,
        carried_g=load.carried_g,
        kcal=kcal,
    )


def _bare(kcal: float) -> Printed:
    """Print energy without its unit, for a picture that names it once."""
    return alike(energy(kcal).rpartition(NO_BREAK)[0])


def _least(figure: Printed, *, known: bool) -> Printed:
    return figure if known else within(words.AT_LEAST, figure)


def fed_table(trip: TripSums) -> FedTable | None:
    """Set what each person eats in a day; None where nothing is known of it."""
    fed = [one for one in trip.journey.fed if one.day <= trip.last_day]
    if not fed:
        return None
    people = list(dict.fromkeys(one.name for one in fed))
    protein = " to ".join(map(in_percent, _ends(PROTEIN_SHARE)))
    planned: dict[str, Run | Line] = {
        "least": _both(LEAST_KCAL, LEAST_G),
        "most": _both(MOST_KCAL, MOST_G),
        "protein": protein,
        "salt": in_grams(DAY_SALT.most.value),
    }
    return FedTable(
        rows=tuple(_fed(name, [one for one in fed if one.name == name]) for name in people),
        by_day=tuple(
            (names.day_called(trip, day), tuple(_of_day(fed, name, day) for name in people))
            for day in sorted({one.day for one in fed})
        ),
        least=_bare(LEAST_KCAL),
        most=_bare(MOST_KCAL),
        least_kcal=LEAST_KCAL,
        most_kcal=MOST_KCAL,
        planning=set_line(words.PERSON_FOOD, planned),
        source="; ".join(dict.fromkeys(one.most.source for one in RANGES)),
    )


def _both(kcal: float, grams: float) -> Printed:
    figure = scales(grams)
    return Printed((f"{energy(kcal)} ({figure.metric[0]})",), (f"{energy(kcal)} ({figure.us[0]})",))


def _fed(name: str, days: Sequence[Fed]) -> FedRow:
    """Set what somebody eats in a day, all days together, beside the planning ranges."""
    mean = _mean(name, days)
    ranges = beside_ranges(mean)
    phrase = "{figure}" if mean.complete else words.AT_LEAST
    return FedRow(
        name=name,
        energy=phrase.format(figure=energy(mean.energy_kcal)),
        beside=words.BESIDE[ranges.energy],
        protein=phrase.format(figure=in_grams(mean.protein_g)),
        protein_beside=words.BESIDE[ranges.protein],
        salt=phrase.format(figure=in_grams(mean.salt_g)),
        salt_beside=words.BESIDE[ranges.salt],
        food=scales(mean.food_g),
        complete=mean.complete,
    )


def _mean(name: str, days: Sequence[Fed]) -> Fed:
    return Fed(
        name=name,
        day=0,
        energy_kcal=fmean(one.energy_kcal for one in days),
        protein_g=fmean(one.protein_g for one in days),
        salt_g=fmean(one.salt_g for one in days),
        food_g=fmean(one.food_g for one in days),
        complete=all(one.complete for one in days),
    )


def _of_day(fed: Sequence[Fed], name: str, day: int) -> str:
    return next((energy(one.energy_kcal) for one in fed if (one.name, one.day) == (name, day)), "")


def kit_rows(trip: TripSums) -> tuple[KitRow, ...]:
    """Set what comes along besides food."""
    return tuple(
        KitRow(
            what=item.what,
            count=str(item.count) if item.count > 1 else "",
            why=item.why,
        )
        for item in trip.journey.kit
    )


def rubbish_facts(trip: TripSums) -> tuple[Fact, ...]:
    """Count what is empty at the end and carried out, and the packs of each day."""
    rubbish = trip.journey.rubbish
    counts = ((label, getattr(rubbish, key)) for key, label in words.RUBBISH.items())
    days = (
        (words.RUBBISH_ON.format(day=names.day_called(trip, day).lower()), count)
        for day, count in sorted(rubbish.by_day.items())
    )
    return tuple(Fact(label=label, metric=str(count), us=str(count)) for label, count in (*counts, *days) if count)
