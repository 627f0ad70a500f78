"""When loads are dried: as late as packing allows, one after another, at hours at which people are about.

Loads begin at one hour of the morning. Only where that would have begun before today are other hours of the day taken.
From the first work on a load until it is taken out nobody is away: else all of it lies before people leave. Who comes
home on the evening before the day of cooking buys on that day.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from packlarder.figures.before_a_trip import LOADED_AT, SECOND_WEIGHING, UP_FROM, UP_UNTIL
from packlarder.reckon.trip.away import A_DAY, Absence, day_at_home
from packlarder.reckon.trip.loads import Load, Shared
from packlarder.reckon.trip.pantry import Busy, Pantry

IN_THE_MORNING = (int(LOADED_AT.value),)
BY_DAY = tuple(range(int(UP_UNTIL.value) - 1, int(UP_FROM.value) - 1, -1))


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedLoad:
    """A load with its times: at `dry_at` it is weighed first, at `ends` it was weighed again and is taken out.

    `begun_on` is the day on which the first work on it is done.
    """

    load: Load
    begun_on: date
    starts: datetime
    dry_at: datetime
    ends: datetime

    @property
    def eve(self) -> date:
        """Give the day before it is loaded, on which its food is cooked or, if it is not cooked, bought."""
        return self.starts.date() - A_DAY

    @property
    def rested_at(self) -> datetime:
        """Give when its dryer can be loaded again."""
        return self.ends + timedelta(hours=self.load.rest_hours)


def timed(shared: Iterable[Shared], packed_on: date, pantry: Pantry) -> tuple[TimedLoad, ...]:
    """Give each load its time and take that from the dryers', in order of time.

    Raw and other food lie together only where else some load would have had to begin before today.
    """
    found: list[TimedLoad] = []
    for dryer in shared:
        placed = _in_time(dryer, packed_on, pantry)
        pantry.busy[dryer.dryer] += [Busy(one.starts, one.rested_at) for one in placed]
        found += placed
    return tuple(sorted(found, key=lambda one: (one.starts, one.load.dryer)))


def _in_time(dryer: Shared, packed_on: date, pantry: Pantry) -> list[TimedLoad]:
    """Give the first plan for a dryer that need not begin before today, or else the one that begins last."""
    ways = [(loads, hours) for loads in (dryer.apart, dryer.together) if loads for hours in (IN_THE_MORNING, BY_DAY)]
    tried: list[list[TimedLoad]] = []
    for loads, hours in ways:
        tried.append(placed := _placed(loads, packed_on, pantry, hours))
        if _begins(placed) >= pantry.on:
            return placed
    return max(tried, key=_begins)


def _begins(placed: Iterable[TimedLoad]) -> date:
    return min(one.begun_on for one in placed)


def _placed(loads: Sequence[Load], packed_on: date, pantry: Pantry, hours: Sequence[int]) -> list[TimedLoad]:
    """Place the loads of one dryer from the last to the first.

    What is conditioned afterwards comes first, then what needs the least work before it is loaded.
    """
    placed: list[TimedLoad] = []
    from_the_last = loads[::-1]
    for load in sorted(from_the_last, key=lambda load: (load.conditions, -load.leads)):
        end_by = datetime.combine(packed_on - timedelta(days=load.conditions), time(IN_THE_MORNING[0]))
        taken = [*pantry.busy[load.dryer], *[Busy(one.starts, one.rested_at) for one in placed]]
        placed.append(_in_free_time(load, end_by, taken, pantry.away, hours))
    return placed


def _in_free_time(
    load: Load, end_by: datetime, taken: Sequence[Busy], away: Sequence[Absence], hours: Sequence[int]
) -> TimedLoad:
    """Place a load as late as can be where its dryer, with its rest, is free, and where people are at home."""
    while True:
        one = _latest(load, end_by, away, hours)
        clashes = [busy.since for busy in taken if one.starts < busy.until and busy.since < one.rested_at]
        rested_by = [since - timedelta(hours=load.rest_hours) for since in clashes]
        left_at = [gone.since for gone in away if one.begun_on <= gone.last and gone.since < one.ends]
        if not rested_by and not left_at:
            return one
        end_by = min([*rested_by, *left_at])


def _latest(load: Load, end_by: datetime, away: Sequence[Absence], hours: Sequence[int]) -> TimedLoad:
    day = (end_by - timedelta(hours=load.hours)).date()
    while True:
        for hour in hours:
            one = _begun(load, datetime.combine(day, time(hour)), away)
            if one.ends <= end_by:
                return one
        day -= A_DAY


def _begun(load: Load, starts: datetime, away: Sequence[Absence]) -> TimedLoad:
    dry_at = _somebody_up(starts + timedelta(hours=load.hours))
    ends = dry_at + timedelta(hours=SECOND_WEIGHING.value)
    first = starts.date() - timedelta(days=load.leads)
    begun_on = first if day_at_home(first, away) == first else starts.date() - A_DAY
    return TimedLoad(load=load, begun_on=begun_on, starts=starts, dry_at=dry_at, ends=ends)


def _somebody_up(moment: datetime) -> datetime:
    """Let the dryer run on until somebody is up to weigh."""
    if moment.hour >= UP_UNTIL.value:
        return datetime.combine(moment.date() + A_DAY, time(int(UP_FROM.value)))
    if moment.hour < UP_FROM.value:
        return datetime.combine(moment.date(), time(int(UP_FROM.value)))
    return moment
