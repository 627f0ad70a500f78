"""What the sums hand on: a component worked out, a dish planned, a dish worked out for a number of servings.

What is made for every number of servings is a NamedTuple: as frozen as a dataclass, and made in half the time, which
tells in a book of 1,000 dishes.

Weights are in g, waters in mL, times in minutes, temperatures in °C, all unrounded unless a name says `printed`.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple

from packlarder.book.bring_back import Warmth, Way
from packlarder.book.component import Component
from packlarder.book.dish import Dish
from packlarder.book.household import Pot, Stove
from packlarder.book.step import Fate, Verb
from packlarder.faults import Gap
from packlarder.figures.allergens import Allergen
from packlarder.figures.kinds import Cooking, Kind
from packlarder.reckon.spread import Spread


class YieldFrom(StrEnum):
    """Where a yield comes from, most trusted first."""

    BATCHES = "our batches"
    STATED = "what we wrote down"
    TABLE = "food table"
    AS_IT_IS = "as it is"


class Nutrients(NamedTuple):
    """What one gram holds; None is unknown, never nought."""

    energy_kcal: float | None
    protein_g: float | None
    fat_g: float | None
    carbohydrate_g: float | None
    fibre_g: float | None
    sugars_g: float | None
    sodium_mg: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Yielded:
    """What drying made of a food, per gram dry.

    `fresh_g` is the fresh food one dry gram stands for and `lost_ml` the water it lost; both 1 and 0 for what is
    carried as it is. `table_fresh_g` is the mass balance of the food table, where there is one to compare with.
    `learnt` are the household's batches that it is the median of, None where none was believed.
    """

    fresh_g: float
    lost_ml: float
    dry_water: float | None
    origin: YieldFrom
    table_fresh_g: float | None = None
    learnt: Spread | None = None

    @property
    def batches(self) -> int:
        """Tell of how many batches it is the median."""
        return 0 if self.learnt is None else self.learnt.count


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterPerGram:
    """The waters of one dry gram, by its component's own way. `takes_ml` is None where it is not known.

    `assumed` says that offered or absorbed is our rule of thumb and not the household's own figure.
    """

    way: Way
    warmth: Warmth
    offered_ml: float
    takes_ml: float | None
    wait_min: float
    stir_at_min: float | None
    cosy: bool
    assumed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ComponentSums:
    """A component worked out.

    `kinds` are the kinds of all foods in it, `kind` that of the heaviest, `uncooked` those that must still be cooked.
    `fresh_water` is the share of water in it as it was loaded or bought. `must_be_cooked` counts what
    the household raised. `own_traces` are those that its packet or its ingredients bring, `traces` also those of what
    lay beside a batch of it. `grams_per` maps a measure's word (`mL`, or a noun such as `portion`) to dry grams;
    `fresh_grams_per` a noun (`egg`) to fresh grams.
    """

    id: str
    model: Component
    kind: Kind
    kinds: frozenset[Kind]
    uncooked: frozenset[Kind]
    must_be_cooked: Cooking
    allergens: frozenset[Allergen]
    traces: frozenset[Allergen]
    own_traces: frozenset[Allergen]
    fresh_water: float | None
    yielded: Yielded | None
    nutrients: Nutrients
    water: WaterPerGram | None
    grams_per: Mapping[str, float]
    fresh_grams_per: Mapping[str, float]
    gaps: tuple[Gap, ...]

    @property
    def raw(self) -> bool:
        """Tell whether it bears the word RAW: it must be cooked to be safe."""
        return self.must_be_cooked is Cooking.TO_BE_SAFE


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedPart:
    """A part with its component; `dry_g` is for the servings the dish is written for."""

    index: int
    called: str
    component: ComponentSums
    dry_g: float
    fixed: bool
    eaten_share: float
    instead: tuple[ComponentSums, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedStep:
    """A step with its parts by index into the plan's parts; `verb` is None for a plain sentence."""

    index: int
    verb: Verb | None
    sentence: str
    parts: tuple[int, ...]
    fate: Fate | None
    pot_ml: float | None
    warmth: Warmth | None
    given_ml: float | None
    minutes: float | None
    until: str
    to_c: float | None
    heater: bool
    pot: str
    lid_on: bool
    cosy: bool
    say: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedPack:
    """A pack with its parts by index, and packs inside it. `written` is false where it was worked out."""

    number: str
    called: str
    parts: tuple[int, ...]
    inside: "tuple[PlannedPack, ...]"
    sachet: bool
    written: bool

    @property
    def all_parts(self) -> tuple[int, ...]:
        """Give the parts in it, those of packs inside included."""
        return (*self.parts, *(part for pack in self.inside for part in pack.all_parts))


@dataclass(frozen=True, slots=True, kw_only=True)
class DishPlan:
    """A dish with everything resolved that does not change with the number of servings.

    `way_of[i]` is the way of water that the steps give part i (None: none), `wetted_in[i]` the step that first gives it
    water of its own. `loose` are parts that travel in their
    own tub. `pots` and `stove` are the household's.
    """

    id: str
    model: Dish
    parts: tuple[PlannedPart, ...]
    steps: tuple[PlannedStep, ...]
    packs: tuple[PlannedPack, ...]
    loose: tuple[int, ...]
    way_of: tuple[Way | None, ...]
    wetted_in: tuple[int | None, ...]
    stove_name: str
    stove: Stove
    pot_name: str
    pots: Mapping[str, Pot]

    def wetted_by(self, step: PlannedStep) -> tuple[int, ...]:
        """Give the parts to which a step is the first to give water of their own."""
        return tuple([index for index in step.parts if self.wetted_in[index] == step.index])


@dataclass(frozen=True, slots=True, kw_only=True)
class Conditions:
    """Where and in what weather a dish is cooked."""

    height_m: float
    air_c: float
    water_c: float
    heater_water_carried: bool


class PartSums(NamedTuple):
    """A part worked out for a number of servings. `fresh_g` is None for what stands for nothing fresh."""

    dry_g: float
    fresh_g: float | None
    way: Way | None
    offered_ml: float
    absorbed_ml: float | None
    drained_ml: float


class WaterSums(NamedTuple):
    """The water to carry for a dish, in whole mL; each drop stands in one field only, and they add up to `carry_ml`.

    `hot_ml` is what of it must be heated: before it goes onto food, or because it cooks in the pot.
    """

    in_food_ml: int
    drained_away_ml: int
    pot_ml: int
    boiled_off_ml: int
    drink_ml: int
    heater_ml: int
    spare_ml: int
    carry_ml: int
    hot_ml: int


class StepSums(NamedTuple):
    """A step worked out: when it starts, what it takes of the cook and the clock, its water, rounds and heat.

    `water_ml` is the fresh water it takes, `from_drain_ml` what was drained for its pot, `standing_ml` what stands in
    the pot from the steps before; `drained_ml` is what a drain pours off; `heated_ml` is what of the fresh water must
    be heated, now or in a later step. `cook_min` and `water_ml` count all rounds. `vessels` are the bowls or packs that
    food takes which is wetted without a flame. `steeped_c` is the temperature that a steeped or heater-warmed food ends
    at.
    """

    start_min: float
    end_min: float
    boil_up_min: float
    cook_min: float
    wait_min: float
    water_ml: float
    from_drain_ml: float
    standing_ml: float
    drained_ml: float
    heater_ml: float
    heated_ml: float
    boiled_off_ml: float
    rounds: int
    vessels: int
    heat_kj: float
    steeped_c: float | None


class ClockSums(NamedTuple):
    """Minutes from the first move to the plate, and what of them is soaking and heating."""

    minutes: int
    soak_minutes: int
    heat_minutes: int


class HeatSums(NamedTuple):
    """What a dish burns. `fuel_g` is rounded up with the household's margin; None where it can not be worked out."""

    boiling_point_c: float
    fuel: str
    fuel_g: int | None
    energy_kj: float
    time_factor: float


class DishSums(NamedTuple):
    """A dish worked out for one number of servings under given conditions; on a trip that need not be a whole number.

    `weight_g` is the total of its parts' weights as they are printed, so that they add up. `incomplete` names nutrients
    for which some part's figure is not known.
    """

    servings: float
    conditions: Conditions
    parts: tuple[PartSums, ...]
    steps: tuple[StepSums, ...]
    water: WaterSums
    clock: ClockSums
    heat: HeatSums
    weight_g: float
    per_serving: Nutrients
    incomplete: frozenset[str]
    gaps: tuple[Gap, ...]
