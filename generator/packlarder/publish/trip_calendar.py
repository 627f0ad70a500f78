"""The plan of a trip as a calendar: iCalendar by RFC 5545, for any program that keeps dates.

Times are those of the household's own clock, without a zone ("floating"). An event keeps its UID from build to build,
so that a plan that is taken over again moves its events instead of doubling them.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from datetime import UTC, date, datetime, time, timedelta
from uuid import UUID, uuid5

from icalendar import Alarm, Calendar, Event

from packlarder.publish import trip_file_words as words
from packlarder.publish.trip_tables import foods_named, ingredients_named
from packlarder.sheets.trip_data_records import TripData
from packlarder.sheets.trip_names import TASKS
from packlarder.sheets.trip_store_records import TaskData
from packlarder.sheets.words import COMMA, opened

OURS = UUID("b5d0d0f6-94a5-4f0e-9a52-0d5c5f3a7e61")
"""The space of names in which our events have theirs; drawn once."""
A_DAY = timedelta(days=1)
BUY = "buy"
"""The task that is an errand."""
REMINDED_OF = frozenset({BUY, "dry"})
"""The tasks that a calendar reminds of: shopping, and loading a dryer."""
SHOPPING = "shopping"
"""Tells the errands of a plan apart from its other tasks, in their UIDs."""
EVENING_BEFORE = timedelta(hours=-6)
"""When it reminds of something that has no time: at 18:00 of the day before."""


def trip_calendar(trip: TripData, book: str) -> bytes:
    """Give the tasks before a trip and the trip itself as a calendar; `book` is the book's title."""
    calendar = Calendar()
    calendar.add("prodid", words.PROGRAM)
    calendar.add("version", "2.0")
    for event in _events(trip, book):
        calendar.add_component(event)
    made: bytes = calendar.to_ical()
    return made


def _events(trip: TripData, book: str) -> Iterator[Event]:
    stamp = datetime.combine(date.fromisoformat(trip["day"]), time(), UTC)
    met: Counter[str] = Counter()
    for tasks in _together(trip["plan"]):
        key = SHOPPING if len(tasks) > 1 else _key(tasks[0])
        met[key] += 1
        event = _event(f"{book}|{trip['trip']}|{key}|{met[key]}", stamp)
        _tell_tasks(event, tasks, trip)
        yield event
    event = _event(f"{book}|{trip['trip']}", stamp)
    _tell_trip(event, trip)
    yield event


def _event(key: str, stamp: datetime) -> Event:
    """Begin an event; without a clock, it was made at the beginning of the day that the book is worked out for."""
    event = Event()
    event.add("uid", str(uuid5(OURS, key)))
    event.add("dtstamp", stamp)
    return event


def _together(plan: Iterable[TaskData]) -> Iterator[Sequence[TaskData]]:
    """Take what is bought on one day for one errand; every other task stands alone."""
    bought: dict[str, list[TaskData]] = {}
    for task in plan:
        if task["what"] == BUY and task["whole_day"]:
            bought.setdefault(task["starts"], []).append(task)
    for task in plan:
        if task["what"] != BUY or not task["whole_day"]:
            yield (task,)
        elif task["starts"] in bought:
            yield bought.pop(task["starts"])


def _key(task: TaskData) -> str:
    return "|".join((task["what"], str(task["load"] or ""), *(one["component"] for one in task["components"])))


def _tell_tasks(event: Event, tasks: Sequence[TaskData], trip: TripData) -> None:
    first = tasks[0]
    summary = _summary(tasks)
    event.add("summary", summary)
    event.add(
        "description", "\n".join([*_told(tasks), words.FOR_TRIP.format(trip=trip["name"], starts=trip["starts"])])
    )
    event.add("transp", "TRANSPARENT")
    if first["whole_day"]:
        _whole_days(event, first["starts"], first["ends"])
    else:
        starts, ends = (datetime.fromisoformat(first[end]) for end in ("starts", "ends"))
        event.add("dtstart", starts)
        if ends > starts:
            event.add("dtend", ends)
    if first["what"] in REMINDED_OF:
        event.add_component(_reminder(summary, EVENING_BEFORE if first["whole_day"] else -A_DAY))


def _summary(tasks: Sequence[TaskData]) -> str:
    """Name a task and its load; an errand for several foods names them all, its loads stand with each."""
    first = tasks[0]
    what, names = opened(TASKS[first["what"]]), COMMA.join(foods_named(task["components"]) for task in tasks)
    says = words.TASK if first["load"] is None or len(tasks) > 1 else words.TASK_OF_LOAD
    return says.format(what=what, load=first["load"], names=names).removesuffix(": ")


def _told(tasks: Sequence[TaskData]) -> Iterator[str]:
    """Say how much there is of each, and of what foods it is made."""
    for task in tasks:
        grams = "" if task["grams"] is None else words.GRAMS.format(grams=task["grams"])
        name = foods_named(task["components"])
        told = words.OF_ONE.format(name=name, grams=grams) if len(tasks) > 1 and grams else grams
        foods = ingredients_named(task)
        if line := words.MADE_OF.format(told=told, foods=foods).strip() if foods else told:
            yield line


def _tell_trip(event: Event, trip: TripData) -> None:
    event.add("summary", trip["name"])
    event.add("description", words.PEOPLE.format(names=COMMA.join(one["name"] for one in trip["people"])))
    _whole_days(event, trip["starts"], trip["ends"])


def _whole_days(event: Event, first: str, last: str) -> None:
    """Set an event to whole days; RFC 5545 wants the day after the last for its end."""
    event.add("dtstart", date.fromisoformat(first))
    event.add("dtend", date.fromisoformat(last) + A_DAY)


def _reminder(summary: str, before: timedelta) -> Alarm:
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", summary)
    alarm.add("trigger", before)
    return alarm
