"""From what an author writes to dry grams: weights, spoons, counts, fresh worth, each, mugs; what nobody weighed."""

import pytest
from tests.sums.book_of import dish_of


def grams(take: str, component: str = "egg powder", serves: int = 2) -> float:
    """Give the dry grams of one part for the servings it is written for."""
    return dish_of(f"{component}: {take}", f"Eat the {component}.", serves=serves).planned.parts[0].dry_g


@pytest.mark.parametrize(
    ("take", "dry_g"),
    [
        ("40 g", 40),
        ("2 oz", 56.699),  # 2 x 28.3495
        ("1/2 cup", 40),  # 80 g a cup
        ("1 tbsp", 5),  # 80 / 16
        ("40 g each", 80),  # for two
        ("worth 100 g fresh", 24.53),  # 100 x (1 - 0.7615) / (1 - 0.0278)
        ("4 eggs", 49.06),  # 4 x 50 g fresh = 200 g / 4.0763
        ("2 eggs each", 49.06),
        ("1 mug", 101.44),  # 300 mL x 80 / 236.588
    ],
)
def test_amounts_become_dry_grams(take: str, dry_g: float) -> None:
    """A count that is known only fresh is fresh; a mug is the household's own."""
    assert grams(take) == pytest.approx(dry_g, abs=0.01)


def test_worth_each_grows_with_servings() -> None:
    """`worth 50 g fresh each` for two is 100 g fresh, for twelve 600."""
    worked = dish_of("beef: worth 50 g fresh each", "soak: beef", "drain: away")
    assert worked.sums().parts[0].fresh_g == pytest.approx(100)
    assert worked.sums(12).parts[0].fresh_g == pytest.approx(600)


def test_oil_that_stays_in() -> None:
    """30 mL of oil (27 g, 884 kcal per 100 g) of which half stays in: all is carried, half is eaten."""
    sums = dish_of("{oil: {take: 30 mL, stays in: 15 mL}}", "{fry: oil, for: 3 min}").sums()
    assert sums.weight_g == 27
    assert sums.per_serving.energy_kcal == pytest.approx(27 / 2 * 8.84 / 2)  # SR28 olive oil


def test_stays_in_by_weight_of_what_is_measured() -> None:
    """9 g of 30 mL (27 g) are a third."""
    worked = dish_of("{oil: {take: 30 mL, stays in: 9 g}}", "{fry: oil, for: 3 min}")
    assert worked.planned.parts[0].eaten_share == pytest.approx(1 / 3)


@pytest.mark.parametrize(
    ("parts", "marked", "message", "help"),
    [
        (
            "beef: 1 cup",
            "1 cup",
            "nobody knows the weight of 1\u00a0cup of beef",
            "weigh 1 cup of beef and write `weighs: {1 cup: ... g}` in components/beef.yaml",
        ),
        (
            "beef: 2 handfuls",
            "2 handfuls",
            "nobody knows the weight of 2\u00a0handfuls of beef",
            "weigh 1 handful of beef and write `weighs: {1 handful: ... g}` in components/beef.yaml",
        ),
        (
            "beef: worth 3 steaks fresh",
            "worth 3 steaks fresh",
            "nobody knows the weight of 3\u00a0steaks of it fresh",
            "weigh 1 steak of beef fresh and write `counts: {1 steak: ... g}` in components/beef.yaml",
        ),
    ],
)
def test_what_nobody_weighed(parts: str, marked: str, message: str, help: str) -> None:
    """An amount that can not be turned into grams is a fault at the amount, and says what to weigh."""
    (fault,) = dish_of(parts, "soak: beef", "drain: away", fails=True).faults
    assert (fault.code, fault.line, fault.marked) == ("no-weight-known", 5, marked)
    assert (fault.message, fault.help) == (message, help)


def test_what_can_not_be_meant() -> None:
    """50 kg for one is a slip of the unit."""
    (fault,) = dish_of("beef: 50 kg each", "soak: beef", "drain: away", fails=True).faults
    assert (fault.code, fault.marked) == ("impossible-amount", "50 kg each")
    assert fault.message == "this comes to 50 kg for each"


def test_more_can_not_stay_in_than_is_taken() -> None:
    """15 mL can not leave 30."""
    (fault,) = dish_of("{oil: {take: 15 mL, stays in: 30 mL}}", "{fry: oil, for: 3 min}", fails=True).faults
    assert (fault.code, fault.marked) == ("more-stays-in", "30 mL")


def test_what_stays_in_must_be_comparable() -> None:
    """Of 20 g of salt nobody knows what share a spoonful is."""
    (fault,) = dish_of("{beef: {take: 20 g, stays in: 1 tbsp}}", "soak: beef", fails=True).faults
    assert (fault.code, fault.marked) == ("no-weight-known", "1 tbsp")
