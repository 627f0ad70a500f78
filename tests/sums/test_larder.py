"""The larder on a day: what was filled less what was drawn, what runs short, what is to be eaten first."""

from collections.abc import Sequence
from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.sums.store_of import EGG, RUN, Stored, drawn_on, only, run_of, store_in, store_of

from packlarder.book.draw import Deed
from packlarder.faults import Severity
from packlarder.reckon.larder_records import Standing

APRIL, JUNE = date(2027, 4, 1), date(2027, 6, 1)
FILLED = date(2027, 3, 13)
WET = "egg powder: {fresh: 900 g, trays: 2, dry: 260 g, put in: [{in: jar, holds: 130 g}]}"
PASTA = "pasta: {dry: 500 g, put in: [{in: jar, holds: 500 g}]}"


def drawn(*draws: str, on: date = JUNE, fails: bool | None = False, runs: tuple[str, ...] = ()) -> Stored:
    """Work out draws from two jars of egg, 110 and 111 g, filled on 13 March; each on a day of its own in April."""
    texts = tuple(drawn_on(f"2027-04-{day:02}", draw, what_for="supper") for day, draw in enumerate(draws, 1))
    return store_of(run_of(EGG), *runs, draws=texts, on=on, fails=fails)


def left(*draws: str) -> float:
    """Give what is left of the first jar of 110 g."""
    return drawn(*draws).jar().left_g


def test_nothing_drawn() -> None:
    """Two jars, sealed, as they were filled."""
    found = drawn()
    assert [(str(one.mark), one.left_g, one.opened_on) for one in found.larder.standing] == [
        ("run/a1", 110, None),
        ("run/a2", 111, None),
    ]
    store = found.larder.in_store["egg-powder"]
    assert (store.held_g, store.good_g, store.level_g, store.short) == (221, 221, None, False)


@pytest.mark.parametrize(
    ("draws", "rest"),
    [
        (("from: run/a1, took: 60 g",), 50),
        (("from: run/a1, took: 60 g", "from: run/a1, took: 20 g"), 30),
        (("from: run/a1, gave away: 10 g", "from: run/a1, threw out: 5 g"), 95),
        (("from: run/a1, opened: yes",), 110),
        (("from: run/a1, took: 60 g", "from: run/a1, counted: 40 g"), 40),  # ten grams were forgotten
        (("from: run/a1, counted: 40 g", "from: run/a1, took: 10 g"), 30),
        (("from: run/a1, took: all",), 0),
        (("from: run/a1, took: 60 g", "from: run/a1, threw out: All"), 0),
        (("from: run/a1, counted: 0 g",), 0),
        (("from: run/a1, took: 110.5 g",), 0),  # half a gram more than was filled is the scale's
    ],
)
def test_what_is_left(draws: Sequence[str], rest: float) -> None:
    """Taken, given away, thrown out, counted: 110 g less what went."""
    assert left(*draws) == rest


def test_emptied_jars_are_remembered() -> None:
    """An empty jar stands no longer, and is told of with all that happened to it."""
    found = drawn("from: run/a1, took: 60 g, why: pancakes", "from: run/a1, took: all")
    assert [str(one.mark) for one in found.larder.standing] == ["run/a2"]
    (empty,) = found.larder.emptied
    assert [(one.day, one.deed, one.went_g, one.left_g, one.reason) for one in empty.drawn] == [
        (date(2027, 4, 1), Deed.TOOK, 60, 50, "pancakes"),
        (date(2027, 4, 2), Deed.TOOK, 50, 0, "supper"),
    ]


@pytest.mark.parametrize(
    ("draw", "opened"),
    [
        ("opened: yes", APRIL),
        ("took: 10 g", APRIL),
        ("took: all", APRIL),
        ("gave away: 10 g", APRIL),
        ("threw out: 10 g", APRIL),
        ("counted: 80 g", APRIL),  # something was taken, so it was open: at the latest by now
        ("counted: 110 g", None),
        ("counted: 109.5 g", None),  # that is the scale's, and no hand was in it
    ],
)
def test_opened_by_what(draw: str, opened: date | None) -> None:
    """Whoever takes from a jar has opened it; a stocktake that finds it full has not."""
    assert drawn(f"from: run/a1, {draw}").jar().opened_on == opened


def test_opened_once() -> None:
    """The first opening holds, and shortens how long it keeps: two weeks from then (common practice)."""
    jar = drawn("from: run/a1, opened: yes", "from: run/a1, took: 20 g").jar()
    assert jar.opened_on == APRIL
    assert jar.use_by is not None
    assert jar.use_by.day == APRIL + timedelta(days=14)


def test_draws_after_the_day_do_not_count() -> None:
    """On 1 April the first of two draws has happened; the other is to come."""
    found = drawn("from: run/a1, took: 60 g", "from: run/a1, took: 20 g", on=APRIL)
    assert (found.jar().left_g, found.jar().opened_on) == (50, APRIL)
    assert drawn("from: run/a1, took: 60 g", on=APRIL - timedelta(days=1)).jar().opened_on is None


def test_jars_that_are_yet_to_be_filled_do_not_stand() -> None:
    """Loaded on 12 March for 36 h: nothing stands before the 13th."""
    assert drawn(on=FILLED - timedelta(days=1)).larder.standing == ()
    assert len(drawn(on=FILLED).larder.standing) == 2


def test_more_than_left() -> None:
    """110 g less 60 leave 50: who takes 51 is told so, also where the day is yet to come."""
    for on in (JUNE, APRIL):
        found = drawn("from: run/a1, took: 60 g", "from: run/a1, took: 51 g", on=on, fails=True)
        assert only(found) == ("more-than-left", "51 g", "51 g of run/a1, and only 50 g were left")
        assert found.faults[0].severity is Severity.ERROR


def test_more_counted_than_left() -> None:
    """A stocktake is believed, with a warning: somebody put food back, or weighed the jar."""
    found = drawn("from: run/a1, took: 60 g", "from: run/a1, counted: 80 g", fails=True)
    assert only(found) == ("more-counted", "80 g", "80 g are counted in run/a1, and only 50 g were left")
    assert found.faults[0].severity is Severity.WARNING
    assert found.jar().left_g == 80


def test_drawn_before_it_was_filled() -> None:
    """The dryer ran until 13 March: nobody took of it on the 12th."""
    early = drawn_on("2027-03-12", "from: run/a1, took: 60 g")
    found = store_of(run_of(EGG), draws=(early,), fails=True)
    assert only(found) == ("drawn-before-filled", "run/a1", "run/a1 was filled on 2027-03-13, after this")
    assert store_of(run_of(EGG), draws=(early.replace("03-12", "03-13"),)).faults == ()


@pytest.mark.parametrize(
    ("mark", "help"),
    [
        ("run/a3", "those of its run are a1 to a2"),
        ("run/b1", "those of its run are a1 to a2"),
        ("run-2/a1", "write what was `put in` what in batches/run-2.yaml"),
        ("run-3/b2", "those of its run are a1, c1 to c2"),
        ("rin/a2", "did you mean run/a2?"),
        ("winter/a2", "its run would stand in batches/"),
    ],
)
def test_unknown_marks(mark: str, help: str) -> None:
    """Told with the marks that its run has, or with the closest run."""
    two = "put in: [{in: jar, holds: 9 g}, {in: jar, holds: 9 g}]"
    mixed = run_of(
        "pasta: {dry: 9 g, put in: [{in: jar, holds: 9 g}]}",
        "salt: {dry: 9 g}",
        f"rice: {{dry: 18 g, {two}}}",
        dryer="",
    )
    in_dryer = run_of("rice: {fresh: 1 kg, trays: 2}", took="")
    found = drawn(f"from: {mark}, took: 10 g", runs=(in_dryer, mixed.replace("rice:", "oil:")), fails=True)
    assert only(found) == ("unknown-mark", mark, f'no container bears the mark "{mark}"')
    assert found.faults[0].help == help


def test_a_jar_of_an_unknown_component_is_told_once() -> None:
    """Its run is at fault, not who draws from it."""
    runs = run_of(EGG.replace("egg powder", "boar"))
    assert store_of(runs, draws=(drawn_on("2027-04-01", "from: run/a1, took: 9 g"),), fails=True).codes == [
        "unknown-component"
    ]


def test_levels_and_what_is_short() -> None:
    """221 g against a level of 221 are enough, against 222 short; a component of which nothing stands is short too."""
    assert not store_of(run_of(EGG), larder="at least: {egg powder: 221 g}").larder.in_store["egg-powder"].short
    found = store_of(run_of(EGG), larder="at least: {Egg Powder: 222 g, rice: 100 g}").larder.in_store
    assert (found["egg-powder"].short, found["egg-powder"].level_g) == (True, 222)
    assert (found["rice"].short, found["rice"].held_g, found["rice"].standing) == (True, 0, ())
    assert "onion" not in found


def test_what_is_past_its_day_or_wet_is_not_counted_as_there() -> None:
    """13 March and 121 days are 12 July: good on that day, gone on the next. Wet food never was; a warning apart."""
    for day, good in ((date(2027, 7, 12), 221), (date(2027, 7, 13), 0)):
        store = store_of(run_of(EGG), larder="at least: {egg powder: 200 g}", on=day).larder.in_store["egg-powder"]
        assert (store.held_g, store.good_g, store.short) == (221, good, good < 200)
    wet = store_of(run_of(WET), fails=True)
    assert (wet.jar().use_by, wet.larder.in_store["egg-powder"].good_g) == (None, 0)


def test_untested_food_is_past_after_two_weeks_and_comes_first() -> None:
    """Until 27 March it stands before the tested jars, after that it is there and not good."""
    untested = run_of(EGG.replace("tested: no lighter, ", ""))
    for day, good_g in ((date(2027, 3, 27), 442), (date(2027, 3, 28), 221)):
        larder = store_of(run_of(EGG), untested, on=day).larder
        store = larder.in_store["egg-powder"]
        assert (store.held_g, store.good_g) == (442, good_g)
        assert [str(one.mark) for one in larder.standing] == ["run-2/a1", "run-2/a2", "run/a1", "run/a2"]
        assert larder.standing[0].past(day) is (good_g == 221)


def test_what_nobody_has_a_rule_for_is_there() -> None:
    """Pasta bought without a day on its pack is no worse for it."""
    store = store_of(run_of(PASTA, dryer="", took=""), larder="at least: {pasta: 400 g}").larder.in_store["pasta"]
    assert (store.good_g, store.short) == (500, False)


def test_first_to_expire_first() -> None:
    """Wet food before all; then by day, the opened one first where they are alike; last what knows no day."""
    later = run_of(EGG, loaded="2027-03-20")
    found = store_of(
        run_of(EGG), later, run_of(WET), run_of(PASTA, dryer="", took=""),
        draws=(drawn_on("2027-06-28", "from: run/a2, opened: yes"),),
        on=date(2027, 7, 1), fails=None,
    )  # fmt: skip
    # 28 June and 14 days are 12 July, the day of run/a1 as well
    assert [str(one.mark) for one in found.larder.standing] == [
        "run-3/a1", "run/a2", "run/a1", "run-2/a1", "run-2/a2", "run-4/a1",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("larder", "code", "marked", "message"),
    [
        ("at least: {eg powder: 9 g}", "unknown-component", "eg powder", 'no component is called "eg powder"'),
        (
            "keeping: [{what: fruits, for: 1 year}]",
            "unknown-food",
            "fruits",
            'no component, kind or group of food is called "fruits"',
        ),
    ],
)
def test_levels_and_rules_of_what_nobody_knows(larder: str, code: str, marked: str, message: str) -> None:
    """A slip in book.yaml would else keep still for ever: the level never short, the rule never used."""
    found = store_of(run_of(EGG), larder=larder, fails=True)
    assert only(found) == (code, marked, message)
    assert found.faults[0].help.startswith("did you mean ")


DEEDS = ("took: {g} g", "gave away: {g} g", "threw out: {g} g", "counted: {g} g", "opened: yes", "took: all")
random_draws = st.lists(
    st.tuples(st.integers(0, 40), st.sampled_from(DEEDS), st.integers(1, 130), st.sampled_from([1, 2])), max_size=8
)


def _store(draws: Sequence[tuple[int, str, int, int]], on: date, *, turned: bool = False) -> Stored:
    """Work out random draws, each in a file of its own, on days from the filling on."""
    texts = {
        f"draws/{number:02}.yaml": drawn_on(
            (FILLED + timedelta(days=day)).isoformat(), f"from: run/a{jar}, {deed.format(g=grams)}"
        )
        for number, (day, deed, grams, jar) in enumerate(draws)
    }
    named = {f"batches/{RUN}.yaml": run_of(EGG), **texts}
    return store_in(dict(reversed(named.items())) if turned else named, on=on, fails=None)


def _all(found: Stored) -> list[Standing]:
    return sorted((*found.larder.standing, *found.larder.emptied), key=lambda one: one.mark)


@settings(deadline=None, max_examples=60)
@given(random_draws, st.integers(0, 45))
def test_nothing_is_lost(draws: Sequence[tuple[int, str, int, int]], days: int) -> None:
    """What is left and what went add up to what was put in, never below nought, in whatever order files are read."""
    on = FILLED + timedelta(days=days)
    found = _store(draws, on)
    for one in _all(found):
        assert one.left_g >= 0
        assert one.left_g + sum(event.went_g for event in one.drawn) == one.container.dry_g
        assert all(event.day <= on for event in one.drawn)
        assert [event.day for event in one.drawn] == sorted(event.day for event in one.drawn)
    turned = _store(draws, on, turned=True)
    assert [(one.left_g, one.opened_on, one.drawn) for one in _all(turned)] == [
        (one.left_g, one.opened_on, one.drawn) for one in _all(found)
    ]
    assert turned.codes == found.codes


@settings(deadline=None, max_examples=60)
@given(random_draws, st.integers(0, 40), st.integers(0, 10))
def test_a_later_day_never_holds_more(draws: Sequence[tuple[int, str, int, int]], days: int, later: int) -> None:
    """Without a stocktake a jar only gets emptier, and what is open stays open since the same day."""
    drawn_only = [one for one in draws if not one[1].startswith("counted")]
    first, then = (_all(_store(drawn_only, FILLED + timedelta(days=day))) for day in (days, days + later))
    for before, after in zip(first, then, strict=True):
        assert after.left_g <= before.left_g
        assert before.opened_on in (None, after.opened_on)
        assert after.drawn[: len(before.drawn)] == before.drawn


def test_what_is_filled_from_another_jar_keeps_no_longer_than_that() -> None:
    """Opened on 1 April the first jar keeps two weeks (common practice); what is put into another in December too."""
    eggs = (
        "egg powder: {fresh: 18 eggs, trays: 2, dry: 221 g, tested: no lighter, put in: "
        "[{in: jar, holds: 110 g}, {in: jar, holds: 30 g, from: run/a1, on: 2027-12-20}]}"
    )
    draws = (drawn_on("2027-04-01", "from: run/a1, took: 20 g", what_for="supper"),)
    found = store_of(run_of(eggs), draws=draws, on=date(2027, 12, 25))
    days = {str(one.mark): one.use_by.day for one in found.larder.standing if one.use_by is not None}
    assert days == {"run/a1": date(2027, 4, 15), "run/a2": date(2027, 4, 15)}
