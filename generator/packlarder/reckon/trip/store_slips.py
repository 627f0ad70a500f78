"""What is wrong with the stores of a trip: food that does not keep until it is eaten, work that comes too late."""

from collections.abc import Sequence
from datetime import date, timedelta

from packlarder.book.draw import Mark
from packlarder.faults import Fault, Place, Severity
from packlarder.measure import in_grams
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.chain_back import made_at_home
from packlarder.reckon.trip.records import PlannedTrip
from packlarder.reckon.trip.stores import Shortfall

EXPIRES = "expires-before-eaten"


def pack_expires(
    component: ComponentSums, marks: Sequence[str], keeps_until: date, eaten_on: date, line: Place
) -> Fault:
    """Say that food is eaten after the day until which it keeps in its packs or tub.

    What was bought dry is not known to spoil so fast: only the household's own rule says so, and that is a warning.
    """
    name, until, day = component.model.name.lower(), keeps_until.isoformat(), eaten_on.isoformat()
    one = f"pack {marks[0]} with {name} keeps until {until}, and is eaten on {day}"
    several = f"packs {', '.join(marks)} with {name} keep until {until}, and are eaten from {day} on"
    return Fault(
        place=line,
        code=EXPIRES,
        message=one if len(marks) == 1 else several,
        help=(
            "eat it earlier on the way, buy it there (`to buy`), or, if you know that yours keeps longer,"
            " write a rule of your own under `larder: keeping:`"
        ),
        severity=Severity.ERROR if made_at_home(component) else Severity.WARNING,
    )


def jar_expires(
    component: ComponentSums, mark: Mark, use_by: date, eaten_on: date, short_g: float, line: Place
) -> Fault:
    """Say that what the larder has of a food expires before it is eaten; it is counted as short."""
    name = component.model.name
    return Fault(
        place=line,
        code=EXPIRES,
        message=f"{name} in {mark} keeps until {use_by.isoformat()}, and is wanted for {eaten_on.isoformat()}",
        help=f"so {in_grams(short_g)} of it are counted as lacking; eat the jar before, and another form on the trip",
        severity=Severity.WARNING,
    )


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
