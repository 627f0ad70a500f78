"""Who is away on a trip does nothing at home: no shopping, no cooking, no dryer that is weighed or loaded, no packing.

Stew wants beef and onion, as in the tests of the plan: alone, on 3 July 2027, beef is bought on 28 June, cooked on the
29th and dried from 30 June 8:00 to 1 July 22:00; onion is bought on 20 June and dried on the 21st.
"""

from datetime import date

import pytest
from tests.sums.test_trip_plan import BEANS, STEW, plan, times
from tests.sums.trip_of import Travelled, dish_text, one_stop, trip_text, trips_of

from packlarder.faults import Severity

JUST_OUT = "- {place: the shore, day: 1}\n- {place: the shore, day: 3}"
"""Three days away on which nothing is eaten, so that they take nothing from the larder."""


def before(starts: str, *, more: str = "", supper: str = "supper: stew", people: str = "[Ada, Bo]") -> Travelled:
    """Plan stew for 3 July, after three days away, by whomever, from some day on."""
    trips = {
        "away": trip_text(JUST_OUT, starts=starts, people=people, more=more),
        "trip": trip_text(one_stop(supper), starts="2027-07-03"),
    }
    chilli = dish_text("beans: 380 g", steps="soak: beans; {boil: beans, in: 2 L, for: 10 min}")
    return trips_of(trips, dishes={"chilli": chilli}, components={"beans": BEANS})


def test_a_load_is_made_before_people_are_away() -> None:
    """Away from 29 June to 1 July: beef can be neither cooked on the 29th nor taken out on 1 July.

    It is out before 29 June 0:00: loaded on the 27th at 8:00, dry on the 28th at 20:00, out at 22:00; cooked on the
    26th, bought on the 25th. On 2 July they are home and pack; salt is bought on the 28th, the last day before it.
    """
    found = before("2027-06-29")
    assert [one for one in times(found) if one[0] == "freezer"] == [("freezer", "06-27 08:00", "06-28 22:00")]
    assert [task[:2] for task in plan(found) if task[5] == 2] == [
        ("buy", "06-25"),
        ("cook", "06-26"),
        ("freeze first", "06-26 20:00"),
        ("dry", "06-27 08:00"),
        ("weigh again", "06-28 20:00"),
    ]
    assert [task[:2] for task in plan(found) if task[5] == 0] == [("buy", "06-28"), ("pack", "07-02")]


def test_what_is_bought_and_cooked_counts_too() -> None:
    """Away from 25 to 27 June, home on the 28th: beef is bought, cooked and dried as if nobody had been away.

    A day later, from the 26th to the 28th, it is bought on the 29th, on which it is cooked. From the 27th to the 29th
    nobody could cook it: so all of it lies before the 27th. Loaded on the 25th at 8:00 it is out on the 26th at 22:00.
    """
    assert beef_of(before("2027-06-25")) == ["06-28", "06-29", "06-29 20:00", "06-30 08:00", "07-01 20:00"]
    assert beef_of(before("2027-06-26")) == ["06-29", "06-29", "06-29 20:00", "06-30 08:00", "07-01 20:00"]
    assert beef_of(before("2027-06-27")) == ["06-23", "06-24", "06-24 20:00", "06-25 08:00", "06-26 20:00"]


def beef_of(found: Travelled) -> list[str]:
    """Give when each work on beef begins, in order: bought, cooked, frozen, dried, weighed again."""
    return sorted(task[1] for task in plan(found) if task[3] == "beef" and task[0] != "let the dryer rest")


def test_conditioning_goes_on_while_people_are_away() -> None:
    """Onion is out by 22 June 8:00, and ten days in its jar pass; that they are away on three of them is no harm."""
    found = before("2027-06-24")
    assert [one for one in times(found) if one[0] == "rack"] == [("rack", "06-21 08:00", "06-21 20:00")]
    assert ("condition", "06-21", "07-01", "onion", None, 1) in plan(found)


def test_the_spare_day_is_a_day_away() -> None:
    """Away from 26 to 28 June, and with a spare day on the 29th, on which beef would be cooked.

    The load must be out before 26 June 0:00: from the 24th at 8:00 to the 25th at 22:00.
    """
    found = before("2027-06-26", more="spare day: [supper: pasta]")
    assert [one[1:] for one in times(found) if one[0] == "freezer"] == [("06-24 08:00", "06-25 22:00")]


def test_packs_are_filled_before_people_are_away() -> None:
    """Away from 30 June to 2 July: all is packed on the 29th, and so dry by 8:00 on it.

    Loaded on the 27th, beef would be out on the 28th at 22:00. Salt is bought on the 28th.
    """
    found = before("2027-06-30")
    assert [task[:2] for task in plan(found) if task[5] == 0] == [("buy", "06-28"), ("pack", "06-29")]
    assert [one[1:] for one in times(found) if one[0] == "freezer"] == [("06-27 08:00", "06-28 22:00")]


def test_a_trip_is_not_away_from_itself() -> None:
    """The first trip on 3 July, the second on the 5th: what is dried for the first does not mind the second."""
    trips = {"trip": trip_text(STEW, starts="2027-07-03"), "later": trip_text(JUST_OUT, starts="2027-07-05")}
    assert [one[1] for one in times(trips_of(trips))] == ["06-21 08:00", "06-30 08:00"]


def test_who_has_come_home_was_away_all_the_same() -> None:
    """A trip that is gone leaves the plan of the next one as it was; and nobody is told of being on two trips."""
    assert times(before("2027-06-29", more="stands: gone")) == times(before("2027-06-29"))
    assert before("2027-07-01", more="stands: gone").codes == []


@pytest.mark.parametrize(
    ("starts", "people", "told"),
    [
        ("2027-07-01", "[Ada, Bo]", ["trips-overlap"]),
        ("2027-07-01", "[ada, Cy]", ["trips-overlap"]),
        ("2027-07-01", "[Cy, Di]", []),
        ("2027-06-30", "[Ada, Bo]", []),
    ],
)
def test_nobody_is_on_two_trips(starts: str, people: str, told: list[str]) -> None:
    """Three days from 1 July last until the 3rd, when stew is eaten elsewhere; from 30 June they end on the 2nd.

    Whoever writes a name in small letters means the same person.
    """
    trips = {
        "away": trip_text(JUST_OUT, starts=starts, people=people),
        "trip": trip_text(one_stop("supper: stew"), starts="2027-07-03"),
    }
    found = trips_of(trips, fails=bool(told))
    assert found.codes == told
    for fault in found.faults:
        assert (fault.file, fault.marked, fault.severity) == ("trips/trip.yaml", "2027-07-03", Severity.WARNING)
        assert "Ada" in fault.message
        assert "Away" in fault.message
        assert "2027-07-03" in fault.message


def test_what_keeps_for_its_days_in_a_pack_counts_from_an_early_packing() -> None:
    """Packs keep five days: filled on 2 July until the 7th, so stew of the 6th is well.

    Away from 30 June to 2 July they are filled on the 29th, and keep until 4 July: too short for the 6th.
    """
    keeping = "keeping: [{kept: trip pack, for: 5 days, why: ours}]"
    stew = trip_text(one_stop("supper: stew", day=4), starts="2027-07-03")
    alone = trips_of({"trip": stew}, larder=keeping)
    assert alone.codes == []
    found = trips_of({"away": trip_text(JUST_OUT, starts="2027-06-30"), "trip": stew}, larder=keeping, fails=True)
    assert set(found.codes) == {"expires-before-eaten"}
    assert found.trip.stores.tasks[-1].starts.date() == date(2027, 6, 29)
