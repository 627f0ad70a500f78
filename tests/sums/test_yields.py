"""What drying makes of a food: mass balance, the household's own weights before it, and what can not be."""

import pytest
from tests.sums.book_of import components_of

from packlarder.measure import Quantity
from packlarder.measure.units import CUP, TABLESPOON
from packlarder.reckon.records import ComponentSums, Yielded, YieldFrom
from packlarder.reckon.yields import dry_water_from, fresh_per_dry


def sums_of(text: str) -> ComponentSums:
    """Work out one component."""
    return components_of(it=text).components["it"]


def made_of(text: str) -> Yielded:
    """Give what drying made of one component."""
    made = sums_of(text).yielded
    assert made is not None
    return made


def dried(was: str, dry_water: str, more: str = "", went_in: str = "raw", contains: str = "[]") -> str:
    """Write a freeze-dried component."""
    return (
        f"was: {was}\nwent in: {went_in}\ncontains: {contains}\ndried: freeze-dried\nform: any\n"
        f"dry water: {dry_water}\n{more}"
    )


@pytest.mark.parametrize(
    ("was", "went_in", "contains", "dry_water", "fresh_g"),
    [
        ("egg, whole, raw", "raw", "[egg]", "2.78 %", 4.08),  # (1 - 0.0278) / (1 - 0.7615)
        ("milk, whole", "as it is", "[milk]", "2.47 %", 8.22),  # (1 - 0.0247) / (1 - 0.8813)
        ("milk, skim", "as it is", "[milk]", "3.96 %", 10.48),  # (1 - 0.0396) / (1 - 0.9084)
        ("bell pepper, green, raw", "raw", "[]", "2 %", 16.04),  # (1 - 0.02) / (1 - 0.9389)
        ("onion, raw", "raw", "[]", "3.93 %", 8.82),  # (1 - 0.0393) / (1 - 0.8911)
    ],
)
def test_mass_balance(was: str, went_in: str, contains: str, dry_water: str, fresh_g: float) -> None:
    """Fresh per dry follows from the water before and after; SR28 pairs, as the table of numbers has them."""
    made = made_of(dried(was, dry_water, went_in=went_in, contains=contains))
    assert made.fresh_g == pytest.approx(fresh_g, abs=0.006)  # two decimals printed
    assert made.lost_ml == pytest.approx(fresh_g - 1, abs=0.006)
    assert made.origin is YieldFrom.TABLE


def test_own_weights_outrank_the_table() -> None:
    """Who weighed 900 g in and 221 g out gets 4.07, not 4.08, and both are kept to be compared."""
    made = made_of(dried("egg, whole, raw", "2.78 %", "yields: {from: 900 g, gives: 221 g}", contains="[egg]"))
    assert made.origin is YieldFrom.STATED
    assert made.fresh_g == pytest.approx(900 / 221)
    assert made.table_fresh_g == pytest.approx(4.08, abs=0.006)
    # 900 g x 0.2385 = 214.65 g of solids in 221 g: 2.87 % water
    assert made.dry_water == pytest.approx(1 - 214.65 / 221)


def test_what_was_never_dried_loses_nothing() -> None:
    """Oil and rice as bought stand for themselves."""
    worked = components_of()
    for id in ("oil", "pasta", "salt", "milk-powder"):
        made = worked.components[id].yielded
        assert made is not None
        assert (made.fresh_g, made.lost_ml, made.origin) == (1, 0, YieldFrom.AS_IT_IS)


def test_bought_dry_of_a_wet_food_was_dried_by_its_maker() -> None:
    """Onion flakes from a shop stand for fresh onion, dried as air-dried vegetables are: 8 % water left."""
    made = made_of("was: onion, raw\ncontains: []\ndried: bought dry\nform: flakes")
    assert made.fresh_g == pytest.approx(0.92 / 0.1089)  # (1 - 0.08) / (1 - 0.8911) = 8.45


@pytest.mark.parametrize(
    ("gives", "says"),
    [
        # 900 g x (1 - 0.7615) = 214.65 g of solids; 130 g is less than they weigh
        ("130 g", "900 g at 76 % water hold 215 g of solids: 130 g dry can not be right"),
        # the egg may have held a point more water: 900 g x (1 - 0.7715) = 205.65 g
        ("205 g", "900 g at 76 % water hold 215 g of solids: 205 g dry can not be right"),
        # 1 - 214.65 / 400 = 46 % water
        ("400 g", "900 g at 76 % water hold 215 g of solids: 400 g dry would be 46 % water"),
    ],
)
def test_impossible_yields_are_refused_with_the_arithmetic(gives: str, says: str) -> None:
    """Less than the solids can not be, and what is half water is not dry."""
    text = dried("egg, whole, raw", "2.78 %", f"yields: {{from: 900 g, gives: {gives}}}", contains="[egg]")
    (fault,) = components_of(fails=True, it=text).faults
    assert (fault.code, fault.file, fault.marked) == ("impossible-yield", "components/it.yaml", gives)
    assert fault.message == says
    assert fault.help


@pytest.mark.parametrize("gives", ["206 g", "221 g", "260 g", "329 g"])
def test_believable_yields_pass(gives: str) -> None:
    """The solids of an egg a point wetter (900 g x 0.2285 = 205.65 g) to 35 % water (214.65 / 0.65 = 330 g) may be."""
    text = dried("egg, whole, raw", "2.78 %", f"yields: {{from: 900 g, gives: {gives}}}", contains="[egg]")
    assert sums_of(text).yielded is not None


def test_dry_water_is_the_yield_turned_round() -> None:
    """What a weighed yield says of the water left gives the yield back."""
    assert dry_water_from(0.7615, fresh_per_dry(0.7615, 0.0278)) == pytest.approx(0.0278)


EGG_BY_VOLUME = (
    "was: egg, whole, raw\nwent in: raw\ncontains: [egg]\ndried: freeze-dried\nform: powder\ndry water: 2.78 %\n"
    "counts: {{1 egg: 50 g}}\nweighs: {{1 cup: {grams} g}}\nbring back: {{mix: {rule}, with: {rule} cold water}}"
)


@pytest.mark.parametrize("rule", ["1 tbsp", "2 tbsp", "1/4 cup"])
def test_egg_powder_one_to_one_by_volume(rule: str) -> None:
    """1 : 1 by volume (common practice, no source) gives back 97 % of the water lost, for powder of 0.34 g/mL.

    The rules of 2 + 2 tablespoons for one egg and 1/4 + 1/4 cup for two are the same ratio.
    """
    egg = sums_of(EGG_BY_VOLUME.format(grams=0.34 * CUP.size, rule=rule))
    assert egg.water is not None
    assert egg.yielded is not None
    # 1 mL of powder is 0.34 g: 1 / 0.34 = 2.94 mL for a gram; lost were 3.08; 0.955
    assert egg.water.offered_ml == pytest.approx(1 / 0.34)
    assert egg.water.offered_ml / egg.yielded.lost_ml == pytest.approx(0.956, abs=0.001)


def test_how_much_of_an_egg_two_tablespoons_are() -> None:
    """2 tbsp of powder of 0.34 g/mL are 0.8 of a large egg, 1/4 cup 1.6 (common practice says one and two)."""
    egg = sums_of(EGG_BY_VOLUME.format(grams=0.34 * CUP.size, rule="1 tbsp"))
    assert egg.yielded is not None
    powder_g = 2 * TABLESPOON.size * egg.grams_per["mL"]  # 29.57 mL x 0.34 = 10.05 g
    eggs = powder_g * egg.yielded.fresh_g / egg.fresh_grams_per["egg"]  # 10.05 x 4.08 / 50
    assert eggs == pytest.approx(0.815, abs=0.01)
    quarter_cup_g = CUP.size / 4 * egg.grams_per["mL"]
    assert quarter_cup_g * egg.yielded.fresh_g / 50 == pytest.approx(1.64, abs=0.01)


def test_a_quart_of_skim_milk() -> None:
    """980 g of skim milk dry to 93.5 g and lose 886 g: 3 3/4 cups (US DoD card A-10; SR28 weighs a cup 245 g)."""
    made = made_of(dried("milk, skim", "3.96 %", went_in="as it is", contains="[milk]"))
    powder_g = 980 / made.fresh_g
    assert powder_g == pytest.approx(93.5, abs=0.1)  # 980 / 10.48
    assert powder_g * made.lost_ml == pytest.approx(886, abs=1)
    assert powder_g * made.lost_ml / CUP.size == pytest.approx(3.75, abs=0.01)


def test_measures_of_one_component_agree() -> None:
    """A weighed cup tells what a spoon weighs, and the first of two weights of a word holds."""
    egg = sums_of(EGG_BY_VOLUME.format(grams=80, rule="1 tbsp"))
    tablespoon = Quantity(number=1, unit=TABLESPOON)
    assert egg.grams_per["mL"] * tablespoon.base == pytest.approx(5)  # 80 g / 16
