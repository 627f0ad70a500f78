"""What holds for any two trips: no jar gives more than it holds, nothing is eaten past its day, dryers do one thing."""

from collections import defaultdict
from datetime import date, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.sums.store_of import EGG, RICE, run_of
from tests.sums.trip_of import DISHES, one_stop, trip_text, trips_of

RUNS = run_of(EGG), run_of(RICE), run_of(EGG, loaded="2027-03-01 08:30"), run_of(RICE, loaded="2027-05-01 08:30")
meals = st.lists(
    st.tuples(st.sampled_from(["breakfast", "lunch", "supper"]), st.sampled_from([*DISHES])), min_size=1, max_size=9
)
trips = st.lists(st.tuples(meals, st.integers(25, 50), st.integers(1, 5)), min_size=2, max_size=3)


@given(trips)
@settings(max_examples=40, deadline=None)
def test_trips_share_larder_and_dryers(planned: list[tuple[list[tuple[str, str]], int, int]]) -> None:
    """Whatever trips want, whenever they start: jars, days, dryers, and the days of the work add up."""
    texts = {
        f"trip-{nth}": trip_text(
            one_stop(*(f"{meal}: {dish}" for meal, dish in eaten)),
            starts=(date(2027, 6, 1) + timedelta(days=after)).isoformat(),
            people=f"[{', '.join(f'P{one}' for one in range(people))}]",
        )
        for nth, (eaten, after, people) in enumerate(planned)
    }
    found = trips_of(texts, runs=RUNS, fails=None)
    taken_g: dict[str, float] = defaultdict(float)
    busy = []
    for trip in found.trips.values():
        for fill in trip.stores.fills:
            for one in fill.drawn:
                taken_g[str(one.mark)] += one.grams
                assert one.grams > 0
                assert one.use_by is None or one.use_by >= fill.first_on
        busy += [(load.dryer, load.starts, load.ends) for load in trip.stores.loads]
        dried = {one.component.id: one.short_g for one in trip.stores.shortfalls if one.source.value == "dry"}
        on_trays: dict[str, float] = defaultdict(float)
        for tray in (tray for load in trip.stores.loads for tray in load.on_the_trays):
            on_trays[tray.component.id] += tray.dry_g
        assert {id: round(grams, 3) for id, grams in on_trays.items()} == dried
        assert all(task.starts <= task.ends for task in trip.stores.tasks)
        assert all(task.ends.date() < trip.model.starts for task in trip.stores.tasks)
    for jar in found.larder.standing:
        assert taken_g[str(jar.mark)] <= jar.left_g + 1e-6
    for (dryer, _, ends), (next_dryer, starts, _) in zip(sorted(busy), sorted(busy)[1:], strict=False):
        assert dryer != next_dryer or ends < starts
