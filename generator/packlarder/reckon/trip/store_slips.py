"""What is wrong with the stores of a trip: food that does not keep until it is eaten, work that comes too late."""

import math
from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from typing import NamedTuple

from packlarder.book.days import DAYS_PER_WEEK
from packlarder.faults import Fault, Place, Severity
from packlarder.figures.keeping import Kept
from packlarder.measure import in_grams
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.chain_back import ToDry, dried_at_home, is_mix, made_at_home
from packlarder.reckon.trip.records import PlannedTrip
from packlarder.reckon.trip.stores import Drawn, Shortfall
from packlarder.reckon.trip.wants import Want
from packlarder.reckon.use_by import Limit

EXPIRES = "expires-before-eaten"
MOST_NAMED = 6
"""Packs, jars or foods that one sentence names; of more it tells how many."""


class Late(NamedTuple):
    """A component in a pack, or a tub, that is eaten after the day until which it keeps there."""

    component: ComponentSums
    mark: str
    kept: Kept
    until: date
    eaten_on: date
    line: Place


def pack_expires(late: Sequence[Late], limit: Limit) -> Fault:
    """Say that food is eaten after the day until which it keeps in its packs or tub: told once for all that keep alike.

    `late` is in the order of days. What was bought dry is not known to spoil so fast: only the household's own rule
    says so, and that is a warning.
    """
    first = late[0]
    names = _each_once(one.component.model.name.lower() for one in late)
    marks = _each_once(one.mark for one in late)
    packs = f"{'pack' if len(marks) == 1 else 'packs'} {_some(marks)} with {_some(names)}"
    until, day = first.until.isoformat(), first.eaten_on.isoformat()
    one, several = f"keeps until {until}, and is eaten on {day}", f"keep until {until}, and are eaten from {day} on"
    lines = list(dict.fromkeys(one.line for one in late))
    return Fault(
        place=lines[0],
        code=EXPIRES,
        message=f"{packs} {one if len(marks) == 1 else several}",
        help=f"eat it earlier on the way, or buy it there (`to buy`); {_own_rule(late, limit, names)}",
        severity=Severity.ERROR if made_at_home(first.component) else Severity.WARNING,
        also=tuple(lines[1:]),
    )


def _own_rule(late: Sequence[Late], limit: Limit, names: Sequence[str]) -> str:
    """Say why food keeps no longer as it travels, and the line that says otherwise, for as long as this trip takes."""
    if limit.own:
        return "or change your own rule for it under `larder: keeping:` in book.yaml"
    first = late[0]
    carried_days = (late[-1].eaten_on - first.until).days + limit.span.days
    what = f"what: {names[0]}, " if len(names) == 1 else ""
    line = f"- {{{what}kept: {first.kept.value}, for: {math.ceil(carried_days / DAYS_PER_WEEK)} weeks}}"
    taken = f"it is taken to keep {limit.says}"
    return f"{taken}; if you know that yours keeps longer, write `{line}` under `larder: keeping:` in book.yaml"


def jar_expires(late: Sequence[Want], jars: Sequence[Drawn], short_g: float, on: date) -> Fault:
    """Say that what the larder has of a food expires before it is eaten, so that the trip does not count on it.

    `jars` are those past their day, the one that keeps longest last; `short_g` is what lacks of it in all.
    """
    first, last = late[0], jars[-1]
    name = first.component.model.name.lower()
    held = f"{in_grams(sum(jar.grams for jar in jars))} of {name} in {_some([str(jar.mark) for jar in jars])}"
    until = "" if last.use_by is None else last.use_by.isoformat()
    latest = "" if len(jars) == 1 else " at the latest"
    is_past = last.use_by is not None and last.use_by < on
    eat = "its day is past, so look at it before anybody eats it" if is_past else "eat that at home while it keeps"
    how = "dried" if dried_at_home(first.component) else "mixed" if is_mix(first.component) else "bought"
    lines = list(dict.fromkeys(one.line for one in late))
    return Fault(
        place=lines[0],
        code=EXPIRES,
        message=f"{held} keep until {until}{latest}, and are wanted for {first.on.isoformat()}",
        help=f"{eat}; for the trip {in_grams(short_g)} of {name} are still to be {how}",
        severity=Severity.WARNING,
        also=tuple(lines[1:]),
    )


def _each_once(words: Iterable[str]) -> list[str]:
    return list(dict.fromkeys(words))


def _some(words: Sequence[str]) -> str:
    """Give words as a list to read, the first of many."""
    rest = len(words) - MOST_NAMED
    return ", ".join(words) if rest <= 0 else f"{', '.join(words[:MOST_NAMED])} and {rest} more"


def starts_in_the_past(trip: PlannedTrip, one: Shortfall, on: date) -> Fault:
    """Say that work on what is lacking would have had to start before today."""
    name, start_by = one.component.model.name, one.start_by or on
    later = trip.model.starts + timedelta(days=(on - start_by).days)
    return Fault(
        place=trip.place.at("starts"),
        code="starts-in-the-past",
        message=(
            f"{in_grams(one.short_g)} of {name.lower()} lack, and to be dry in time"
            f" they would have had to be begun on {start_by.isoformat()}"
        ),
        help=(
            f"start on {later.isoformat()} or later, buy it dry, choose another dish,"
            " or name another form of it in the dish (`instead`)"
        ),
    )


def no_dryer(food: ToDry, line: Place) -> Fault:
    """Say that something lacks which no dryer of the household dries, so that nobody can plan how to get it."""
    name = food.component.model.name.lower()
    return Fault(
        place=line,
        code="no-dryer",
        message=f"{in_grams(food.dry_g)} of {name} lack, and no dryer of yours gives food that is {food.drying.value}",
        help=(
            "write your dryer under `dryers:` in book.yaml, buy it dry, choose another dish,"
            " or name another form of it in the dish (`instead`)"
        ),
        severity=Severity.WARNING,
    )
