"""How days, times, stops and legs of a trip are called, wherever they are printed."""

from datetime import date, datetime

from packlarder.measure import with_fraction
from packlarder.reckon.trip.journey import Leg
from packlarder.reckon.trip.records import PlannedTrip
from packlarder.sheets import words

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
DAY = "Day {number}"
SPARE_DAY = "Spare day"
HOME = "home"
THE_END = "the end"
ON_THE_DAY = "{clock}"
ON_ANOTHER = "{clock} on {weekday}"
LEG = "{origin} to {goal}"


def day_called(trip: PlannedTrip, number: int) -> str:
    """Give `Day 2`, or `Spare day` for what lies after the last."""
    return SPARE_DAY if number > trip.last_day else DAY.format(number=number)


def short_date(on: date) -> str:
    """Print a date with its weekday, without the year: Sunday 27 June."""
    return f"{WEEKDAYS[on.weekday()]} {on.day} {words.MONTHS[on.month - 1]}"


def clock(at: datetime, on: date) -> str:
    """Print a time of day as it is told on a day: 18:05, or 22:30 on Saturday."""
    text = f"{at.hour}:{at.minute:02}"
    if at.date() == on:
        return ON_THE_DAY.format(clock=text)
    return ON_ANOTHER.format(clock=text, weekday=WEEKDAYS[at.weekday()])


def stop_called(trip: PlannedTrip, index: int | None) -> str:
    """Give a stop's place; home for None."""
    return HOME if index is None else trip.stops[index].model.place


def leg_called(trip: PlannedTrip, leg: Leg) -> str:
    """Give where a leg begins and ends: `the harbour to the pilots' quay`."""
    goal = THE_END if leg.to_stop is None else stop_called(trip, leg.to_stop)
    return LEG.format(origin=stop_called(trip, leg.from_stop), goal=goal)


def portions_called(portions: float) -> str:
    """Print servings as they are counted: 4, 3½, or 3.8 where no fraction says it."""
    return with_fraction(portions) or f"{portions:.1f}"
