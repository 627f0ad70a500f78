"""The menu of a trip day by day: each dish with its place, people, first move, soaks and water."""

from collections.abc import Iterator, Sequence
from datetime import date

from packlarder.book.household import Household
from packlarder.reckon.trip.journey import MealClock
from packlarder.reckon.trip.records import TripMeal, TripSums
from packlarder.sheets import trip_names as names
from packlarder.sheets import trip_words as words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.facts import Link
from packlarder.sheets.series import to_the_minute
from packlarder.sheets.step_rows import step_rows
from packlarder.sheets.trip_figures import NO_FIGURE, weight
from packlarder.sheets.trip_sheet import MealRow, MenuDay, PackedItem, SoakRow
from packlarder.sheets.trip_water import meal_water, up
from packlarder.sheets.words import joined, opened


def menu_days(trip: TripSums, household: Household) -> tuple[MenuDay, ...]:
    """Set the dishes of each day, and what is eaten from the bag."""
    clocks = {clock.number: clock for clock in trip.journey.clock}
    days = sorted({meal.day for meal in trip.meals} | {ration.day for ration in trip.on_the_move})
    return tuple(
        MenuDay(
            day=names.day_called(trip, day),
            on=date_of(trip, day),
            meals=tuple(
                _meal(trip, meal, clocks.get(meal.number), household) for meal in trip.meals if meal.day == day
            ),
            move=tuple(
                PackedItem(
                    component=component_link(ration.component.id, ration.component.model.name),
                    called=ration.component.model.name,
                    raw=ration.component.raw,
                    weight=weight(ration.dry_g),
                )
                for ration in trip.on_the_move
                if ration.day == day
            ),
        )
        for day in days
    )


def date_of(trip: TripSums, day: int) -> str:
    """Print the date of a day of a trip; "" for the spare one, which has none."""
    if day > trip.last_day:
        return ""
    return names.short_date(date.fromordinal(trip.model.starts.toordinal() + day - 1))


def component_link(id: str, name: str) -> Link:
    """Give the link to a component."""
    return Link(kind="component", id=id, name=name)


def _meal(trip: TripSums, meal: TripMeal, clock: MealClock | None, household: Household) -> MealRow:
    raw = [part.called for part in meal.plan.parts if (meal.instead.get(part.index) or part.component).raw]
    heater_ml = 0 if meal.sums.conditions.heater_water_carried else sum(step.heater_ml for step in meal.sums.steps)
    return MealRow(
        number=meal.number,
        meal=opened(meal.meal.value),
        place=words.RESERVE if meal.stop is None else names.stop_called(trip, meal.stop),
        dish=Link(kind="dish", id=meal.dish, name=meal.plan.model.name),
        raw=tuple(raw),
        for_whom=_for_whom(trip, meal),
        portions=names.portions_called(meal.portions),
        eat_at=names.clock(meal.eat_at, meal.on),
        start_at="" if clock is None else names.clock(clock.start_at, meal.on),
        minutes=to_the_minute(meal.sums.clock.minutes),
        water=meal_water(meal, household),
        not_carried=up(heater_ml) if heater_ml else NO_FIGURE,
        soaks=() if clock is None else tuple(_soaks(meal, clock, household)),
        cooked_on=_cooked_on(meal),
        waits=() if clock is None else tuple(_waits(trip, meal, clock)),
        instead=tuple(names.stand_ins(meal)),
    )


def _for_whom(trip: TripSums, meal: TripMeal) -> str:
    """Say who eats a dish: all, all but few, or by name."""
    missing = [one.name for one in trip.eaters if one.name not in meal.eaters]
    if not missing:
        return words.EVERYBODY
    if len(missing) < len(meal.eaters):
        return words.ALL_BUT.format(names=named(missing))
    return named(meal.eaters)


def named(people: Sequence[str]) -> str:
    """List names as words are listed."""
    return "".join(str(run) for run in joined([(name,) for name in people]))


def _cooked_on(meal: TripMeal) -> str:
    """Name stove and pot of a dish that wants the flame."""
    if not meal.sums.heat.energy_kj:
        return ""
    return words.COOKED_ON.format(stove=meal.plan.stove_name, pot=meal.plan.pot_name)


def _soaks(meal: TripMeal, clock: MealClock, household: Household) -> Iterator[SoakRow]:
    """Say when each soak's water goes in, in the order of time."""
    if not clock.soaks:
        return
    steps = step_rows(DishSeries(plan=meal.plan, household=household, sums=(meal.sums,), usual=0))
    for soak in sorted(clock.soaks, key=lambda soak: soak.at):
        row = steps[soak.step]
        yield SoakRow(clock=names.clock(soak.at, meal.on), verb=row.verb, line=row.line)


def _waits(trip: TripSums, meal: TripMeal, clock: MealClock) -> Iterator[str]:
    """Say what has the flame before, and how long the dish stands ready."""
    yield from names.sharing(clock, trip)
    if clock.waits_min:
        ready = names.clock(clock.ready_at, meal.on)
        yield words.STANDS_READY.format(clock=ready, minutes=to_the_minute(clock.waits_min))
