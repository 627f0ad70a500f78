"""Drying runs: counts as weights, days, containers with their marks, traces, and what can not be true."""

from datetime import date

import pytest
from tests.sums.store_of import EGG, MIX, RICE, RUN, TWO_JARS, Stored, drawn_on, refused, run_of, store_of

from packlarder.book.draw import Mark
from packlarder.faults import Severity
from packlarder.reckon.drying import Verdict
from packlarder.reckon.runs import with_components

HAM = "was: ham, cured, extra lean, roasted\nwent in: cooked\ncontains: []\ndried: freeze-dried\nform: dice"


def only(found: Stored, code: str) -> tuple[str, str, str]:
    """Give what the one fault marks, says and advises, with plain blanks."""
    (fault,) = found.faults
    assert fault.code == code
    return fault.marked, fault.message.replace("\u00a0", " "), fault.help.replace("\u00a0", " ")


def test_eighteen_eggs_fill_two_trays_in_a_day_and_a_half() -> None:
    """Common practice, no source: 18 eggs fill two trays of a medium freeze-dryer, 36 h; 900 g are 450 a tray."""
    batch = store_of(run_of(EGG)).batch()
    assert batch.tray_g == 900 / 2
    assert batch.hours == 36
    # loaded on the 12th at 8:30, and 36 h on it is the 13th at 20:30
    assert batch.dried_on == date(2027, 3, 13)
    assert batch.verdict is Verdict.DRY


def test_a_run_counts_all_its_trays() -> None:
    """900 g of egg and 1 kg of rice lost 900 - 221 and 1000 - 320 mL."""
    run = store_of(run_of(EGG, RICE)).store.runs[RUN]
    assert run.fresh_g == 900 + 1000
    assert run.removed_ml == (900 - 221) + (1000 - 320)
    assert run.hours == 36


@pytest.mark.parametrize(
    ("loaded", "took", "dried_on"),
    [
        ("2027-03-12", "", date(2027, 3, 12)),
        ("2027-03-12 23:30", "10 h", date(2027, 3, 13)),
        ("2027-12-31T20:00", "36 h", date(2028, 1, 2)),
        ("2028-02-28 12:00", "24 h", date(2028, 2, 29)),  # a leap year
    ],
)
def test_day_on_which_it_was_dry(loaded: str, took: str, dried_on: date) -> None:
    """The day loaded, and the hours it took; midnight, year's end and leap day are crossed."""
    assert store_of(run_of(EGG, loaded=loaded, took=took), on=date(2028, 3, 1)).batch().dried_on == dried_on


def test_what_still_lies_in_the_dryer() -> None:
    """Without a dry weight there is no verdict, no day and no water removed."""
    batch = store_of(run_of("egg powder: {fresh: 18 eggs, trays: 2}", took="")).batch()
    assert (batch.verdict, batch.dried_on, batch.removed_ml, batch.fresh_per_dry) == (None, None, None, None)


def test_count_that_nobody_weighed() -> None:
    """A count needs the weight of one: the way out names key and file."""
    found = store_of(run_of("onion: {fresh: 3 onions, trays: 1, dry: 60 g}", dryer="rack"), fails=True)
    marked, message, help = only(found, "can-not-weigh")
    assert (marked, message) == ("3 onions", "the weight of 3 onions of it fresh is not known")
    assert help == "weigh 1 onion and write `counts: {1 onion: ... g}` in components/onion.yaml"
    assert found.batch().verdict is Verdict.CAN_NOT_TELL
    tested = store_of(
        run_of("onion: {fresh: 3 onions, trays: 1, dry: 60 g, tested: no lighter}", dryer="rack"), fails=True
    )
    assert (tested.batch().verdict, tested.store.learnt) == (Verdict.DRY, {})  # dry, but of how much nobody knows


def test_marks_count_through_their_batch() -> None:
    """Two jars of egg are a1 and a2, the pouch of rice is b1, and each knows its place among its own."""
    run = store_of(run_of(EGG, RICE)).store.runs[RUN]
    assert [(str(one.mark), one.nth, one.of, one.dry_g) for one in run.containers] == [
        ("run/a1", 1, 2, 110),
        ("run/a2", 2, 2, 111),
        ("run/b1", 1, 1, 320),
    ]


def test_a_jar_that_is_added_later_changes_no_mark_on_a_label() -> None:
    """A third jar of egg is a3; the rice after it is b1 before and after, and so is what was drawn from it."""
    more = EGG.replace(TWO_JARS, TWO_JARS.replace("111 g}", "100 g}, {in: jar, holds: 11 g}"))
    rice = drawn_on("2027-04-01", "from: run/b1, took: 20 g")
    before, after = (store_of(run_of(egg, RICE), draws=(rice,)) for egg in (EGG, more))
    assert [str(one.mark) for one in after.store.runs[RUN].containers] == ["run/a1", "run/a2", "run/a3", "run/b1"]
    assert before.jar(1, batch="b").left_g == after.jar(1, batch="b").left_g == 300


def test_letters_for_twenty_six_batches() -> None:
    """The last entry has the letter z; after it there is none left, and the run says so."""
    entry = "egg powder: {dry: 10 g, put in: [{in: jar, holds: 10 g}]}"
    run = store_of(run_of(*[entry] * 26, dryer="", took=""), fails=True).store.runs[RUN]
    assert [str(one.mark) for one in run.containers][-1] == "run/z1"
    fault = refused(run_of(*[entry] * 27, dryer=""))
    assert (fault.code, fault.message) == ("too-many", "27 entries stand here, and there are letters for 26 on labels")


def test_marks_stay_where_a_component_is_unknown() -> None:
    """The rice keeps its letter b though nobody knows what was in the jars before it; the name is marked once."""
    found = store_of(run_of(EGG.replace("egg powder", "egg pwoder"), RICE), fails=True)
    marked, message, help = only(found, "unknown-component")
    assert (marked, message) == ("egg pwoder", 'no component is called "egg pwoder"')
    assert 'did you mean "egg powder"?' in help
    assert [one.mark for one in found.store.runs[RUN].containers] == [Mark(RUN, "b", 1)]


def test_two_trays_of_ham_and_a_two_quart_jar() -> None:
    """Two trays of diced cooked cured meat fill a little less than a two-quart jar (common practice, no source).

    1 kg of ham at 67.7 % water (SR28) gives about 333 g of dice; at 45 g a cup (invented) they are 7.4 cups of 236.6
    mL, of the 8 that the jar holds.
    """
    jar = "put in: [{in: two-quart jar, holds: 333 g}]"
    ham = f"ham: {{fresh: 1 kg, trays: 2, dry: 333 g, tested: no lighter, weighs: {{1 cup: 45 g}}, {jar}}}"
    batch = store_of(run_of(ham), ham=HAM).batch()
    (filled,) = batch.containers
    assert filled.size is not None
    assert filled.dry_g / batch.grams_per["mL"] / filled.size.holds.base == pytest.approx(7.4 / 8, abs=0.001)
    assert batch.verdict is Verdict.DRY


@pytest.mark.parametrize(("cup", "fits"), [("62 g", True), ("42 g", False)])
def test_more_than_a_jar_can_hold(cup: str, *, fits: bool) -> None:
    """120 g at 62 g a cup are 458 mL in 500; at 42 g they are 676, more than any heap: a warning."""
    jar = "put in: [{in: jar, holds: 120 g}]"
    egg = f"egg powder: {{fresh: 900 g, trays: 2, dry: 221 g, weighs: {{1 cup: {cup}}}, {jar}}}"
    found = store_of(run_of(egg), fails=not fits)
    if not fits:
        marked, message, _ = only(found, "does-not-fit")
        assert (marked, message) == ("120 g", "120 g of it take 680 mL, and a jar holds 500 mL")
        assert found.faults[0].severity is Severity.WARNING


@pytest.mark.parametrize(("second", "fits"), [("115 g", True), ("116 g", False)])
def test_jars_hold_no_more_than_came_out(second: str, *, fits: bool) -> None:
    """221 g came out; scales may round 2 % up, to 225.4 g: 110 + 115 pass, 110 + 116 do not."""
    jars = f"put in: [{{in: jar, holds: 110 g}}, {{in: jar, holds: {second}}}]"
    found = store_of(run_of(EGG.replace(TWO_JARS, jars)), fails=not fits)
    if not fits:
        _, message, _ = only(found, "more-than-came-out")
        assert message == "the containers hold 226 g, and 221 g came out of the dryer"


def test_weights_that_are_swapped() -> None:
    """Dry food weighs less than fresh: told once, and not as wet food too."""
    marked, message, help = only(
        store_of(run_of("egg powder: {fresh: 221 g, trays: 2, dry: 900 g, tested: no lighter}"), fails=True), "grown"
    )
    assert (marked, message) == ("900 g", "900 g came out of 221 g fresh")
    assert help == "are the two weights swapped?"
    trimmed = run_of("onion: {bought: 1 kg, trimmed: 1.1 kg, fresh: 900 g, trays: 2, dry: 106 g}", dryer="rack")
    marked, message, _ = only(store_of(trimmed, fails=True), "grown")
    assert (marked, message) == ("1.1 kg", "1100 g were left of 1000 g bought")


def test_cooked_food_may_have_grown_before_the_dryer() -> None:
    """Rice takes up water in its pot: 400 g bought, 1 kg loaded."""
    assert store_of(run_of("rice: {bought: 400 g, fresh: 1 kg, trays: 2, dry: 320 g}")).faults == ()


def test_runs_of_which_nothing_was_learnt_are_not_worked_out_again() -> None:
    """With the components they hold already they are the same; with others, they hold those."""
    found, other = store_of(run_of(EGG)), store_of(run_of(EGG.replace("221 g", "230 g")))
    assert with_components(found.store.runs, found.store.components)[RUN] is found.store.runs[RUN]
    renewed = with_components(found.store.runs, other.store.components)[RUN]
    assert renewed.batches[0].component is other.store.components["egg-powder"]


def test_a_dryer_nobody_has() -> None:
    """The closest name is offered."""
    marked, message, help = only(store_of(run_of(EGG, dryer="freezr"), fails=True), "unknown-dryer")
    assert (marked, message) == ("freezr", 'no dryer is called "freezr"')
    assert help == 'did you mean "freezer"? known are: freezer, rack'


def test_a_dryer_that_dries_otherwise() -> None:
    """Freeze-dried egg does not come out of a rack; its component is named as well."""
    marked, message, help = only(store_of(run_of(EGG, dryer="rack"), fails=True), "other-drying")
    assert (marked, message) == ("egg powder", "Egg powder is freeze-dried, and rack gives food that is air-dried")
    assert "a component of its own for this form" in help
    salt = store_of(run_of("salt: {fresh: 500 g, trays: 1, dry: 500 g}"), fails=True)
    assert only(salt, "other-drying")[1] == "Salt is not dried, and freezer gives food that is freeze-dried"


def test_no_dryer() -> None:
    """What is dried at home needs one; a mix, and what was bought dry, do not."""
    marked, message, _ = only(store_of(run_of("egg powder: {dry: 221 g}", dryer="", took=""), fails=True), "no-dryer")
    assert (marked, message) == ("loaded", "Egg powder is freeze-dried, and no dryer is named")
    without = ("mix: {dry: 150 g, put in: [{in: jar, holds: 150 g}]}", "pasta: {dry: 500 g, best before: 2028-01-31}")
    found = store_of(run_of(*without, dryer="", took=""), mix=MIX)
    assert [found.batch(index).verdict for index in (0, 1)] == [None, None]


def test_no_verdict_of_what_was_not_dried_here() -> None:
    """Pasta that was only put into jars has lost nothing, even if someone says how much of it there was before."""
    batch = store_of(run_of("pasta: {fresh: 500 g, dry: 500 g, put in: [{in: jar, holds: 100 g}]}", dryer="")).batch()
    assert (batch.verdict, batch.dried) == (None, None)


@pytest.mark.parametrize(("trays", "fits"), [((3, 3), True), ((3, 4), False)])
def test_trays_of_a_dryer(trays: tuple[int, int], *, fits: bool) -> None:
    """Five trays: two foods may share one, so that 3 + 3 are five; 3 + 4 are six at least."""
    egg, rice = EGG.replace("trays: 2", f"trays: {trays[0]}"), RICE.replace("trays: 2", f"trays: {trays[1]}")
    found = store_of(run_of(egg, rice), fails=not fits)
    if not fits:
        marked, message, _ = only(found, "too-many-trays")
        assert (marked, message) == ("on the trays", "7 trays were loaded, and freezer takes 5")


def test_a_container_nobody_has() -> None:
    """The closest name is offered; the batch is worked out all the same."""
    found = store_of(run_of(EGG.replace("in: jar, holds: 111 g", "in: jug, holds: 111 g")), fails=True)
    marked, message, help = only(found, "unknown-container")
    assert (marked, message) == ("jug", 'no container is called "jug"')
    assert help.endswith("known are: jar, two-quart jar, pouch, bag")
    assert found.jar(2).left_g == 111


@pytest.mark.parametrize(("fresh", "fits"), [("3 kg", True), ("3.1 kg", False)])
def test_more_on_a_tray_than_it_takes(fresh: str, *, fits: bool) -> None:
    """A tray of the freezer takes 1 kg: 1.5 kg on each of two pass, 1.55 kg are a slip, most likely of the trays."""
    rice = f"rice: {{fresh: {fresh}, trays: 2, dry: 1 kg}}"
    found = store_of(run_of(rice), fails=not fits)
    if not fits:
        marked, message, _ = only(found, "overloaded-tray")
        assert (marked, message) == ("2", "1550 g lay on each tray, and a tray of freezer takes 1000 g")
        assert found.faults[0].severity is Severity.WARNING
