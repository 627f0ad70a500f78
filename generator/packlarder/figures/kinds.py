"""Kinds of food: the word by which every safety rule is decided.

A food of the table, or one that a household describes itself, has one kind. The table `kinds.csv` says of each kind
what the rules, the clock and the labels need to know. Where sources leave a choice, the safer side was taken.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from packlarder.figures.cooking import Softens
from packlarder.figures.figure import Standing
from packlarder.figures.rows import listed, read_rows


class Cooking(StrEnum):
    """Whether a food must be cooked before it is eaten, and why."""

    TO_BE_SAFE = "to be safe"
    """Eaten uncooked it can make people ill. RAW is printed for this and for nothing else."""
    TO_BE_EDIBLE = "to be edible"
    """Uncooked it is only hard, starchy or hard to digest."""
    NO = "no"


class WentIn(StrEnum):
    """The state in which a component was loaded into the dryer."""

    RAW = "raw"
    BLANCHED = "blanched"
    COOKED = "cooked"
    AS_IT_IS = "as it is"
    """Eaten or used as bought: cheese, milk powder, bread."""


class State(StrEnum):
    """The state in which a food of the table was weighed and analysed."""

    RAW = "raw"
    COOKED = "cooked"
    """Heated by cook or maker until done; canned food is cooked."""
    READY = "ready"
    """Eaten as bought: cheese, oil, honey, pasteurised milk."""
    DRY = "dry"
    """Dry by nature or by its trade: rice, beans, flour, sugar."""
    DRIED = "dried"
    FREEZE_DRIED = "freeze-dried"


class Doneness(StrEnum):
    """The rows of an authority's table of cooking temperatures."""

    EGG = "egg"
    POULTRY = "poultry"
    GAME_BIRD = "game bird"
    GROUND_MEAT = "ground meat"
    WHOLE_CUT = "whole cut"
    PORK_CUT = "pork cut"
    RAW_HAM = "raw ham"
    COOKED_HAM = "cooked ham"
    GAME = "game"
    GROUND_GAME = "ground game"
    FISH = "fish"
    SHELLFISH = "shellfish"
    COOKED_BEFORE = "cooked before"


class HomeDrying(StrEnum):
    """Whether a household may dry a kind of food in one kind of dryer."""

    YES = "yes"
    COOKED_FIRST = "cooked first"
    NO = "no"


class Group(StrEnum):
    """Kinds that dry and keep alike."""

    EGG = "egg"
    MEAT = "meat"
    FISH = "fish"
    MILK = "milk"
    LEGUME = "legume"
    STARCH = "starch"
    VEGETABLE = "vegetable"
    FRUIT = "fruit"
    NUT = "nut"
    FAT = "fat"
    SWEET = "sweet"
    SEASONING = "seasoning"
    DRINK = "drink"
    MEAL = "meal"


class Kind(StrEnum):
    """The words that a food's `kind` may be."""

    EGG = "egg"
    POULTRY = "poultry"
    GAME_BIRD = "game bird"
    GROUND_MEAT = "ground meat"
    WHOLE_CUT = "whole cut"
    PORK_CUT = "pork cut"
    HAM = "ham"
    CURED_MEAT = "cured meat"
    GAME = "game"
    GROUND_GAME = "ground game"
    FISH = "fish"
    CRUSTACEAN = "crustacean"
    MOLLUSC = "mollusc"
    MILK = "milk"
    RAW_MILK = "raw milk"
    CHEESE = "cheese"
    KIDNEY_BEAN = "kidney bean"
    DRY_BEAN = "dry bean"
    LENTIL = "lentil"
    TOFU = "tofu"
    PASTA = "pasta"
    RICE = "rice"
    GRAIN = "grain"
    READY_STARCH = "ready starch"
    BREAD = "bread"
    FLOUR = "flour"
    STARCH = "starch"
    POTATO = "potato"
    FIRM_VEGETABLE = "firm vegetable"
    LEAF_VEGETABLE = "leaf vegetable"
    VEGETABLE = "vegetable"
    GREEN_BEAN = "green bean"
    SPROUTS = "sprouts"
    MUSHROOM = "mushroom"
    SHIITAKE = "shiitake"
    WILD_MUSHROOM = "wild mushroom"
    FRUIT = "fruit"
    COCONUT = "coconut"
    NUT = "nut"
    SEED = "seed"
    FAT = "fat"
    SWEET = "sweet"
    HONEY = "honey"
    SEASONING = "seasoning"
    STOCK = "stock"
    DRINK = "drink"
    SEAWEED = "seaweed"
    READY_MEAL = "ready meal"

    @property
    def rules(self) -> "KindRules":
        """What the rules know of this kind."""
        return KINDS[self]


@dataclass(frozen=True, slots=True, kw_only=True)
class KindRules:
    """What the rules, the clock and the labels need to know of one kind.

    `uncooked` holds for whatever was not cooked: raw, blanched, dry or dried. `doneness` is None where no authority
    gives a temperature; then `done_when` alone tells. `softens` is None where height makes no cooking longer.
    `perishable` means that the two-hour rule holds once it is wet. `facts` are ids of `facts.csv`; where there are
    none, `standing` says that it is our own choice.
    """

    kind: Kind
    group: Group
    uncooked: Cooking
    doneness: Doneness | None
    softens: Softens | None
    animal: bool
    perishable: bool
    freeze_dry: HomeDrying
    air_dry: HomeDrying
    done_when: str
    caution: str
    facts: tuple[str, ...]
    standing: Standing


def must_be_cooked(kind: Kind, food_state: State, went_in: WentIn | None) -> Cooking:
    """Tell whether a food must be cooked before it is eaten.

    `went_in` is None for what was bought dry or is not dried; then, as for what went in as it is, the state of the food
    decides. Blanching is not
    cooking. A food that went in raw counts as uncooked even where the table's row was cooked: of two statements the
    safer one holds.
    """
    as_it_is = went_in in (None, WentIn.AS_IT_IS)
    cooked = food_state is State.COOKED if as_it_is else went_in is WentIn.COOKED
    return Cooking.NO if cooked else kind.rules.uncooked


def doneness_of(kind: Kind, *, cooked_before: bool) -> Doneness | None:
    """Give the row of the temperature table that a food is heated by, None where no temperature is published.

    What was cooked before it was dried is reheated like a leftover.
    """
    rules = kind.rules
    if not cooked_before:
        return rules.doneness
    if kind is Kind.HAM:
        return Doneness.COOKED_HAM
    return Doneness.COOKED_BEFORE if rules.perishable else None


def _kind_rules(row: Mapping[str, str]) -> KindRules:
    return KindRules(
        kind=Kind(row["kind"]),
        group=Group(row["group"]),
        uncooked=Cooking(row["uncooked"]),
        doneness=Doneness(row["doneness"]) if row["doneness"] else None,
        softens=Softens(row["softens"]) if row["softens"] else None,
        animal=row["animal"] == "yes",
        perishable=row["perishable"] == "yes",
        freeze_dry=HomeDrying(row["freeze_dry"]),
        air_dry=HomeDrying(row["air_dry"]),
        done_when=row["done_when"],
        caution=row["caution"],
        facts=listed(row["facts"]),
        standing=Standing(row["standing"]),
    )


KINDS: Mapping[Kind, KindRules] = MappingProxyType(
    {rules.kind: rules for rules in map(_kind_rules, read_rows("kinds.csv"))}
)
