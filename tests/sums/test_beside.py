"""What lay in a dryer together: traces that are passed on, and RAW food beside other food."""

from tests.sums.store_of import CHEESE, EGG, MIX, RICE, run_of, store_of

from packlarder.figures.allergens import Allergen


def test_traces_of_what_lay_beside() -> None:
    """Egg beside cheese may hold milk and cheese egg; what is in a food itself is no trace; shared knives are added."""
    cheese = "cheese: {fresh: 500 g, trays: 1, dry: 320 g, traces: [sesame, milk]}"
    found = store_of(run_of(EGG, cheese), cheese=CHEESE)
    assert found.batch(0).traces == {Allergen.MILK, Allergen.SESAME}
    assert found.batch(1).traces == {Allergen.EGG, Allergen.SESAME}
    assert found.component("egg-powder").traces == {Allergen.MILK, Allergen.SESAME}
    assert store_of(run_of(EGG), cheese=CHEESE).batch().traces == frozenset()


def test_what_a_neighbour_may_contain_is_passed_on() -> None:
    """The cheese may hold nuts by its packet: so may the egg beside it, but not the egg of another run."""
    cheese = "cheese: {fresh: 500 g, trays: 1, dry: 320 g}"
    found = store_of(run_of(EGG, cheese), run_of(EGG, RICE), cheese=f"{CHEESE}\nmay contain: [walnut]")
    assert found.batch(0).traces == {Allergen.MILK, Allergen.WALNUT}
    assert [set(found.batch(index, "run-2").traces) for index in (0, 1)] == [set(), {Allergen.EGG}]


def test_what_its_ingredients_lay_beside_is_passed_on() -> None:
    """Egg lay beside cheese; a bake of that egg, dried beside rice, hands egg and milk on to the rice."""
    bake = (
        "made of: [{egg powder: 100 g}, {salt: 2 g}]\nwent in: cooked\ncontains: [egg]\ndried: freeze-dried\nform: bark"
    )
    cheese = "cheese: {fresh: 500 g, trays: 1, dry: 320 g}"
    found = store_of(
        run_of(EGG, cheese), run_of("bake: {fresh: 90 g, trays: 1, dry: 90 g}", RICE), cheese=CHEESE, bake=bake
    )
    assert found.batch(1, "run-2").traces == {Allergen.EGG, Allergen.MILK}
    assert found.component("rice").traces == {Allergen.EGG, Allergen.MILK}


def test_jars_filled_on_one_day_without_a_dryer_give_no_traces() -> None:
    """Pasta and milk powder were only put into jars: nothing drips from one jar into the other."""
    found = store_of(run_of("pasta: {dry: 500 g}", "milk powder: {dry: 500 g, traces: soya}", dryer="", took=""))
    assert [found.batch(index).traces for index in (0, 1)] == [frozenset(), {Allergen.SOYA}]


def test_what_lay_beside_raw_food() -> None:
    """The rice is told of the RAW egg in its dryer; the egg, a run without RAW and a run without a dryer are not."""
    found = store_of(
        run_of(EGG, RICE, EGG),
        run_of(RICE),
        run_of("egg powder: {dry: 9 g}", "pasta: {dry: 9 g}", dryer=""),
        fails=None,
    )
    assert [found.batch(index).beside_raw for index in (0, 1, 2)] == [(), ("Egg powder",), ()]
    assert found.batch(0, "run-2").beside_raw == ()
    assert found.batch(1, "run-3").beside_raw == ()


def test_traces_go_on_into_mixes() -> None:
    """A mix of egg that lay beside cheese may hold milk, unless it holds milk anyway."""
    cheese = "cheese: {fresh: 500 g, trays: 1, dry: 320 g}"
    plain = "made of: [{egg powder: 100 g}, {salt: 2 g}]\ncontains: [egg]\nform: powder"
    found = store_of(run_of(EGG, cheese), cheese=CHEESE, plain=plain, mix=MIX)
    assert found.component("plain").traces == {Allergen.MILK}
    assert found.component("mix").traces == frozenset()
