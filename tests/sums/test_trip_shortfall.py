"""What the larder lacks, and the way back from it: dry, loaded, bought, trays, loads.

The freezer takes five trays of 1 kg, the rack eight of 500 g. One gram of dry beef stands for 1000 / 400 = 2.5 g
browned; of boiled rice for 1000 / 325 = 3.077 g.
"""

from datetime import date

from tests.sums.store_of import STORE, drawn_on, run_of
from tests.sums.trip_of import ON, Travelled, dish_text, one_stop, trip_of, trip_text, trips_of

from packlarder.faults import Gap, Severity
from packlarder.reckon.trip.stores import DryingLoad, Source

BEEF = "beef: {{bought: {bought}, fresh: 1 kg, trays: {trays}, dry: 400 g, tested: no lighter, {jar}}}"
JAR = "put in: [{in: jar, holds: 400 g}]"
NEVER = "raw with cooked: never"


def beef_run(bought: str, trays: int = 1) -> str:
    """Write a run of beef, of which all was eaten since."""
    return run_of(BEEF.format(bought=bought, trays=trays, jar=JAR))


def supper(
    *parts: str,
    larder: str = "",
    runs: tuple[str, ...] = (),
    store: str = STORE,
    fails: bool = False,
    on: date = ON,
    **components: str,
) -> Travelled:
    """Work out one supper for two, of parts that all are boiled, from a larder that was eaten empty."""
    names = ", ".join(part.partition(":")[0] for part in parts)
    dish = dish_text(*parts, steps=f"soak: [{names}]; {{boil: [{names}], in: 2 L, for: 10 min}}")
    eaten = [
        drawn_on("2027-05-01", f"from: run{f'-{nth}' if nth > 1 else ''}/a1, took: all")
        for nth in range(1, len(runs) + 1)
    ]
    return trip_of(
        one_stop("supper: dinner"),
        dishes={"dinner": dish},
        larder=larder,
        runs=runs,
        draws=tuple(eaten),
        store=store,
        components=components,
        fails=fails,
        on=on,
    )


def on_trays(load: DryingLoad) -> list[tuple[str, int, float, float]]:
    """Give what lies in a load: component, trays, fresh and dry weight."""
    return [(one.component.id, one.trays, one.fresh_g, one.dry_g) for one in load.on_the_trays]


def loads(found: Travelled) -> list[list[tuple[str, int]]]:
    """Give what lies in each load, on how many trays."""
    return [[(id, trays) for id, trays, _, _ in on_trays(load)] for load in found.trip.stores.loads]


def test_the_chain_of_cooked_meat() -> None:
    """100 g dry * 2.5 = 250 g browned; nobody weighed what that took, so 250 / 0.70 = 357 g bought, up to 360 g."""
    found = supper("beef: 100 g").lacking("beef")
    assert (found.source, found.short_g, found.fresh_g, found.bought_g) == (Source.DRY, 100, 250, 360)
    assert (found.trays, found.loads) == (1, (1,))
    assert "70" in found.bought_as


def test_a_whole_meal_is_bought_as_it_was_loaded() -> None:
    """100 g of dried goulash are 250 g of goulash; what went into its pot is told by weight."""
    goulash = """\
        made of: [{"beef, ground, 93% lean, browned": 500 g}, {"onion, raw": 500 g}]
        went in: cooked
        contains: []
        dried: freeze-dried
        form: crumble
        yields: {from: 1 kg, gives: 400 g}
        bring back: {soak: 100 g, with: 400 mL hot water, wait: 10 min}
        """
    found = supper("goulash: 100 g", goulash=goulash).lacking("goulash")
    assert (found.fresh_g, found.bought_g) == (250, 250)


def test_our_own_scale_comes_before_the_figure() -> None:
    """They bought 1.4 kg for 1 kg that was loaded: 250 g * 1.4 = 350 g."""
    found = supper("beef: 100 g", runs=(beef_run("1.4 kg"),)).lacking("beef")
    assert (found.fresh_g, found.bought_g) == (250, 350)
    assert found.bought_as == "one of our batches: 1.40 g bought for 1 g loaded"


def test_of_several_batches_the_median_counts() -> None:
    """Factors 1.3, 1.4 and 2.0: the median is 1.4."""
    runs = (beef_run("2 kg"), beef_run("1.3 kg"), beef_run("1.4 kg"))
    assert supper("beef: 100 g", runs=runs).lacking("beef").bought_g == 350


def test_what_was_trimmed_is_better_than_nothing() -> None:
    """1.2 kg trimmed for 1 kg loaded: 250 * 1.2 = 300 g, and the words say what is missing."""
    run = run_of(BEEF.replace("bought", "trimmed", 1).format(bought="1.2 kg", trays=1, jar=JAR))
    found = supper("beef: 100 g", runs=(run,)).lacking("beef")
    assert found.bought_g == 300
    assert found.bought_as.endswith("what is trimmed away comes on top")


def test_what_nobody_weighed_is_bought_as_it_is_loaded() -> None:
    """Raw onion, 20 g air-dried: (1 - 0.0393) / (1 - 0.8911) = 8.82 g per g, 176 g, rounded up by 5 g to 180 g."""
    found = supper("onion: 20 g").lacking("onion")
    assert (found.fresh_g, found.bought_g, found.trays) == (180, 180, 1)
    assert found.bought_as.startswith("as it is loaded")


def test_trays_are_whole() -> None:
    """1,600 g dry * 2.5 = 4,000 g: four trays of 1 kg, exactly full; a gram more takes a fifth."""
    assert supper("beef: 1600 g").lacking("beef").trays == 4
    assert supper("beef: 1610 g").lacking("beef").trays == 5


def test_our_trays_come_before_the_dryers() -> None:
    """They laid 1 kg on two trays: 500 g each. 400 g dry * 2.5 = 1 kg takes two."""
    assert supper("beef: 400 g", runs=(beef_run("1.4 kg", trays=2),)).lacking("beef").trays == 2


def test_what_is_bought_dry() -> None:
    """Pasta is bought as it is carried: no trays, no loads, no first day."""
    found = trip_of(one_stop("supper: pasta")).lacking("pasta")
    assert (found.source, found.short_g, found.bought_g, found.fresh_g) == (Source.BUY, 200, 200, None)
    assert (found.trays, found.loads, found.start_by) == (None, (), None)


def test_ingredients_of_a_mix_are_dried_as_well() -> None:
    """200 g of batter want 50 g of egg, which lack: 50 * (1 - 0.0278) / (1 - 0.7615) = 203.8 g, up to 205 g of eggs."""
    found = trip_of(one_stop("supper: pancakes")).lacking("egg-powder")
    assert (found.source, found.short_g, found.for_mixes_g, found.fresh_g) == (Source.DRY, 50, 50, 205)


def test_more_than_a_load_is_parted() -> None:
    """2,400 g dry * 2.5 = 6 kg on six trays: five of them in one load, 5 kg or 2,000 g dry, the sixth in another."""
    found = supper("beef: 2400 g")
    assert [on_trays(load) for load in found.trip.stores.loads] == [
        [("beef", 5, 5000, 2000)],
        [("beef", 1, 1000, 400)],
    ]
    assert found.lacking("beef").loads == (1, 2)


def test_raw_and_cooked_lie_apart() -> None:
    """Beef on five trays, RAW egg on one (200 g * 4.08 = 820 g): two loads in any case, so each has its own."""
    assert sorted(loads(supper("beef: 2 kg", "egg powder: 200 g"))) == [[("beef", 5)], [("egg-powder", 1)]]


def test_raw_and_cooked_share_a_load_only_where_time_is_short() -> None:
    """Beef on three trays and RAW egg on one fit together. Packed on 25 June, with 36 h and 2 h for each load.

    Loads begin on the 23rd at 8:00, and the one before on the 21st; beef is bought two days before its load, egg one.
    On 1 June there is time, and so on the 20th, if egg has the earlier load. On the 21st both have to lie in one load,
    unless the household forbids it; then the egg comes too late.
    """
    parts = "beef: 1200 g", "egg powder: 200 g"
    for on in (date(2027, 6, 1), date(2027, 6, 20)):
        assert sorted(loads(supper(*parts, on=on))) == [[("beef", 3)], [("egg-powder", 1)]]
    late = supper(*parts, on=date(2027, 6, 21))
    assert [sorted(load) for load in loads(late)] == [[("beef", 3), ("egg-powder", 1)]]
    assert [load.raw for load in late.trip.stores.loads] == [True]
    never = supper(*parts, on=date(2027, 6, 21), larder=NEVER, fails=True)
    assert sorted(loads(never)) == [[("beef", 3)], [("egg-powder", 1)]]
    assert never.codes == ["starts-in-the-past"]


def test_no_food_is_parted_that_fits_into_one_load() -> None:
    """Rice on four trays, beef and mince on three: ten trays of five, and three loads, for each food lies in one."""
    mince = "was: beef, ground, 93% lean, browned\nwent in: cooked\ncontains: []\ndried: freeze-dried\nform: mince\n"
    more = "yields: {from: 1 kg, gives: 400 g}\nbring back: {soak: 100 g, with: 400 mL hot water, wait: 10 min}\n"
    found = supper("rice: 1300 g", "beef: 1200 g", "mince: 1200 g", mince=mince + more)
    assert sorted(loads(found)) == [[("beef", 3)], [("mince", 3)], [("rice", 4)]]


def test_the_largest_food_is_laid_first() -> None:
    """Beef on two trays, mince on three, rice on two, of five: mince with beef, rice by itself, not three loads."""
    mince = "was: beef, ground, 93% lean, browned\nwent in: cooked\ncontains: []\ndried: freeze-dried\nform: mince\n"
    more = "yields: {from: 1 kg, gives: 400 g}\nbring back: {soak: 100 g, with: 400 mL hot water, wait: 10 min}\n"
    found = supper("beef: 700 g", "mince: 1200 g", "rice: 600 g", mince=mince + more)
    assert sorted(sorted(load) for load in loads(found)) == [[("beef", 2), ("mince", 3)], [("rice", 2)]]


def test_what_is_conditioned_lies_apart_from_what_is_not() -> None:
    """Onion flakes on three trays are conditioned for ten days, beans on four and on two are not.

    Nine trays are two loads of eight in any case; onion has one, so that no beans wait for it. 150 g of flakes are
    1,323 g of onion, 740 g and 380 g of beans at 380 g from 1 kg are 1,947 g and 1,000 g; a tray takes 500 g.
    """
    beans = "was: black beans, boiled\nwent in: cooked\ncontains: []\ndried: air-dried\nform: beans\n"
    more = "yields: {from: 1 kg, gives: 380 g}\nbring back: {soak: 100 g, with: 400 mL hot water, wait: 10 min}\n"
    found = supper("onion: 150 g", "beans: 740 g", "split: 380 g", beans=beans + more, split=beans + more)
    assert loads(found) == [[("onion", 3)], [("beans", 4), ("split", 2)]]


def test_without_a_dryer_there_is_a_gap() -> None:
    """A household without a dryer is told that nobody knows when, and how much it would load; and warned of it."""
    found = supper("beef: 100 g", store="containers: {jar: {kind: jar, holds: 500 mL}}\n", fails=True)
    (fault,) = found.faults
    assert (fault.code, fault.marked, fault.severity) == ("no-dryer", "dinner", Severity.WARNING)
    assert fault.message == "100\u00a0g of beef lack, and no dryer of yours gives food that is freeze-dried"
    assert fault.help.startswith("write your dryer under `dryers:` in book.yaml, buy it dry, choose another dish")
    lacking = found.lacking("beef")
    assert (lacking.fresh_g, lacking.trays, lacking.loads, lacking.start_by) == (250, None, (), None)
    missing = "no dryer in book.yaml gives food that is freeze-dried"
    assert Gap(what="when to dry 100\u00a0g of beef", missing=missing) in found.trip.gaps


def test_a_full_larder_lacks_nothing() -> None:
    """400 g of beef stand in a jar, 100 g are wanted: nothing is to be dried, and the packs are to be filled."""
    dish = dish_text("beef: 100 g", steps="soak: beef; {boil: beef, in: 300 mL, for: 10 min}")
    run = beef_run("1.4 kg")
    found = trips_of({"trip": trip_text(one_stop("supper: dinner"))}, dishes={"dinner": dish}, runs=(run,))
    assert (found.trip.stores.shortfalls, found.trip.stores.loads) == ((), ())
    assert [task.kind.value for task in found.trip.stores.tasks] == ["pack"]
