"""When loads are dried: as late as packing allows, one after another, at hours at which people are about.

Loads begin at one hour of the morning. Only where that would have begun before today are other hours of the day taken.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from packlarder.figures.before_a_trip import LOADED_AT, SECOND_WEIGHING, UP_FROM, UP_UNTIL
from packlarder.reckon.trip.loads import Load
from packlarder.reckon.trip.pantry import Busy, Pantry

IN_THE_MORNING = (int(LOADED_AT.value),)
BY_DAY = tuple(range(int(UP_UNTIL.value) - 1, int(UP_FROM.value) - 1, -1))


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedLoad:
    """A load with its times: at `dry_at` it is weighed first, at `ends` it was weighed again and is taken out."""

    load: Load
    starts: datetime
    dry_at: datetime
    ends: datetime

    @property
    def begun_on(self) -> date:
        """Give the day on which the first work on it is done."""
        return self.starts.date() - timedelta(days=self.load.leads)

    @property
    def rested_at(self) -> datetime:
        """Give when its dryer can be loaded again."""
        return self.ends + timedelta(hours=self.load.rest_hours)


def timed(loads: Sequence[Load], packed_on: date, pantry: Pantry) -> tuple[TimedLoad, ...]:
    """Give each load its time and take that from the dryers', in order of time."""
    found: list[TimedLoad] = []
    for dryer in dict.fromkeys(load.dryer for load in loads):
        of_dryer = [load for load in loads if load.dryer == dryer]
        busy = pantry.busy[dryer]
        placed = _placed(of_dryer, packed_on, busy, IN_THE_MORNING)
        if any(one.begun_on < pantry.on for one in placed):
            closer = _placed(of_dryer, packed_on, busy, BY_DAY)
            placed = max(placed, closer, key=lambda plan: min(one.begun_on for one in plan))
        busy += [Busy(one.starts, one.rested_at) for one in placed]
        found += placed
    return tuple(sorted(found, key=lambda one: (one.starts, one.load.dryer)))


def _placed(loads: Sequence[Load], packed_on: date, busy: Iterable[Busy], hours: Sequence[int]) -> list[TimedLoad]:
    """Place the loads of one dryer from the last to the first; what is conditioned afterwards comes first."""
    taken = list(busy)
    placed: list[TimedLoad] = []
    from_the_last = loads[::-1]
    for load in sorted(from_the_last, key=lambda load: load.conditions):
        end_by = datetime.combine(packed_on - timedelta(days=load.conditions), time(IN_THE_MORNING[0]))
        one = _in_free_time(load, end_by, taken, hours)
        taken.append(Busy(one.starts, one.rested_at))
        placed.append(one)
    return placed


def _in_free_time(load: Load, end_by: datetime, taken: Sequence[Busy], hours: Sequence[int]) -> TimedLoad:
    """Place a load as late as can be where its dryer, with its rest, is free."""
    while True:
        one = _latest(load, end_by, hours)
        clashes = [busy.since for busy in taken if one.starts < busy.until and busy.since < one.rested_at]
        if not clashes:
            return one
        end_by = min(clashes) - timedelta(hours=load.rest_hours)


def _latest(load: Load, end_by: datetime, hours: Sequence[int]) -> TimedLoad:
    day = (end_by - timedelta(hours=load.hours)).date()
    while True:
        for hour in hours:
            one = _begun(load, datetime.combine(day, time(hour)))
            if one.ends <= end_by:
                return one
        day -= timedelta(days=1)


def _begun(load: Load, starts: datetime) -> TimedLoad:
    dry_at = _somebody_up(starts + timedelta(hours=load.hours))
    ends = dry_at + timedelta(hours=SECOND_WEIGHING.value)
    return TimedLoad(load=load, starts=starts, dry_at=dry_at, ends=ends)


def _somebody_up(moment: datetime) -> datetime:
    """Let the dryer run on until somebody is up to weigh."""
    if moment.hour >= UP_UNTIL.value:
        return datetime.combine(moment.date() + timedelta(days=1), time(int(UP_FROM.value)))
    if moment.hour < UP_FROM.value:
        return datetime.combine(moment.date(), time(int(UP_FROM.value)))
    return moment
