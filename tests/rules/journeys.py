"""What the sums of a journey hand on, made by hand for the cases of rules: only what the rules look at is filled in.

legs:   [{from: 0, to: 1, carry: 12000, short: 2000}]   stops by index; mL; a leg without `short` names no containers
clock:  [{number: 1, waits: 70}]                        the number of a meal, and for how many minutes it stands ready
fed:    [{name: Ann, day: 1, kcal: 1500}]               with `unknown: yes` where some figure is not known
"""

from collections.abc import Mapping
from dataclasses import replace
from typing import TypeAlias

from packlarder.reckon.trip.journey import Fed, Leg, LegWater, MealClock
from packlarder.reckon.trip.records import TripSums

Tree: TypeAlias = Mapping[str, "Tree | list[Tree] | str"]


def with_journey(trip: TripSums, written: Tree) -> TripSums:
    """Give a trip the legs, the clock and the days of food that a case writes; what it does not write stays."""
    journey = trip.journey
    if "legs" in written:
        journey = replace(
            journey, legs=tuple(_leg(number, one) for number, one in enumerate(_rows(written, "legs"), 1))
        )
    if "clock" in written:
        journey = replace(journey, clock=tuple(_clock(trip, one) for one in _rows(written, "clock")))
    if "fed" in written:
        journey = replace(journey, fed=tuple(map(_fed, _rows(written, "fed"))))
    return replace(trip, journey=journey)


def _leg(number: int, row: Mapping[str, str]) -> Leg:
    return Leg(
        number=number,
        from_stop=int(row["from"]) if "from" in row else None,
        to_stop=int(row["to"]) if "to" in row else None,
        first_day=1,
        last_day=1,
        stops=(),
        water=LegWater(drinking_ml=int(row["carry"])),
        from_other_ml=0,
        fills=None,
        treated_by=None,
        treated_ml=0,
        wait_min=0,
        short_ml=int(row["short"]) if "short" in row else None,
    )


def _clock(trip: TripSums, row: Mapping[str, str]) -> MealClock:
    eat_at = trip.by_number[int(row["number"])].eat_at
    return MealClock(
        number=int(row["number"]),
        start_at=eat_at,
        ready_at=eat_at,
        eat_at=eat_at,
        waits_min=int(row["waits"]),
        soaks=(),
        after=None,
    )


def _fed(row: Mapping[str, str]) -> Fed:
    return Fed(
        name=row["name"],
        day=int(row["day"]),
        energy_kcal=float(row["kcal"]),
        protein_g=0.0,
        salt_g=0.0,
        food_g=0.0,
        complete="unknown" not in row,
    )


def _rows(written: Tree, key: str) -> list[Mapping[str, str]]:
    rows = written[key]
    assert isinstance(rows, list)
    return [{name: str(value) for name, value in row.items()} for row in rows]
