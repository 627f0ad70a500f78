"""Where a step is done: pots and pans by name, bowls beside a pot in use, everything in the pot, rounds and lots."""

import pytest
from tests.sheets.test_step_words import METRIC, US, lines, sheet_of
from tests.sums.book_of import dish_of, packs_of

from packlarder.measure import NO_BREAK


def test_a_pan_is_always_named() -> None:
    """Beef is not fried in the water of the pot; once two are used, both are named, and the pot that gets the water."""
    worked = dish_of(
        "beef: 100 g, pasta: 100 g",
        "soak: beef",
        "drain: into the pot",
        "{fry: beef, for: 4 min, pot: pan}",
        "{boil: pasta, in: 600 mL, for: 10 min}",
        "stir in: beef",
    )
    told = lines(worked)
    assert told[1] == "Beef: pour the water (about 250 mL) into the pot."  # of that name
    assert told[2] == "In the pan: beef, 4 min."
    assert told[3].startswith("In the pot: pasta (100 g) in ")
    assert told[4] == "To the pot: beef."


def test_one_pot_needs_no_name() -> None:
    """A dish of one pot does not name it at every step; one fried alone names the pan."""
    assert lines(dish_of("pasta: 100 g", "{boil: pasta, in: 600 mL, for: 10 min}"))[0].startswith("Pasta (100 g) in ")
    assert lines(dish_of("rice: 50 g", "moisten: rice", "{fry: rice, for: 4 min}", more="pot: pan\n"))[1] == (
        "In the pan: rice, 4 min."
    )


def test_drained_water_goes_into_the_pot_by_name() -> None:
    """The little pot is the next in which something cooks in water."""
    worked = dish_of(
        "beef: 100 g, pasta: 100 g",
        "soak: beef",
        "drain: into the pot",
        "{simmer: beef, in: 300 mL, for: 4 min, pot: little pot}",
        "{boil: pasta, in: 1 L, for: 10 min}",
    )
    assert lines(worked)[1].endswith(" into the little pot.")


def test_pots_are_listed_at_the_foot() -> None:
    """All that are used; a dish that is never heated names neither stove nor pot."""
    hot = sheet_of(
        dish_of(
            "beef: 50 g, pasta: 100 g",
            "{simmer: beef, in: 300 mL, for: 4 min, pot: little pot}",
            "{boil: pasta, in: 1 L, for: 10 min}",
        )
    )
    assert hot.conditions[0].endswith(", burner, little pot, pot")
    cold = sheet_of(dish_of("milk powder: 10 g", "mix: milk powder"))
    assert "burner" not in cold.conditions[0]


@pytest.mark.parametrize(
    ("steps", "says"),
    [
        (("{simmer: beef, in: 400 mL, for: 5 min}", "moisten: rice"), "In a bowl or the pack: rice (100 g) with "),
        (("{simmer: beef, in: 400 mL, for: 5 min}", "{moisten: rice, say: In its bag.}"), "Rice (100 g) with "),
        (("stir in: beef", "moisten: rice"), "Rice (100 g) with "),
        (("moisten: rice", "{simmer: beef, in: 400 mL, for: 5 min}"), "In a bowl or the pack: rice (100 g) with "),
        (("moisten: rice", "{fry: [rice, beef], for: 5 min}"), "Rice (100 g) with "),
        (("{simmer: beef, in: 400 mL, for: 5 min}", "pour over: rice"), "200 mL boiling water over rice (100 g); "),
    ],
)
def test_what_is_wetted_beside_a_pot_in_use_says_where(steps: tuple[str, ...], says: str) -> None:
    """The pot that simmers, or that will before the rice goes into it, has no room for the rice to soak."""
    worked = dish_of("beef: 50 g, rice: 100 g", *steps, fails=None)
    assert any(line.startswith(says) for line in lines(worked)), lines(worked)


def test_what_is_in_the_pot_is_warmed_with_all_of_it() -> None:
    """Nobody picks the shrimps out of the noodles to warm them."""
    worked = dish_of(
        "beef: 50 g, pasta: 100 g",
        "moisten: beef",
        "{boil: pasta, in: 600 mL, for: 10 min}",
        "stir in: beef",
        "{warm: beef, for: 2 min}",
    )
    assert lines(worked)[3] == "Everything in the pot, 2 min."


def test_nobody_drained_what_was_not_drained() -> None:
    """Beef that goes into the pot with the water around it takes that water along."""
    worked = dish_of("beef: 100 g", "soak: beef", "{simmer: beef, in: 300 mL, for: 5 min}", fails=None)
    assert lines(worked)[1] == "Beef in 50 mL water and the water it soaked in (about 250 mL), 5 min."


def test_what_is_stirred_in_is_shared_out_over_the_rounds() -> None:
    """For two there is one round and no word of it; for four there are two."""
    worked = dish_of("pasta: 200 g, oil: 20 mL", "{boil: pasta, in: 600 mL, for: 10 min, lid: off}", "stir in: oil")
    assert lines(worked, 2)[1] == "Oil (1 tbsp + 1 tsp)."
    assert lines(worked, 4)[1] == "Oil (2 tbsp + 2 tsp), shared out over the 2 rounds."


def test_more_than_a_bowl_holds_takes_several() -> None:
    """16 servings of rice fill 2.4 L, the largest pot holds 2 L; for two there is no word of it."""
    worked = dish_of("rice: 100 g", "pour over: rice")
    rows = sheet_of(worked, 2, 16).steps
    (first, *_) = rows[0].line
    assert not isinstance(first, str)
    assert lines(worked)[0].startswith("200 mL boiling water over rice (100 g); stir")
    assert lines(worked, 16)[0].startswith("In 2 bowls or packs: 1.60 L boiling water over rice (800 g); stir")


def test_a_stir_on_the_way_is_within_the_wait() -> None:
    """Fifteen minutes in all, not fifteen after the stir."""
    worked = dish_of(
        "stew: 100 g",
        "pour over: stew",
        stew="""\
        was: rice, white, boiled
        went in: cooked
        contains: []
        dried: freeze-dried
        form: grains
        yields: {from: 1 kg, gives: 325 g}
        bring back: {pour over: 100 g, with: 200 mL boiling water, stir at: 7 min, wait: 15 min, cosy: yes}
        """,
    )
    assert lines(worked) == [
        "200 mL boiling water over stew (100 g); stir, close, keep in a cosy, wait 15 min in all, stir at 7 min."
    ]


def test_a_drain_names_the_pack_that_soaked() -> None:
    """In the booklet one number stands for all that lies in the water."""
    worked = dish_of(
        "beef: 50 g, onion: 10 g, rice: 50 g",
        "soak: [beef, onion]",
        "drain: away",
        "moisten: rice",
        more=packs_of("[[beef, onion], [rice]]"),
    )
    assert lines(worked, field=True)[1].startswith("pack 1.1: pour the water (about ")


def test_litres_from_one_on() -> None:
    """Below a litre mL, from there on L to 10 mL, in steps and totals; the odd mL is told where there is one."""
    worked = dish_of("rice: 100 g", "{moisten: rice, with: 500 mL hot water}")
    assert [lines(worked, number)[0].split(" with ")[1].split(" hot")[0] for number in (2, 4)] == ["500 mL", "1.00 L"]
    total = sheet_of(worked, 2, 4).water_total.metric
    assert [text.replace(NO_BREAK, " ") for text in total] == ["500 mL", "1.00 L"]


def test_counts_that_are_not_quite_so_are_weighed_in_steps() -> None:
    """2.83 nests are told by their weight in a step; two nests are two nests."""
    nests = """\
        was: pasta, dry
        contains: [wheat]
        dried: bought dry
        form: nests
        weighs: {1 nest: 60 g}
        bring back: {in the pot: 100 g, takes: 140 mL, wait: 10 min}
        """
    for grams, says in ((170, "Nests (6 oz) in"), (120, "Nests (2 nests) in")):
        worked = dish_of(f"nests: {grams} g", "{boil: nests, in: 600 mL, for: 4 min}", nests=nests)
        assert lines(worked, system=US)[0].startswith(says), grams
        assert lines(worked, system=METRIC)[0].startswith(f"Nests ({grams} g) in")
