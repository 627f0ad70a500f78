"""The records that other programs get of a trip, second part: packs, larder, and what is still to dry."""

from typing import TypedDict


class ItemData(TypedDict):
    """A component in a pack; `meal` is the number of the meal it is for, None for food on the move."""

    component: str
    name: str
    raw: bool
    grams: float
    meal: int | None


class PackData(TypedDict):
    """A pack; `inside` is the mark of the one it lies in, `bought_at` the place where it is bought.

    `for_whom` names the eater of a pack that is one person's, `water_ml` is their share of its water; else null and 0.
    """

    mark: str
    called: str
    for_whom: str | None
    water_ml: int
    meal: int | None
    day: int
    date: str
    bearer: str | None
    inside: str | None
    raw: bool
    sachet: bool
    spare: bool
    bought_at: str | None
    grams: float
    items: list[ItemData]


class DrawnData(TypedDict):
    """What is taken from one container of the larder."""

    mark: str
    grams: float
    use_by: str | None


class IntoData(TypedDict):
    """What of a component goes into one pack."""

    pack: str
    grams: float


class FillData(TypedDict):
    """All that the trip wants of a component, from where and for what.

    What is drawn, bought on the way and short adds up to `need_g`, and so does what goes into packs and into mixes.
    """

    component: str
    name: str
    raw: bool
    need_g: float
    drawn: list[DrawnData]
    bought_on_the_way_g: float
    short_g: float
    into: list[IntoData]
    for_mixes_g: float
    first_on: str
    last_on: str


class ShortfallData(TypedDict):
    """What the larder lacks of a component, and what that takes; None is not known, or not wanted."""

    component: str
    name: str
    raw: bool
    source: str
    short_g: float
    for_mixes_g: float
    fresh_g: float | None
    bought_g: float | None
    bought_as: str | None
    trays: int | None
    loads: list[int]
    start_by: str | None


class OnTraysData(TypedDict):
    """What of a component lies on the trays of a load."""

    component: str
    name: str
    raw: bool
    trays: int
    fresh_g: float
    dry_g: float


class LoadData(TypedDict):
    """A run of a dryer that is still to be made."""

    number: int
    dryer: str
    raw: bool
    starts: str
    ends: str
    on_the_trays: list[OnTraysData]


class FoodData(TypedDict):
    """A component by id and name; `raw` says that it must be cooked to be safe."""

    component: str
    name: str
    raw: bool


class IngredientData(TypedDict):
    """A food by the name that the book calls it, and its weight."""

    name: str
    grams: float


class TaskData(TypedDict):
    """Something to do before the trip; where `whole_day`, `starts` and `ends` are its first and its last day.

    `foods` are bought or mixed for what is made of several; empty for what is one food itself.
    """

    what: str
    starts: str
    ends: str
    whole_day: bool
    components: list[FoodData]
    grams: float | None
    load: int | None
    foods: list[IngredientData]
