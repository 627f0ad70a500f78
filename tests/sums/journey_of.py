"""Trips whose dishes are for one and whose waters are round, worked out by `trip_of`.

The kitchen is that of `book_of`: sea level, air and water of 10 °C, a gas burner that brings half of its heat into the
pot, a pot of 2 L, a pan, fuel margin 15 %. Two people, Ada and Bo, set out on 26 June 2027.
"""

from collections.abc import Mapping
from textwrap import dedent

from tests.sums.book_of import KITCHEN, Told
from tests.sums.trip_of import TRIP, Travelled, trips_of

from packlarder.reckon.trip.records import TripSums

DISHES: Mapping[str, str] = {
    "rice": """\
        meal: supper
        parts: [{rice: 100 g}]
        steps: [moisten: rice]
        """,
    "cold rice": """\
        meal: lunch
        parts: [{rice: 100 g}]
        steps: [{moisten: rice, with: 200 mL cold water}]
        """,
    "heated rice": """\
        meal: lunch
        parts: [{rice: 100 g}]
        steps:
          - {moisten: rice, with: 200 mL cold water}
          - {warm: rice, on: ration heater}
        """,
    "noodles": """\
        meal: supper
        parts: [{pasta: 100 g}]
        steps: [{boil: pasta, in: 500 mL, for: 10 min}]
        """,
    "beef": """\
        meal: supper
        parts: [{beef: 50 g}]
        steps:
          - soak: beef
          - drain: away
          - {fry: beef, for: 5 min, to: 74 °C}
        """,
    "fried beef": """\
        meal: supper
        pot: pan
        stove: spirit
        parts: [{beef: 50 g}]
        steps:
          - soak: beef
          - drain: away
          - {fry: beef, for: 5 min, to: 74 °C}
        """,
    "milk": """\
        meal: drink
        parts: [{milk powder: 20 g}]
        steps: [mix: milk powder]
        """,
    "a pinch": """\
        meal: snack
        parts: [{salt: 5 g}]
        steps: [Eat.]
        """,
}
"""Rice takes 200 mL boiling water, noodles 500 mL in the pot, beef 200 mL hot of which 125 mL are poured away, milk 180
mL cold. The heated rice takes 200 mL cold, and 60 mL for its heater. A pinch takes nothing."""
HEAD: Mapping[str, str] = {
    "name": "Trip",
    "starts": "2027-06-26",
    "people": "[Ada, Bo]",
    "stoves": "[burner]",
    "pots": "[pot, pan]",
}
BOTH_STOVES = "[burner, spirit]"


def journey_of(
    stops: str,
    *,
    more: str = "",
    dishes: Mapping[str, str] = DISHES,
    kitchen: str = KITCHEN,
    instead: Mapping[str, bytes] | None = None,
    fails: bool | None = False,
) -> Travelled:
    """Work out a trip from its stops, one to a line, `{place: A, day: 1, meals: [supper: rice]}`, or as a list of YAML.

    `more` are further keys of the trip; `people` and the like may be others than those of `HEAD`. The rest is as for
    `trips_of`.
    """
    own = f"{dedent(more).strip()}\n" if more else ""
    given = {line.split(":")[0] for line in own.splitlines() if line[:1].isalpha()}
    head = "".join(f"{key}: {value}\n" for key, value in HEAD.items() if key not in given)
    told = dedent(stops).strip()
    lines = told if told.startswith("- ") else "\n".join(f"- {line.strip()}" for line in told.splitlines())
    for_one = {name.replace(" ", "-"): f"serves: 1\n{dedent(text)}" for name, text in dishes.items()}
    trip = f"{head}{own}stops:\n{lines}\n"
    return trips_of({TRIP: trip}, dishes=for_one, kitchen=kitchen, instead=instead, fails=fails)


def menu_of(stops: str, **keys: str) -> TripSums:
    """Work out a trip with both stoves along; `keys` are further keys of it, an underscore for a blank."""
    return journey_of(stops, more=keys_of(**keys)).trip


def faults_in(stops: str, **keys: str) -> tuple[Told, ...]:
    """Give what is wrong in such a trip, as its author sees it."""
    return journey_of(stops, more=keys_of(**keys), fails=True).faults


def keys_of(**keys: str) -> str:
    """Write further keys of a trip, both stoves among them unless others are named."""
    return "".join(f"{key.replace('_', ' ')}: {value}\n" for key, value in {"stoves": BOTH_STOVES, **keys}.items())
