"""What trips take from the larder: in the order of their start, first to expire first, in other forms where allowed.

Two jars of egg of 110 and 111 g were dried on 13 March; freeze-dried food without a rule of the household's keeps 121
days, until 12 July, and 14 days once opened.
"""

from datetime import date

import pytest
from tests.sums.store_of import EGG, RICE, run_of
from tests.sums.trip_of import Travelled, dish_text, one_stop, trip_of, trip_text, trips_of

from packlarder.faults import Severity
from packlarder.measure import NO_BREAK
from packlarder.reckon.trip.stores import Source, Stores
from packlarder.sheets.trip_data import trip_data

EGGS = run_of(EGG)
THREE = "".join(one_stop("supper: omelette", day=day) for day in (1, 2, 3))
"""Three omelettes of 50 g of egg powder, on three days."""
IN_THE_POT = "bring back: {in the pot: 100 g, takes: 300 mL, wait: 20 min}"
ONION = f"was: onion, raw\nwent in: raw\ncontains: []\nform: pieces\n{IN_THE_POT}\n"
FORMS = {
    "flakes": f"{ONION}dried: air-dried\nyields: {{from: 1 kg, gives: 125 g}}\n",
    "rings": f"{ONION}dried: freeze-dried\nyields: {{from: 1 kg, gives: 110 g}}\n",
}
"""One gram of flakes stands for 8 g of onion, one of rings for 1000 / 110 = 9.09 g."""
SOUP = dish_text(
    "flakes: {take: 20 g, instead: rings}", "pasta: 200 g", steps="{boil: [flakes, pasta], in: 1 L, for: 20 min}"
)


def rings(holds_g: float) -> str:
    """Write a run of onion rings, a kilogram fresh, of which a jar was filled."""
    jar = f"put in: [{{in: jar, holds: {holds_g} g}}]"
    return run_of(f"rings: {{fresh: 1 kg, trays: 1, dry: 110 g, tested: no lighter, {jar}}}")


def flakes(holds_g: int) -> str:
    """Write a run of onion flakes, a kilogram fresh, of which a jar was filled; air-dried, they keep 91 days."""
    jar = f"put in: [{{in: jar, holds: {holds_g} g}}]"
    batch = f"flakes: {{fresh: 1 kg, trays: 2, dry: 125 g, tested: no lighter, {jar}}}"
    return run_of(batch, dryer="rack", took="10 h", loaded="2027-05-20 08:00")


def soup(*runs: str, people: str = "[Ada, Bo]", **forms: str) -> Travelled:
    """Work out a supper of soup."""
    dishes = {"soup": SOUP}
    return trip_of(one_stop("supper: soup"), people=people, dishes=dishes, runs=runs, components={**FORMS, **forms})


def drawn(found: Travelled, component: str, trip: str = "trip") -> list[tuple[str, float]]:
    """Give what a trip takes of a component from each container."""
    return [(str(one.mark), one.grams) for one in found.fill(component, trip).drawn]


def test_one_jar_is_emptied_before_the_next() -> None:
    """3 * 50 g = 150 g: 110 from the first jar and 40 from the second."""
    found = trip_of(THREE, runs=(EGGS,))
    fill = found.fill("egg-powder")
    assert drawn(found, "egg-powder") == [("run/a1", 110), ("run/a2", 40)]
    assert (fill.need_g, fill.short_g) == (150, 0)
    assert fill.into == (("1.1", 50.0), ("2.1", 50.0), ("3.1", 50.0))
    assert {one.use_by for one in fill.drawn} == {date(2027, 7, 12)}
    assert (fill.first_on, fill.last_on) == (date(2027, 6, 26), date(2027, 6, 28))


def test_what_is_left_is_short() -> None:
    """Five omelettes want 250 g, two jars hold 221 g: 29 g lack."""
    found = trip_of(THREE + one_stop("supper: omelette", "sweet: omelette", day=4), runs=(EGGS,))
    assert drawn(found, "egg-powder") == [("run/a1", 110), ("run/a2", 111)]
    assert found.fill("egg-powder").short_g == found.lacking("egg-powder").short_g == 29


def test_trips_take_in_the_order_of_their_start() -> None:
    """The trip of June takes 150 of 221 g whatever its name, the one of July the 71 g that are left: 79 g lack."""
    trips = {"a-july": trip_text(THREE, starts="2027-07-03"), "b-june": trip_text(THREE)}
    found = trips_of(trips, runs=(EGGS,))
    assert drawn(found, "egg-powder", "b-june") == [("run/a1", 110), ("run/a2", 40)]
    assert drawn(found, "egg-powder", "a-july") == [("run/a2", 71)]
    assert found.fill("egg-powder", "a-july").short_g == 79


def test_a_trip_that_is_gone_takes_nothing() -> None:
    """What it took was drawn long ago: the next trip finds both jars as they stand."""
    gone = trip_text(THREE, starts="2027-05-01", more="stands: gone")
    found = trips_of({"gone": gone, "trip": trip_text(THREE)}, runs=(EGGS,))
    assert found.trips["gone"].stores == Stores()
    assert found.trips["gone"].packs
    assert drawn(found, "egg-powder") == [("run/a1", 110), ("run/a2", 40)]


def test_a_jar_that_a_trip_opens_keeps_shorter_for_the_next() -> None:
    """Packs of the first trip are filled on 25 June; what is left then in run/a2 keeps 14 days more, until 9 July.

    The second trip begins on 10 July, and finds nothing; sealed the jar would have kept until the 12th.
    """
    trips = {"trip": trip_text(THREE), "later": trip_text(one_stop("supper: omelette"), starts="2027-07-10")}
    found = trips_of(trips, runs=(EGGS,), fails=True)
    assert drawn(found, "egg-powder", "later") == []
    (fault,) = found.faults
    assert (fault.code, fault.file, fault.severity) == ("expires-before-eaten", "trips/later.yaml", Severity.WARNING)
    assert "in run/a2 keep until 2027-07-09, and are wanted for 2027-07-10" in fault.message


def test_nothing_is_eaten_past_its_day() -> None:
    """Rice keeps until 12 July. On 11 July half of it is eaten, on the 13th it is short, with a word why."""
    stops = one_stop("lunch: rice") + one_stop("lunch: rice", day=3)
    found = trip_of(stops, starts="2027-07-11", runs=(run_of(RICE),), fails=True)
    fill = found.fill("rice")
    assert (drawn(found, "rice"), fill.short_g) == ([("run/a1", 160)], 160)
    (fault,) = found.faults
    assert (fault.code, fault.marked) == ("expires-before-eaten", "rice")
    assert (
        fault.message.replace(NO_BREAK, " ")
        == "160 g of rice in run/a1 keep until 2027-07-12, and are wanted for 2027-07-13"
    )
    assert (
        fault.help.replace(NO_BREAK, " ")
        == "eat that at home while it keeps; for the trip 160 g of rice are still to be dried"
    )


def test_jars_that_expire_are_told_once_with_what_they_hold() -> None:
    """Two jars of rice, 160 g each, are past their day for both lunches: one fault, at the first of the lines."""
    twice = RICE.replace("holds: 320 g}", "holds: 160 g}, {in: pouch, holds: 160 g}")
    assert twice != RICE
    stops = one_stop("lunch: rice", "supper: rice")
    (fault,) = trip_of(stops, starts="2027-07-13", runs=(run_of(twice),), fails=True).faults
    assert fault.message.replace(NO_BREAK, " ") == (
        "320 g of rice in run/a1, run/a2 keep until 2027-07-12 at the latest, and are wanted for 2027-07-13"
    )
    assert len(fault.also) == 1


@pytest.mark.parametrize("along", [True, False])
def test_no_form_stands_in_that_wants_hot_water_without_a_stove(along: bool) -> None:
    """Flakes are soaked cold, the rings that stand in the larder hot: without a stove they do not stand in."""
    soak = "bring back: {{soak: 100 g, with: 400 mL {} water, wait: 10 min}}"
    forms = {
        name: FORMS[name].replace(IN_THE_POT, soak.format(warm))
        for name, warm in (("flakes", "cold"), ("rings", "hot"))
    }
    rings = run_of("rings: {fresh: 1 kg, trays: 1, dry: 110 g, tested: no lighter, put in: [{in: jar, holds: 110 g}]}")
    salad = dish_text("flakes: {take: 20 g, instead: rings}", steps="soak: flakes")
    text = trip_text(one_stop("lunch: salad"))
    text = text if along else text.replace("stoves: [burner]\npots: [pot, pan]\n", "")
    found = trips_of({"trip": text}, dishes={"salad": salad}, components=forms, runs=(rings,))
    assert bool(found.trip.meals[0].instead) is along
    assert bool(found.trip.stores.shortfalls) is not along


def test_a_jar_whose_day_is_past_is_not_to_be_eaten_unseen() -> None:
    """Of today, 13 July, the rice is a day too old."""
    found = trip_of(
        one_stop("lunch: rice"), starts="2027-08-13", on=date(2027, 7, 13), runs=(run_of(RICE),), fails=True
    )
    (fault,) = found.faults
    assert fault.help.startswith("its day is past, so look at it before anybody eats it; for the trip")


def test_first_to_expire_first_though_it_was_opened_later() -> None:
    """A pouch of rice of May stands sealed, one of March is nearer its day: that one is eaten first."""
    may = run_of(RICE, loaded="2027-05-01 08:30")
    found = trip_of(one_stop("lunch: rice", "supper: rice"), runs=(may, run_of(RICE)))
    assert drawn(found, "rice") == [("run-2/a1", 320)]


def test_an_opened_jar_goes_before_one_that_has_become_later() -> None:
    """Eggs of run keep until 30 June, those of run-2 until 12 July; once a trip opened them, 4 days: 29 June.

    The first trip eats on 1 July, from run-2, packed on 25 June. For the second one that is the first to expire.
    """
    runs = run_of(EGG, loaded="2027-02-27 20:30"), EGGS
    trips = {
        "trip": trip_text(one_stop("supper: omelette", day=6)),
        "later": trip_text(one_stop("supper: omelette"), starts="2027-06-27"),
    }
    found = trips_of(trips, runs=runs, larder="keeping: [{kept: opened, for: 4 days}]", fails=None)
    assert drawn(found, "egg-powder") == [("run-2/a1", 50)]
    assert drawn(found, "egg-powder", "later") == [("run-2/a1", 50)]


def test_what_was_not_dry_is_left_alone() -> None:
    """260 g of egg from 900 g hold 17 % of water: nobody takes that along."""
    wet = run_of("egg powder: {fresh: 900 g, trays: 2, dry: 260 g, put in: [{in: jar, holds: 130 g}]}")
    found = trip_of(one_stop("supper: omelette"), runs=(wet,))
    assert (drawn(found, "egg-powder"), found.fill("egg-powder").short_g) == ([], 50)


def test_another_form_stands_in() -> None:
    """20 g of flakes stand for 20 * 8 = 160 g of onion, and so do 160 * 110 / 1000 = 17.6 g of rings, printed 18 g."""
    found = soup(rings(110))
    (meal,) = found.trip.meals
    assert {index: other.id for index, other in meal.instead.items()} == {0: "rings"}
    [told] = trip_data(found.trip, (), edition="7f3a9c", day="2027-06-01")["stops"][0]["meals"][0]["instead"]
    assert told == {"component": "rings", "raw": False, "stands_in_for": meal.plan.parts[0].called}
    assert told["stands_in_for"] == "Flakes"
    assert meal.sums.parts[0].dry_g == pytest.approx(17.6)
    assert meal.sums.parts[0].fresh_g == pytest.approx(160)
    assert drawn(found, "rings") == [("run/a1", 18)]
    assert [(item.called, item.grams) for pack in found.trip.packs for item in pack.items] == [
        ("Rings", 18),
        ("Pasta", 200),
    ]
    assert [one.component.id for one in found.trip.stores.shortfalls] == ["pasta"]


def test_a_dish_with_another_form_is_worked_out_as_if_it_was_written_so() -> None:
    """Water, clock and fuel are those of a dish that names 17.6 g of rings itself."""
    written = dish_text("rings: 17.6 g", "pasta: 200 g", steps="{boil: [rings, pasta], in: 1 L, for: 20 min}")
    (other,) = trip_of(one_stop("supper: soup"), dishes={"soup": written}, components=FORMS).trip.meals
    (meal,) = soup(rings(110)).trip.meals
    assert meal.sums.water == other.sums.water
    assert (meal.sums.clock, meal.sums.weight_g) == (other.sums.clock, other.sums.weight_g)
    assert meal.sums.heat.fuel_g == other.sums.heat.fuel_g


def test_the_main_form_is_taken_where_it_covers_the_part() -> None:
    """20 g of flakes are there: rings stay where they are."""
    found = soup(flakes(20), rings(110))
    assert (drawn(found, "flakes"), found.trip.meals[0].instead) == ([("run/a1", 20)], {})


def test_another_form_covers_the_whole_of_a_part_or_nothing() -> None:
    """Of 20 g of flakes 15 are there: with 18 g of rings those are taken; with 17.5 g the 15 are, and 5 g lack."""
    found = soup(flakes(15), rings(18))
    assert drawn(found, "rings") == [("run-2/a1", 18)]
    found = soup(flakes(15), rings(17.5))
    assert (drawn(found, "flakes"), found.fill("flakes").short_g) == ([("run/a1", 15)], 5)
    assert not found.trip.meals[0].instead


def test_another_form_is_not_taken_from_under_another_part() -> None:
    """The dish wants 10 g of rings itself: of 20 g only 10 are free for the flakes, which want 18."""
    parts = "flakes: {take: 20 g, instead: rings}", "rings: 10 g"
    dishes = {"soup": dish_text(*parts, steps="{boil: [flakes, rings], in: 1 L, for: 20 min}")}
    found = trip_of(one_stop("supper: soup"), dishes=dishes, runs=(rings(20),), components=FORMS)
    assert not found.trip.meals[0].instead
    assert (drawn(found, "rings"), found.fill("flakes").short_g) == ([("run/a1", 10)], 20)


def test_another_form_is_cooked_on_what_comes_along() -> None:
    """The little pot stays at home, for this dish as for any other."""
    (meal,) = soup(rings(110)).trip.meals
    assert meal.instead
    assert set(meal.plan.pots) == {"pot", "pan"}


@pytest.mark.parametrize("key", ["contains: [celery]", "may contain: [celery]"])
def test_no_form_stands_in_that_brings_what_somebody_avoids(key: str) -> None:
    """Bo avoids celery, and flakes have none: rings with celery stay at home."""
    form = {"rings": FORMS["rings"].replace("contains: []", f"contains: []\n{key}" if "may" in key else key)}
    found = soup(rings(110), people="[Ada, Bo: {avoids: celery}]", **form)
    assert not found.trip.meals[0].instead
    assert soup(rings(110), **form).trip.meals[0].instead


def test_nothing_raw_stands_in_unasked() -> None:
    """Beef that went in raw is no stand-in, though the dish names it: somebody has to look at the dish first."""
    raw = "was: beef, ground, 93% lean, raw\nwent in: raw\ncontains: []\ndried: freeze-dried\nform: crumbles\n"
    stew = dish_text(
        "beef: {take: 100 g, instead: raw beef}", steps="soak: beef; {boil: beef, in: 300 mL, for: 10 min}"
    )
    jar = "raw beef: {fresh: 1 kg, trays: 1, dry: 290 g, tested: no lighter, put in: [{in: jar, holds: 290 g}]}"
    found = trip_of(one_stop("supper: stew"), dishes={"stew": stew}, components={"raw-beef": raw}, runs=(run_of(jar),))
    assert (found.trip.meals[0].instead, found.fill("beef").short_g) == ({}, 100)


def test_a_mix_is_taken_from_the_larder_first() -> None:
    """Pancakes want 200 g of batter, 80 g stand mixed; 120 g are mixed of 30 g of egg, 30 g of milk powder and flour.

    The egg comes from its jar, milk powder is bought: 30 g, all of it for the mix.
    """
    mixed = run_of("batter: {dry: 80 g, put in: [{in: jar, holds: 80 g}]}", dryer="", took="", loaded="2027-05-20")
    found = trip_of(one_stop("supper: pancakes"), runs=(EGGS, mixed))
    batter, egg = found.fill("batter"), found.fill("egg-powder")
    assert (drawn(found, "batter"), batter.short_g) == ([("run-2/a1", 80)], 120)
    assert (drawn(found, "egg-powder"), egg.for_mixes_g, egg.into) == ([("run/a1", 30)], 30, ())
    lacking = {one.component.id: (one.source, one.short_g, one.for_mixes_g) for one in found.trip.stores.shortfalls}
    assert lacking == {"batter": (Source.MIX, 120, 0), "milk-powder": (Source.BUY, 30, 30)}


def test_a_pack_keeps_as_long_as_packs_do() -> None:
    """Filled on 25 June, home-dried food keeps 14 days in a pack: until 9 July, the fourteenth day of the trip.

    The stew of the fifteenth is an error at its line; pasta was bought dry, and its own pack has its own day.
    """
    stops = one_stop("supper: stew", day=14) + one_stop("lunch: pasta", "supper: stew", day=15)
    found = trip_of(stops, fails=True)
    (fault,) = found.faults
    assert (fault.code, fault.line, fault.severity) == ("expires-before-eaten", 9, Severity.ERROR)
    assert fault.message == "pack 3.1 with beef, onion keeps until 2027-07-09, and is eaten on 2027-07-10"
    assert fault.help == (
        "eat it earlier on the way, or buy it there (`to buy`); it is taken to keep 2 weeks in a trip pack: days to"
        " weeks in damp air; if you know that yours keeps longer, write `- {kept: trip pack, for: 3 weeks}` under"
        " `larder: keeping:` in book.yaml"
    )
    rule = "keeping: [{kept: trip pack, for: 3 weeks}]"
    assert trip_of(stops, larder=rule).codes == []


def test_what_keeps_alike_in_packs_is_told_once() -> None:
    """Three meals of the fifteenth and sixteenth day, in a row of packs: one fault, and the other lines beside it."""
    stops = one_stop("lunch: rice", "supper: rice", "lunch: rice", day=15)
    found = trip_of(stops, fails=True)
    (fault,) = found.faults
    assert fault.message == "packs 1.1, 2.1, 3.1 with rice keep until 2027-07-09, and are eaten from 2027-07-10 on"
    assert "write `- {what: rice, kept: trip pack, for: 3 weeks}`" in fault.help
    assert len(fault.also) == 2


def test_the_households_rule_for_packs_holds() -> None:
    """They keep packs three days, whatever is in them: until 28 June. On the 29th pasta is past that: a warning."""
    stops = one_stop("supper: stew", day=3) + one_stop("supper: pasta", day=4)
    found = trip_of(stops, larder="keeping: [{kept: trip pack, for: 3 days}]", fails=True)
    (fault,) = found.faults
    assert (fault.code, fault.marked, fault.severity) == ("expires-before-eaten", "pasta", Severity.WARNING)


def test_a_fault_names_all_packs_of_its_line() -> None:
    """Raisins of days 4 and 5 are too old by the same rule, and stand in one line of the trip."""
    stops = one_stop("supper: pasta") + one_stop(day=5)
    rules = "keeping: [{what: raisins, kept: trip pack, for: 3 days}]"
    (fault,) = trip_of(stops, more="on the move: [raisins: 20 g each]", larder=rules, fails=True).faults
    assert fault.message == "packs M4, M5 with raisins keep until 2027-06-28, and are eaten from 2027-06-29 on"


def test_a_tub_keeps_as_an_opened_jar() -> None:
    """Salt in its tub is no pack; with a rule of two days for opened jars it is too old on 28 June."""
    stops = one_stop("supper: stew", day=3)
    rules = "keeping: [{kept: trip pack, for: 2 weeks}, {what: salt, kept: opened, for: 2 days}]"
    (fault,) = trip_of(stops, larder=rules, fails=True).faults
    assert fault.message == "pack T1 with salt keeps until 2027-06-27, and is eaten on 2027-06-28"
