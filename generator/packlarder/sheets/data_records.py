"""The records that other programs get of a dish, by the names that stand in the JSON."""

from typing import TypedDict


class Both(TypedDict):
    """A printed amount in both systems of units; None where there is none."""

    metric: str | None
    us: str | None


class PartWater(TypedDict):
    """The waters of a part; `absorbed_ml` is None where nobody has measured it, `way` where it takes none."""

    way: str | None
    offered_ml: float
    absorbed_ml: float | None
    drained_ml: float


class Part(TypedDict):
    """One part. `amount` is its weight as printed, `measure` the same in spoons, cups or pieces."""

    component: str
    name: str
    must_be_cooked: str
    dry_g: float
    amount: Both
    measure: Both
    fresh_equivalent_g: float | None
    yield_from: str | None
    water: PartWater


class Water(TypedDict):
    """The water to carry. Every drop stands in one field; all but `carry_ml` add up to it."""

    in_food_ml: int
    drained_away_ml: int
    pot_ml: int
    boiled_off_ml: int
    drink_ml: int
    heater_ml: int
    spare_ml: int
    carry_ml: int


class Conditions(TypedDict):
    """Where, in what weather and on what the dish is cooked."""

    height_m: float
    air_c: float
    water_c: float
    heater_water_carried: bool
    stove: str
    pot: str


class Heat(TypedDict):
    """What it takes of fire. `hot_water_ml` is the part of all water poured that is heated."""

    boiling_point_c: float
    fuel: str
    fuel_g: int | None
    energy_kj: float
    time_factor: float
    hot_water_ml: int


class Clock(TypedDict):
    """Minutes from the first move to the plate, and what of them is soaking and heating."""

    minutes: int
    soak_minutes: int
    heat_minutes: int


class Packed(TypedDict):
    """A pack with the components in it; `number` is None for what travels in a tub of its own."""

    number: str | None
    called: str
    parts: list[str]
    weight_g: float
    raw: bool
    sachet: bool
    inside: "list[Packed]"


class Step(TypedDict):
    """A step: its minute against the clock, its verb (None for a plain sentence), what to do in both systems."""

    start_minute: int
    verb: str | None
    text: Both


class Feeds(TypedDict):
    """What one serving feeds; None is unknown."""

    energy_kcal: float | None
    protein_g: float | None
    fat_g: float | None
    carbohydrate_g: float | None
    fibre_g: float | None
    sugars_g: float | None
    sodium_mg: float | None


class Note(TypedDict):
    """A safety note, where it comes from and how well that is known."""

    rule: str
    severity: str
    text: str
    source: str
    standing: str


class DishData(TypedDict):
    """A dish worked out for one number of servings."""

    dish: str
    name: str
    servings: float
    edition: str
    day: str
    parts: list[Part]
    water: Water
    conditions: Conditions
    heat: Heat
    clock: Clock
    weight_g: float
    energy_kcal_per_serving: float | None
    feeds_per_serving: Feeds
    incomplete: list[str]
    allergens: list[str]
    traces: list[str]
    packs: list[Packed]
    steps: list[Step]
    safety: list[Note]
    missing: list[str]
