"""The sheet of a journey: water by leg and stop, fuel, load, what each eats, kit. Bare numbers are for pictures."""

from dataclasses import dataclass

from packlarder.sheets.printed import Line, Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterPiece:
    """A piece of a leg's water; pieces of one `kind` are drawn alike."""

    key: str
    kind: str
    label: str
    figure: Printed
    ml: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LegRow:
    """A leg and its water: the pieces printed add up to the total printed, in both systems.

    `fills` says where it is filled, `treated` how and how much is made fit to drink, `other` what lake or sea serves.
    `short` is empty where the containers hold it.
    """

    title: str
    days: str
    fills: str
    heaviest: bool
    pieces: tuple[WaterPiece, ...]
    total: Printed
    treated: Line
    other: Line
    short: Line
    says: Printed
    ml: int


@dataclass(frozen=True, slots=True, kw_only=True)
class StopWaterRow:
    """The water of one stop: for its dishes, to drink plain, to wash, and what lake or sea serves.

    `treated` says what of it must be made fit to drink there, () where nothing must.
    """

    place: str
    dishes: Printed
    drinking: Printed
    washing: Printed
    on_the_spot: bool
    other: Printed
    other_from: str
    treated: Line


@dataclass(frozen=True, slots=True, kw_only=True)
class Containers:
    """What water is carried in, as the trip names it, and all it holds (None where nothing is named)."""

    each: tuple[str, ...]
    hold: Printed | None
    ml: float


@dataclass(frozen=True, slots=True, kw_only=True)
class StopFuelRow:
    """The fuel of one stop: for dishes, to boil water safe, to melt snow, and in all."""

    place: str
    cooking: Printed
    treating: Printed
    melting: Printed
    weight: Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class FuelSheet:
    """One fuel: on which stoves, stop by stop, with its margin, and what is taken along. Its rows add up to `need`."""

    fuel: str
    stoves: str
    stops: tuple[StopFuelRow, ...]
    margin: Printed
    need: Printed
    taken: tuple[Printed, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DayRow:
    """What is eaten on a day and carried on its morning, and what the day feeds one person on average.

    The short figures are for columns of a picture, which are narrow.
    """

    day: str
    on: str
    food: Printed
    carried: Printed
    volume: Printed
    energy: Printed
    carried_short: Printed
    energy_short: Printed
    short_day: str
    food_g: float
    carried_g: float
    kcal: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FedRow:
    """What somebody eats in a day on average; `beside` says where its energy lies beside the planning range.

    `protein_beside` and `salt_beside` say so of them: of protein by its share of the energy.
    """

    name: str
    energy: str
    beside: str
    protein: str
    protein_beside: str
    salt: str
    salt_beside: str
    food: Printed
    complete: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FedTable:
    """What people eat, person by person, and the energy of each day; `most` and `least` are the planning range.

    `by_day` are rows of a day and the energy of each person on it, in the order of `rows`.
    """

    rows: tuple[FedRow, ...]
    by_day: tuple[tuple[str, tuple[str, ...]], ...]
    least: Printed
    most: Printed
    least_kcal: float
    most_kcal: float
    planning: Line
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KitRow:
    """A thing to take along and why; `count` is "" for a single one."""

    what: str
    count: str
    why: str
