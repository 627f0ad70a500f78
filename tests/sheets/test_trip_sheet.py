"""The sheet of a trip: what is printed adds up, in both systems, and says what its records promise."""

import re
from collections.abc import Iterable
from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.site.sample_trip import ID, book_with_trip, checked, sums, trip

from packlarder.book.trip import Stands
from packlarder.reckon.trip.journey import LegWater
from packlarder.sheets.printed import NOTHING, Printed, System, plain
from packlarder.sheets.trip import dates, trip_sheet
from packlarder.sheets.trip_figures import fuel, in_quarts, in_whole_grams, weights
from packlarder.sheets.trip_load import fed_table
from packlarder.sheets.trip_water import leg_rows
from packlarder.sheets.trips import book_trips

UNITS = {"mL": 1, "L": 1000, "fl\u202foz": 1, "qt": 32, "g": 1, "kg": 1000}


def read(text: str) -> float:
    """Read a printed figure back: 1.24 L as 1240, 3 qt 12 fl oz as 108, nothing as 0."""
    found = re.findall(r"([\d.]+)\u00a0(fl\u202foz|mL|L|qt|kg|g)", text)
    assert found or text == NOTHING
    return round(sum(float(number) * UNITS[unit] for number, unit in found), 3)


def adds_up(pieces: Iterable[Printed], total: Printed, *, us: bool = True) -> None:
    """Hold what pieces print against what their total prints."""
    pieces = list(pieces)
    for system in (System.METRIC, System.US) if us else (System.METRIC,):
        assert sum(read(piece.text(system, 0)) for piece in pieces) == pytest.approx(read(total.text(system, 0)))


def test_water_adds_up_leg_by_leg() -> None:
    """Pieces add up to what is carried, in millilitres and in ounces."""
    for leg in trip().legs:
        adds_up((piece.figure for piece in leg.pieces), leg.total)
    assert [read(leg.total.metric[0]) for leg in trip().legs] == [leg.carry_ml for leg in sums().journey.legs]


def test_ounces_are_enough_for_cups() -> None:
    """Dishes are poured in cups and rounded up one by one, so it is a little more than the litres of the leg.

    The leg serves the skerry, and the day in reserve.
    """
    first, second, *_, reserve = (day.meals for day in trip().menu)
    dishes = [*[meal for meal in first + second if meal.place == "Gull skerry"], *reserve]
    ounces = sum(read(meal.water.us[0]) for meal in dishes)
    millilitres = sum(read(meal.water.metric[0]) for meal in dishes)
    carried_ml = sums().journey.legs[0].carry_ml
    assert ounces > millilitres / 29.5735
    assert read(trip().legs[0].total.us[0]) == pytest.approx((carried_ml - millilitres) / 29.5735 + ounces, abs=1)


@settings(deadline=None)  # a first example does the sums of the whole sample
@given(st.lists(st.integers(0, 30_000), min_size=10, max_size=10))
def test_any_leg_adds_up(pieces: list[int]) -> None:
    """Whatever a leg takes, rounded up to 10 mL by its margin, its pieces print what adds up to its total."""
    water = LegWater(*(*pieces, -sum(pieces) % 10))
    one = sums()
    leg = replace(one.journey.legs[0], water=water)
    odd = replace(one, journey=replace(one.journey, legs=(leg,)))
    [row] = leg_rows(odd, checked().book.household)
    adds_up((piece.figure for piece in row.pieces), row.total)
    assert read(row.total.metric[0]) == sum(water)
    assert read(row.total.us[0]) * 29.5735295625 >= sum(water) - 0.1


def test_packs_add_up_to_days_and_days_to_the_whole() -> None:
    """To the gram: items to packs, packs to days, days to all food."""
    for day in trip().packing:
        for pack in day.packs:
            adds_up((item.weight for item in pack.items), pack.weight, us=False)
        adds_up((pack.weight for pack in day.packs), day.weight, us=False)
    adds_up((day.weight for day in trip().packing), trip().food_weight, us=False)
    adds_up((one.weight for one in trip().bearing), trip().food_weight, us=False)


def test_fills_add_up_both_ways() -> None:
    """What comes from jars, shops and nowhere yet is what is needed, and so is what goes into packs and mixes."""
    for fill in trip().fills:
        adds_up((*(jar.weight for jar in fill.jars), fill.on_the_way, fill.short), fill.need, us=False)
        adds_up((*(pack.weight for pack in fill.packs), fill.for_mixes), fill.need, us=False)
    into_packs_g = sum(read(fill.need.metric[0]) - read(fill.for_mixes.metric[0]) for fill in trip().fills)
    assert into_packs_g == pytest.approx(read(trip().food_weight.metric[0]))


@given(st.lists(st.floats(0.05, 5_000), min_size=1, max_size=8))
def test_parts_of_any_weight_add_up(parts: list[float]) -> None:
    """Parts that no scale shows are printed so that they add up to the printed total."""
    total = sum(parts)
    printed = [read(figure.metric[0]) for figure in weights(total, parts)]
    assert sum(printed) == pytest.approx(read(in_whole_grams(total)))


def test_fuel_adds_up() -> None:
    """Stops and margin are the need, snow takes the most of it, and what is taken holds it; alcohol is poured."""
    gas, spirit = trip().fuels
    adds_up((*(stop.weight for stop in gas.stops), gas.margin), gas.need, us=False)
    for stop in gas.stops:
        adds_up((stop.cooking, stop.treating, stop.melting), stop.weight, us=False)
    assert max(gas.stops, key=lambda stop: read(stop.weight.metric[0])).melting.metric[0] != NOTHING
    assert spirit.taken == ()


def test_heavy_food_is_told_to_the_gram() -> None:
    """12,345 g are 12.345 kg, so that a long trip's packs add up too; half grams are told below that."""
    assert in_whole_grams(12_345) == "12.345\u00a0kg"
    assert in_whole_grams(5_386.5) == "5386.5\u00a0g"
    assert in_whole_grams(12_345.5) == "12.3455\u00a0kg"


def test_waters_are_told_in_quarts_from_two_on() -> None:
    """63 fl oz stay ounces; 64 are two quarts, 110 three quarts and 14 ounces."""
    assert [in_quarts(ounces).replace("\u00a0", " ").replace("\u202f", " ") for ounces in (63, 64, 110)] == [
        "63 fl oz",
        "2 qt",
        "3 qt 14 fl oz",
    ]


def test_the_plan_goes_across_the_months_end() -> None:
    """Days stand in order from June into July; what takes whole days says its last one, the rest its hour."""
    days = {day.on: day.tasks for day in trip().plan}
    assert [*days][-4:] == ["Tuesday 29 June", "Wednesday 30 June", "Thursday 1 July", "Friday 2 July"]
    [conditioning] = [task for task in days["Monday 21 June"] if task.kind == "Condition"]
    assert (conditioning.clock, conditioning.until) == ("", "until Thursday 1 July")
    [drying] = days["Wednesday 30 June"]
    assert (drying.clock, drying.until, drying.load) == ("8:00", "until Thursday 1 July, 20:00", "load 3")
    [weighing] = [task for task in days["Thursday 1 July"] if task.load]
    assert (weighing.clock, weighing.until) == ("20:00", "until 22:00")


def test_what_each_eats_stands_beside_the_range() -> None:
    """A day of 2,220 kcal is below 2,250, of 2,660 within the range; of what Pim eats not all is known."""
    known = sums()
    kcal = {"Runa": 2220, "Eskil": 2660, "Tove": 2220, "Pim": 1330}
    fed = tuple(
        replace(one, energy_kcal=kcal[one.name], complete=one.name != "Pim")
        for one in known.journey.fed
        if one.day <= known.last_day
    )
    sheet = trip_sheet(replace(known, journey=replace(known.journey, fed=fed)), (), checked().book.household).fed
    assert sheet is not None
    told = [(row.name, row.energy.replace("\u00a0", " "), row.beside) for row in sheet.rows]
    assert told == [
        ("Runa", "2220 kcal", "below"),
        ("Eskil", "2660 kcal", "within"),
        ("Tove", "2220 kcal", "below"),
        ("Pim", "at least 1330 kcal", ""),
    ]
    assert [day for day, _ in sheet.by_day] == ["Day 1", "Day 2", "Day 3", "Day 4"]


def test_protein_and_salt_stand_beside_their_ranges_too() -> None:
    """55 g x 4 kcal / 2,000 are 11 % of 10 to 35; 30 g are 6 %; 6 g of salt are more than 5. Unknown is not low."""
    one = sums()
    days = [replace(fed, energy_kcal=2000.0) for fed in one.journey.fed]
    for protein_g, salt_g, complete, told in (
        (55.0, 4.0, True, ("below", "within", "within")),
        (30.0, 6.0, True, ("below", "below", "above")),
        (55.0, 6.0, False, ("", "", "above")),
    ):
        changed = tuple(replace(fed, protein_g=protein_g, salt_g=salt_g, complete=complete) for fed in days)
        table = fed_table(replace(one, journey=replace(one.journey, fed=changed)))
        assert table is not None
        assert {(row.beside, row.protein_beside, row.salt_beside) for row in table.rows} == {told}


def test_fuel_is_never_less_in_ounces() -> None:
    """939 g are 33.12 oz: 2 lb 1½ oz, not 2 lb 1."""
    assert fuel(939).us == ("2\u00a0lb\u00a01½\u00a0oz",)
    assert fuel(939).metric == ("939\u00a0g",)


def test_the_head_of_the_page_has_weights_in_few_signs() -> None:
    """What a trip's food weighs to the gram stands in its tables; at the head it is told to 0.1 kg."""
    [food] = [fact for fact in trip().strip if fact.label == "Food"]
    assert food.metric == f"{sums().grams / 1000:.1f}\u00a0kg"


def test_a_leg_says_what_is_done_with_its_water() -> None:
    """Water from home is fit, lake water waits, snow is boiled; what two cans and four bottles lack is told."""
    home, lake, snow = trip().legs
    assert plain(home.treated, System.METRIC, 0) == ""
    for leg, way in ((lake, "chlorinate it, and wait 30\u00a0min"), (snow, "boil it for 3\u00a0min")):
        assert plain(leg.treated, System.METRIC, 0) == f"{leg.total.metric[0]} must be made fit to drink: {way}."
    lacks = [(leg.carry_ml - 24_000) / 1000 for leg in sums().journey.legs]
    told = [plain(leg.short, System.METRIC, 0) for leg in (home, lake, snow)]
    assert told == [f"The containers lack {litres:.2f}\u00a0L." if litres > 0 else "" for litres in lacks]
    assert [leg.heaviest for leg in trip().legs] == [True, False, False]


def test_days_are_told_with_the_year_once() -> None:
    """Unless a trip goes over the turn of the year."""
    assert dates(date(2027, 7, 3), date(2027, 7, 6)) == "3 July to 6 July 2027"
    assert dates(date(2027, 12, 30), date(2028, 1, 2)) == "30 December 2027 to 2 January 2028"
    assert dates(date(2027, 7, 3), date(2027, 7, 3)) == "3 July 2027"


def test_a_trip_without_journey_and_packs_still_has_a_menu() -> None:
    """What was not worked out is left out, not shown as nought."""
    bare = replace(
        sums(), packs=(), journey=replace(sums().journey, legs=(), fuels=(), fed=(), days=(), clock=(), bearing=())
    )
    sheet = trip_sheet(bare, (), checked().book.household)
    assert [fact.label for fact in sheet.strip] == ["Days", "People"]
    assert sheet.fed is None
    assert sheet.menu[0].meals[0].start_at == ""


def test_the_next_trip_is_the_first_that_has_not_ended() -> None:
    """On its last day it is still the next; the day after there is none."""
    for on, following in ((date(2027, 7, 6), ID), (date(2027, 7, 7), None)):
        index = book_trips(book_with_trip(), edition="0", on=on).index
        assert (None if index.next is None else index.next.link.id) == following


def test_a_trip_that_is_gone_has_its_page_alone() -> None:
    """Nobody packs for it any more: no data, no booklet, no labels."""
    checked = book_with_trip()
    one = checked.trips[ID]
    gone = replace(one.sums, model=one.sums.model.model_copy(update={"stands": Stands.GONE}))
    for worked, planned in ((one.sums, [ID]), (gone, [])):
        trips = book_trips(replace(checked, trips={ID: replace(one, sums=worked)}), edition="0", on=date(2027, 6, 1))
        assert list(trips.sheets) == [ID]
        assert [list(made) for made in (trips.data, trips.booklets, trips.labels)] == [planned] * 3
