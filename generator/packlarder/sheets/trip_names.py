"""How what belongs to a trip is called, wherever it is printed: days, times, stops, people, packs, tasks.

One catalogue for page, booklet, labels and plain text; a second language is a second one.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from datetime import date, datetime
from types import MappingProxyType

from packlarder.measure import NO_BREAK, with_fraction
from packlarder.reckon.trip.journey import Fuel, Leg, MealClock
from packlarder.reckon.trip.records import Eater, PlannedTrip, TripMeal, TripSums
from packlarder.reckon.trip.stores import Source, Task, TaskKind
from packlarder.safety.wording import HOME, THE_END
from packlarder.sheets import words
from packlarder.sheets.dish import day as printed_day

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
DAY = "Day {number}"
NOW = "now"
"""The day of what would have had to be done before today."""
SPARE_DAY = "Spare day"
DAYS = "{first} to {last}"
FROM_TO = "{first} to {last} {year}"
ON_ONE_DAY = "{day} {year}"
ON_ANOTHER = "{clock} on {weekday}"
MOMENT = "{day}, {clock}"
UNTIL = "until {end}"
USE_BY = "use by {day}"
NO_DAY = "no day known"
LEG = "{origin} to {goal}"

PORTION = f"1{NO_BREAK}portion"
PORTIONS = f"{{count}}{NO_BREAK}portions"
FOR = "for {names}"
PACK_FOR = "{called}, for {name}"
INFANT = "infant"
AGE = "{years} years old"
AT_RISK = "at risk from germs"
ON_THE_MOVE = "on the move"
AFTER = "on the flame from {clock}, after {dish}"
AFTER_ONLY = "on the flame after {dish}"
EMPTY_FIRST = "first put {dish} into bowls: it has the pot"
IN_PLACE_OF = "{other} in place of {part}"

SOURCES: Mapping[Source, str] = MappingProxyType(
    {Source.DRY: "to dry at home", Source.MIX: "to mix", Source.BUY: "to buy as it is carried"}
)
TASKS: Mapping[str, str] = MappingProxyType(
    {
        TaskKind.SHOP: "buy",
        TaskKind.COOK: "cook",
        TaskKind.FREEZE: "freeze first",
        TaskKind.DRY: "dry",
        TaskKind.WEIGH_AGAIN: "weigh again",
        TaskKind.DEFROST: "let the dryer rest",
        TaskKind.CONDITION: "condition",
        TaskKind.MIX: "mix",
        TaskKind.PACK: "pack",
    }
)
LOAD = "load {number}"
BETWEEN_FOODS = "; "
"""Names of foods hold commas."""
TRAY = "1 tray"
TRAYS = "{count} trays"
PART_USED = "{figure} part used"
WHOLE = f"{{count}}{NO_BREAK}×{NO_BREAK}{{figure}} whole"


def day_called(trip: PlannedTrip, number: int) -> str:
    """Give `Day 2`, or `Spare day` for what lies after the last."""
    return SPARE_DAY if number > trip.last_day else DAY.format(number=number)


def days_called(trip: PlannedTrip, leg: Leg) -> str:
    """Give the days of a leg: `Day 1`, `Day 1 to day 2`."""
    first, last = day_called(trip, leg.first_day), day_called(trip, leg.last_day)
    return first if first == last else DAYS.format(first=first, last=words.lowered(last))


def short_date(on: date) -> str:
    """Print a date with its weekday, without the year: Sunday 27 June."""
    return f"{WEEKDAYS[on.weekday()]} {on.day} {words.MONTHS[on.month - 1]}"


def from_to(trip: PlannedTrip) -> str:
    """Print the first and the last date of a trip: Saturday 26 June to Sunday 27 June 2027."""
    first, last = trip.model.starts, trip.ends
    if first == last:
        return ON_ONE_DAY.format(day=short_date(first), year=first.year)
    return FROM_TO.format(first=short_date(first), last=short_date(last), year=last.year)


def clock(at: datetime, on: date) -> str:
    """Print a time of day as it is told on a day: 18:05, or 22:30 on Saturday."""
    text = f"{at.hour}:{at.minute:02}"
    return text if at.date() == on else ON_ANOTHER.format(clock=text, weekday=WEEKDAYS[at.weekday()])


def moment(at: datetime) -> str:
    """Print a day and a time of it: Monday 28 June, 6:00."""
    return MOMENT.format(day=short_date(at.date()), clock=clock(at, at.date()))


def lasting(task: Task) -> str:
    """Say until when a task lasts; "" where that is no other moment than its start."""
    same_day = task.ends.date() == task.starts.date()
    if task.ends <= task.starts or (task.whole_day and same_day):
        return ""
    if task.whole_day:
        return UNTIL.format(end=short_date(task.ends.date()))
    return UNTIL.format(end=clock(task.ends, task.ends.date()) if same_day else moment(task.ends))


def use_by(day: date | None) -> str:
    """Say until when something keeps."""
    return NO_DAY if day is None else USE_BY.format(day=printed_day(day))


def stop_called(trip: PlannedTrip, index: int | None) -> str:
    """Give a stop's place; home for None."""
    return HOME if index is None else trip.stops[index].model.place


def goal_called(trip: PlannedTrip, leg: Leg) -> str:
    """Give where a leg ends."""
    return THE_END if leg.to_stop is None else stop_called(trip, leg.to_stop)


def leg_called(trip: PlannedTrip, leg: Leg) -> str:
    """Give where a leg begins and ends: `the harbour to the pilots' quay`."""
    return LEG.format(origin=stop_called(trip, leg.from_stop), goal=goal_called(trip, leg))


def portions_counted(portions: float) -> str:
    """Print servings as they are counted: 4, 3½, or 3.8 where no fraction says it."""
    return with_fraction(portions) or f"{portions:.1f}"


def portions_called(portions: float) -> str:
    """Say for how many portions: `3.8 portions`."""
    return PORTION if portions == 1 else PORTIONS.format(count=portions_counted(portions))


def person_told(eater: Eater) -> Iterator[str]:
    """Say of somebody what a cook minds besides allergens: age, and whether germs harm them more."""
    if eater.model.infant:
        yield INFANT
    elif eater.model.age is not None:
        yield AGE.format(years=eater.model.age)
    if eater.model.at_risk:
        yield AT_RISK


def stand_ins(meal: TripMeal) -> Iterator[str]:
    """Say of a meal which other form of a food stands in for which part; a part that is called by its name does not."""
    for index, component in sorted(meal.instead.items()):
        part = meal.plan.parts[index].called
        if part.casefold() != component.model.name.casefold():
            yield IN_PLACE_OF.format(other=component.model.name, part=words.lowered(part))


def pack_for(called: str, name: str) -> str:
    """Name the pack of one eater: `Lentil rice, for Ada`."""
    return PACK_FOR.format(called=called, name=name)


def sharing(clock_of_meal: MealClock, trip: TripSums) -> Iterator[str]:
    """Say of a dish which others of its meal have flame and pot before it."""
    after, pot_after = clock_of_meal.after, clock_of_meal.pot_after
    if after is not None:
        dish = words.lowered(trip.by_number[after].plan.model.name)
        flame = clock_of_meal.flame_at
        on = clock_of_meal.eat_at.date()
        yield AFTER_ONLY.format(dish=dish) if flame is None else AFTER.format(clock=clock(flame, on), dish=dish)
    if pot_after is not None:
        yield EMPTY_FIRST.format(dish=words.lowered(trip.by_number[pot_after].plan.model.name))


def trays_called(count: int) -> str:
    """Print a number of trays."""
    return TRAY if count == 1 else TRAYS.format(count=count)


def cartridges(fuel: Fuel, weight: Callable[[float], str]) -> tuple[str, ...]:
    """Name the cartridges that come along: those in use one by one, then new ones by their size."""
    used = [PART_USED.format(figure=weight(grams)) for grams in fuel.in_hand_g]
    new = [WHOLE.format(count=count, figure=weight(grams)) for grams, count in sorted(Counter(fuel.new_g).items())]
    return (*used, *new)
