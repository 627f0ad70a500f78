"""What holds for every book with drying runs and draws: no gram comes from nowhere, and none is lost."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.sums.store_of import Stored, drawn_on, run_of, store_in

from packlarder.book.draw import LETTERS, Deed
from packlarder.reckon.larder_records import Standing
from packlarder.reckon.store import reckon_store

FIRST = date(2027, 1, 1)
FOODS = ("egg powder", "beef", "rice")
DEEDS = ("took: {g} g", "took: all", "gave away: {g} g", "threw out: {g} g", "opened: yes", "counted: {g} g")
TESTS = ("", "tested: no lighter, ")
THOROUGH = settings(max_examples=60, deadline=None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Jar:
    """A container to fill: what it holds, and for one that is filled later from the first, after how many days."""

    grams: int
    moved_after: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A batch to write down."""

    food: str
    test: str
    jars: tuple[Jar, ...]

    @property
    def dry_g(self) -> int:
        """Give what came out of the dryer: what was put in jars from there, and a little that was tasted."""
        return sum(jar.grams for jar in self.jars if jar.moved_after is None) + 1


jars = st.builds(Jar, grams=st.integers(5, 150), moved_after=st.sampled_from([None, None, 3, 20]))
entries = st.builds(
    lambda food, test, first, later: Entry(
        food=food, test=test, jars=(Jar(grams=first, moved_after=None), *later) if first else ()
    ),
    st.sampled_from(FOODS),
    st.sampled_from(TESTS),
    st.integers(0, 150),
    st.lists(jars, max_size=3),
)
runs = st.lists(st.lists(entries, min_size=1, max_size=3), min_size=1, max_size=3)
draws = st.lists(
    st.tuples(st.integers(0, 60), st.sampled_from(DEEDS), st.integers(1, 160), st.integers(0, 40)), max_size=10
)


def written(run: int, loaded: date, batches: Sequence[Entry]) -> str:
    """Write a run; four grams of fresh food for one dry, so that some of it is wet or can not be right."""
    return run_of(*(_entry(run, loaded, *one) for one in enumerate(batches)), loaded=loaded.isoformat(), took="")


def _entry(run: int, loaded: date, index: int, entry: Entry) -> str:
    filled = []
    for jar in entry.jars:
        day = None if jar.moved_after is None else loaded + timedelta(days=jar.moved_after)
        moved = f", from: run-{run}/{LETTERS[index]}1, on: {day}" if day else ""
        filled.append(f"{{in: jar, holds: {jar.grams} g{moved}}}")
    return (
        f"{entry.food}: {{fresh: {4 * entry.dry_g} g, trays: 1, dry: {entry.dry_g} g, {entry.test}"
        f"put in: [{', '.join(filled)}]}}"
    )


def marks(book: Sequence[Sequence[Entry]]) -> list[tuple[str, date]]:
    """Give the marks of all containers, with the day from which on they can be drawn from."""
    return [
        (f"run-{run}/{LETTERS[index]}{nth}", FIRST + timedelta(days=10 * run + (jar.moved_after or 0)))
        for run, batches in enumerate(book)
        for index, entry in enumerate(batches)
        for nth, jar in enumerate(entry.jars, 1)
    ]


def stored(book: Sequence[Sequence[Entry]], drawn: Sequence[tuple[int, str, int, int]], on: date) -> Stored:
    """Work out a book with its draws, each of which takes place so many days after its container was filled."""
    files = {
        f"batches/run-{run}.yaml": written(run, FIRST + timedelta(days=10 * run), batches)
        for run, batches in enumerate(book)
    }
    known = marks(book)
    for number, (after, deed, grams, which) in enumerate(drawn if known else ()):
        mark, since = known[which % len(known)]
        day = (since + timedelta(days=after)).isoformat()
        files[f"draws/{number:02}.yaml"] = drawn_on(day, f"from: {mark}, {deed.format(g=grams)}")
    return store_in(files, on=on, fails=None)


def in_all(found: Stored) -> Mapping[str, Standing]:
    """Give all containers that were filled by the day."""
    return {str(one.mark): one for one in (*found.larder.standing, *found.larder.emptied)}


@given(runs, draws, st.integers(0, 90))
@THOROUGH
def test_what_stands_and_what_went_is_what_was_put_in(
    book: Sequence[Sequence[Entry]], drawn: Sequence[tuple[int, str, int, int]], days: int
) -> None:
    """Container by container, and over the whole book: what went from jar to jar is counted once.

    A container that is filled from another with more than was left there is a fault, and its grams are not asked after.
    """
    on = FIRST + timedelta(days=days)
    found = stored(book, drawn, on)
    standing = in_all(found)
    assert set(standing) == {mark for mark, since in marks(book) if since <= on}
    for one in standing.values():
        assert one.left_g >= 0
        assert one.left_g + sum(event.went_g for event in one.drawn) == one.container.dry_g
    if "more-than-left" not in found.codes:
        put_in_g = sum(one.container.dry_g for one in standing.values() if one.container.filled.from_ is None)
        left_g = sum(one.left_g for one in standing.values())
        went_g = sum(event.went_g for one in standing.values() for event in one.drawn if not _moved(event.reason))
        assert left_g + went_g == put_in_g


def _moved(reason: str) -> bool:
    return reason.startswith("put into ")


@given(runs, draws, st.integers(0, 90))
@THOROUGH
def test_the_larder_adds_up_by_component(
    book: Sequence[Sequence[Entry]], drawn: Sequence[tuple[int, str, int, int]], days: int
) -> None:
    """What there is of each component is what its containers hold; of it what is good is not more."""
    larder = stored(book, drawn, FIRST + timedelta(days=days)).larder
    assert sum(store.held_g for store in larder.in_store.values()) == sum(one.left_g for one in larder.standing)
    for id, store in larder.in_store.items():
        assert store.held_g == sum(one.left_g for one in larder.standing if one.batch.component.id == id)
        assert 0 <= store.good_g <= store.held_g
    assert all(one.left_g > 0 for one in larder.standing)
    assert all(one.left_g == 0 for one in larder.emptied)


@given(runs, draws)
@THOROUGH
def test_whoever_took_or_opened_has_opened_it(
    book: Sequence[Sequence[Entry]], drawn: Sequence[tuple[int, str, int, int]]
) -> None:
    """A container is open from the first day on which a hand was in it, and keeps no longer than that allows."""
    for one in in_all(stored(book, drawn, FIRST + timedelta(days=200))).values():
        hands = [event.day for event in one.drawn if event.deed in (Deed.TOOK, Deed.OPENED)]
        if hands:
            assert one.opened_on is not None
            assert one.opened_on <= min(hands)
            assert one.use_by is None or one.use_by.day <= one.opened_on + timedelta(days=14)


@given(runs)
@settings(max_examples=20, deadline=None)
def test_runs_and_components_agree(book: Sequence[Sequence[Entry]]) -> None:
    """Runs hold the components as they are in the end, with all traces of their batches; and so once more."""
    found = stored(book, (), FIRST + timedelta(days=90))
    for run in found.store.runs.values():
        for batch in run.batches:
            assert batch.component == found.store.components[batch.component.id]
            assert batch.traces <= batch.component.traces
    assert reckon_store(found.book, FIRST + timedelta(days=90)) == found.store
