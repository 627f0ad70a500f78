"""Days, times of day and spans of the calendar, as people write them."""

import calendar
import re
from dataclasses import dataclass
from datetime import date, datetime, time
from typing import Annotated

from packlarder.book.base import slip
from packlarder.book.fields import Written, read_day

MONTHS_PER_YEAR = 12
DAYS_PER_WEEK = 7
MOST_MONTHS = 30 * MONTHS_PER_YEAR
"""Longer than anybody keeps home-dried food: thirty years."""

_MOMENT = re.compile(r"(?P<day>[^\sT]+)(?:[ T]+(?P<hour>[0-9]{1,2})[:.](?P<minute>[0-9]{2}))?")
_SPAN = re.compile(r"(?P<number>[0-9]{1,4})\s*(?P<unit>years?|months?|weeks?|days?)")
_TIME_HELP = "write it like 2027-03-12 08:30"


@dataclass(frozen=True, slots=True)
class Span:
    """A span of the calendar: whole months, then whole days."""

    months: int = 0
    days: int = 0

    @property
    def length_days(self) -> float:
        """Give its usual length in days, to compare spans by."""
        return self.months * 365.25 / MONTHS_PER_YEAR + self.days

    def after(self, day: date) -> date:
        """Give the day that lies so long after another; the 31st becomes the last day of a shorter month."""
        month = day.month - 1 + self.months
        year, month = day.year + month // MONTHS_PER_YEAR, month % MONTHS_PER_YEAR + 1
        last = calendar.monthrange(year, month)[1]
        return date.fromordinal(date(year, month, min(day.day, last)).toordinal() + self.days)


def _moment(text: str) -> datetime:
    found = _MOMENT.fullmatch(text)
    if not found:
        raise slip("not-a-moment", f'"{text}" is not a day with a time of day', _TIME_HELP)
    hour, minute = int(found["hour"] or 0), int(found["minute"] or 0)
    if hour > 23 or minute > 59:
        raise slip("not-a-moment", f"there is no {hour}:{minute:02} in a day", _TIME_HELP)
    return datetime.combine(read_day(found["day"]), time(hour, minute))


def _span(text: str) -> Span:
    found = _SPAN.fullmatch(text)
    if not found or int(found["number"]) == 0:
        raise slip("not-a-span", f'"{text}" does not say how long', "write it like 18 months, 2 years or 10 days")
    number, unit = int(found["number"]), found["unit"].removesuffix("s")
    span = {
        "year": Span(months=number * MONTHS_PER_YEAR),
        "month": Span(months=number),
        "week": Span(days=number * DAYS_PER_WEEK),
        "day": Span(days=number),
    }[unit]
    if span.length_days > Span(months=MOST_MONTHS).length_days:
        raise slip("out-of-range", f'"{text}" can not be meant here', "thirty years is the most")
    return span


Moment = Annotated[datetime, Written(_moment, datetime, {"examples": ["2027-03-12 08:30"]})]
"""A day with its time of day, or the day alone."""
KeepFor = Annotated[Span, Written(_span, Span, {"examples": ["18 months"]})]
"""How long something keeps: `18 months`, `2 years`, `10 days`."""
