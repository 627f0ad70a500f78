"""How steps, amounts and origins read: in a kitchen's words, with the figures that were worked out."""

from collections.abc import Sequence
from datetime import date

import pytest
from tests.sums.book_of import Worked, components_of, dish_of, packs_of

from packlarder.measure import NARROW, NO_BREAK
from packlarder.safety.whole import check_book
from packlarder.sheets import series
from packlarder.sheets.book import dish_series
from packlarder.sheets.dish import dish_sheet
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import DishSheet
from packlarder.sheets.field import field_opening
from packlarder.sheets.origins import component_origins
from packlarder.sheets.printed import System, plain
from packlarder.sheets.step_rows import field_lines

METRIC, US = System.METRIC, System.US


def series_of(worked: Worked, servings: Sequence[int]) -> DishSeries:
    """Work the dish out for some servings."""
    return dish_series(check_book(worked.book, date(2027, 6, 1)), "dish", servings)


def sheet_of(worked: Worked, *servings: int) -> DishSheet:
    """Set the dish for some servings, two unless they are named."""
    return dish_sheet(series_of(worked, servings or (2,)), ())


def lines(worked: Worked, servings: int = 2, system: System = METRIC, *, field: bool = False) -> list[str]:
    """Print the steps at one number of servings, with plain spaces."""
    series = series_of(worked, (servings,))
    told = field_lines(series) if field else [row.line for row in dish_sheet(series, ()).steps]
    return [plain(line, system, 0).replace(NO_BREAK, " ") for line in told]


SOAKED = ("soak: beef", "drain: into the pot", "{boil: pasta, in: 600 mL, for: 10 min}", "stir in: beef")


def test_a_dish_from_soak_to_plate() -> None:
    """Amounts stand where a part is named first; drained water is told as what it is."""
    assert lines(dish_of("beef: 100 g, pasta: 100 g", *SOAKED)) == [
        "In a bowl or the pack: beef (100 g) in 400 mL hot water, 10 min.",
        "Beef: pour the water (about 250 mL) into the pot.",
        "Pasta (100 g) in 350 mL water and the water drained (about 250 mL), 10 min.",
        "Beef.",
    ]


def test_rounds_tell_the_share_of_each() -> None:
    """Two rounds of ten minutes are not one of twenty: raw food must have its own ten; 1200 mL are 600 a round."""
    worked = dish_of("pasta: 200 g", "{boil: pasta, in: 600 mL, for: 10 min, lid: off}")
    assert lines(worked, 2) == ["Pasta (200 g) in 600 mL water, 10 min."]
    assert lines(worked, 4) == ["Pasta (400 g) in 2 rounds, each half of it in 600 mL water, 10 min."]


def test_a_drain_names_what_was_in_its_pot() -> None:
    """The beef simmered in another pot, and the salt goes with the water."""
    worked = dish_of(
        "beef: 50 g, pasta: 100 g, salt: 5 g",
        "{simmer: beef, in: 200 mL, for: 5 min, pot: little pot}",
        "{boil: [pasta, salt], in: 1 L, for: 10 min}",
        "drain: away",
        "stir in: beef",
    )
    assert lines(worked)[2].startswith("Pasta: pour the water (about ")


@pytest.mark.parametrize(
    ("steps", "says"),
    [
        (
            ("soak: beef", "drain: into the pot", "{simmer: beef, for: 5 min}"),
            "Beef in the water drained (about 250 mL), 5 min.",
        ),
        (
            ("soak: beef", "drain: into the pot", "{simmer: beef, in: 100 mL, for: 5 min}"),
            "Beef in the water drained (about 250 mL), 5 min.",
        ),
        (("{simmer: beef, in: 400 mL, for: 5 min}", "{simmer: salt, for: 5 min}"), "Salt (1 tsp), 5 min."),
        (("{simmer: beef, in: 400 mL, for: 5 min}", "{simmer: salt, in: 100 mL, for: 5 min}"), "Salt (1 tsp), 5 min."),
        (
            ("{simmer: beef, in: 400 mL, for: 5 min}", "{simmer: salt, in: 500 mL, for: 5 min}"),
            "Salt (1 tsp) in 260 mL more water, 5 min.",
        ),  # 400 - 150 taken - 6.8 boiled off = 243; 257 -> 260 more
    ],
)
def test_water_is_told_once(steps: tuple[str, ...], says: str) -> None:
    """What stands in the pot is not told again as water to pour."""
    worked = dish_of("beef: 100 g, salt: 6 g", *steps, fails=None)
    assert lines(worked)[len(steps) - 1] == says


def test_minutes_are_rounded_up_but_not_for_seconds() -> None:
    """18.96 min of pasta at 3000 m are told as 19 and 10.4 as 11, but the 10.01 of a beach stay 10; 61 are 1 h 5."""
    told = series.minutes((18.96, 10.4, 10.01, 60, 61)).metric
    assert [one.replace(NO_BREAK, " ") for one in told] == ["19 min", "11 min", "10 min", "1 h", "1 h 5 min"]


def test_small_drains_in_spoons() -> None:
    """5 g of beef get 20 mL, take 7.5 -> 8 and leave 12: less than a tablespoon, told in teaspoons."""
    worked = dish_of("beef: 5 g", "soak: beef", "drain: away")
    assert lines(worked, system=US)[1] == "Beef: pour the water (about 2½ tsp) away."  # 12 mL / 4.93
    assert lines(dish_of("beef: 20 g", "soak: beef", "drain: away"), system=US)[1].endswith("(about 3 tbsp) away.")


def test_field_lines_name_packs() -> None:
    """In the booklet a whole pack has its number; what comes out of a mixed pack says which."""
    worked = dish_of(
        "beef: 50 g, onion: 10 g, rice: 50 g",
        "soak: beef",
        "drain: away",
        "moisten: [rice, onion]",
        more=packs_of("[[beef, onion], [rice]]"),
    )
    assert lines(worked, field=True)[0].startswith("beef (50 g, pack 1.1) in ")
    assert lines(worked, field=True)[2].startswith("pack 1.2 and onion (10 g, pack 1.1) with ")
    alone = dish_of(
        "beef: 50 g, rice: 50 g", "soak: beef", "drain: away", "moisten: rice", more=packs_of("[[beef], [rice]]")
    )
    assert lines(alone, field=True)[0].startswith("pack 1.1 in ")


def test_names_keep_their_capitals() -> None:
    """A name is set small inside a sentence, but not what is written in capitals."""
    worked = dish_of(
        "{milk powder: {take: 10 g, called: UHT milk}}, beef: 10 g",
        "soak: beef",
        "drain: away",
        "stir in: [beef, UHT milk]",
    )
    assert lines(worked)[2] == "Beef and UHT milk (10 g)."
    apart = dish_of(
        "{milk powder: {take: 10 g, called: UHT milk}}, beef: 10 g",
        "mix: UHT milk",
        "soak: beef",
        "drain: away",
        more=packs_of("[[UHT milk, beef]]"),
    )
    assert lines(apart, field=True)[0].startswith("UHT milk (10 g, pack 1")


def test_a_heater_says_that_it_only_warms() -> None:
    """One heater for each, their water in all, and the warning at the end."""
    worked = dish_of("rice: 100 g", "moisten: rice", "{warm: rice, on: ration heater, until: it is hot}")
    assert lines(worked)[1] == (
        "Rice in a ration heater for each, with 120 mL water in all, 12 min, until it is hot. "
        "It warms, it does not cook."
    )


def test_pour_over_begins_with_its_water() -> None:
    """A sentence opens with a capital only at its start."""
    worked = dish_of("rice: 50 g", "{pour over: rice, with: 100 mL boiling water, for: 8 min}")
    assert lines(worked) == ["100 mL boiling water over rice (50 g); stir, close, wait 8 min."]


@pytest.mark.parametrize(
    ("eggs", "fresh"),
    [("4 eggs", "4 eggs"), ("worth 65 g fresh", "1½ eggs (1.3)"), ("worth 12 g fresh", "12 g")],
)
def test_fresh_worth_is_counted_only_where_halves_tell_it(eggs: str, fresh: str) -> None:
    """A quarter of an egg is told by its weight, not as half an egg."""
    row = sheet_of(dish_of(f"egg powder: {eggs}", "mix: egg powder")).parts[0]
    assert row.fresh.metric[0].replace(NO_BREAK, " ") == fresh


def test_a_dish_without_water_says_nought_in_both_systems() -> None:
    """Nothing to carry is a figure too."""
    total = sheet_of(dish_of("salt: 1 g", "Lick the salt.")).water_total
    assert (total.metric[0], total.us[0]) == (f"0{NO_BREAK}mL", f"0{NO_BREAK}fl{NARROW}oz")


def test_fluid_ounces_are_rounded_up() -> None:
    """240 mL are 8.1 fl oz: nine are carried, eight are in the food and what the ninth adds is spare."""
    sheet = sheet_of(dish_of("milk powder: 27 g", "mix: milk powder"))
    assert sheet.water_total.us[0] == f"9{NO_BREAK}fl{NARROW}oz"  # 27 x 9 = 243 -> 240 mL
    assert [row.figure.us[0] for row in sheet.waters] == [f"8{NO_BREAK}fl{NARROW}oz", f"1{NO_BREAK}fl{NARROW}oz"]


def test_a_pack_with_one_raw_part_is_raw() -> None:
    """RAW egg beside rice makes the whole pack RAW, and the pack around it."""
    worked = dish_of(
        "egg powder: 20 g, rice: 20 g, beef: 20 g",
        "{mix: [egg powder, rice], with: 90 mL cold water}",
        "{fry: [egg powder, rice, beef], for: 9 min}",
        more=packs_of("[[egg powder, rice], [beef]]"),
    )
    (outer,) = sheet_of(worked).packs
    assert outer.raw
    assert [pack.raw for pack in outer.inside] == [True, False]


def test_the_booklet_says_when_to_start_the_soak() -> None:
    """The pasta boils first (16.5 min), then the beef soaks (13.5): start it 14 minutes before eating, not 30."""
    series_ = series_of(dish_of("beef: 100 g, pasta: 100 g", "{boil: pasta, in: 1 L, for: 10 min}", "soak: beef"), (2,))
    opening = field_opening(series_, dish_sheet(series_, ()), (), METRIC)
    told = {figure.label.replace(NO_BREAK, " "): figure.figure.replace(NO_BREAK, " ") for figure in opening.figures}
    assert told["From start to plate"] == "31 min"  # 6.3 + 0.26 for the pasta + 10 + 13.5 = 30.04
    assert told["Soak, 14 min before eating"] == "10 min"


def test_minutes_in_all_are_told_to_the_minute() -> None:
    """66 minutes are 1 h 6 min and 1:06 on the same page."""
    sheet = sheet_of(dish_of("salt: 1 g", "wait: 66 min", "Lick the salt."))
    assert sheet.clock[0].figure.metric[0] == f"1{NO_BREAK}h{NO_BREAK}6{NO_BREAK}min"
    assert next(one for one in sheet.strip if one.key == "clock").figure.metric[0] == "1:06"


def test_printed_starts_wait_for_the_soak() -> None:
    """A soak that is over after 13.5 min is drained at minute 14, not 13."""
    rows = sheet_of(dish_of("beef: 100 g", "soak: beef", "drain: away")).steps
    assert [row.minute.metric[0] for row in rows] == ["0", "14"]


def test_origins_tell_the_share_of_the_water_given_back() -> None:
    """1 : 1 by volume of a powder of 0.338 g/mL gives 2.96 of 3.08: within 15 %, no note; beef gives 100 % of 1.5.

    Of onions 30 of 78 mL come back: 300 / 782 = 38 %, which is a note with both figures.
    """
    components = components_of().components
    (egg,) = component_origins(components["egg-powder"])
    assert egg.replace(NO_BREAK, " ") == "Egg powder: by the food table, 245 g dry from 1 kg."
    assert component_origins(components["onion"])[1].replace(NO_BREAK, " ") == (
        "Onion: its water gives back 38 % of what was lost in drying (30 mL of 78 mL for 10 g dry)."
    )
    assert len(component_origins(components["beef"])) == 1
