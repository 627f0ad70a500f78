"""The data of a trip: sums add up; tables and calendar read back by others' readers say what the data says."""

import csv
import json
import re
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from io import StringIO
from pathlib import Path

import pytest
from icalendar import Alarm, Calendar, Event
from tests.site.sample_trip_data import ID, ON, at, book, checked_trip, trip
from tests.site.samples import BOOK

from packlarder.book.household import Units
from packlarder.book.trip import Stands
from packlarder.cli.downloads import downloads
from packlarder.cli.plain_trip import plain_trip
from packlarder.measure import as_typed
from packlarder.publish.data import build_data
from packlarder.publish.trip_calendar import REMINDED_OF, trip_calendar
from packlarder.publish.trip_files import build_trip_files
from packlarder.publish.trip_tables import packing_table, plan_table
from packlarder.reckon.trip.journey import LegWater
from packlarder.reckon.trip.stores import TaskKind
from packlarder.safety.whole import CheckedTrip
from packlarder.sheets.book_sheet import BookTrips
from packlarder.sheets.facts import Link
from packlarder.sheets.trip_data import trip_data
from packlarder.sheets.trip_data_records import TripData
from packlarder.sheets.trip_sheet import TripIndex
from packlarder.sheets.trip_water import leg_rows

GOLDENS = Path(__file__).parent / "trip_files"


@pytest.fixture
def data() -> TripData:
    """Give the sample as data."""
    checked = checked_trip()
    return trip_data(checked.sums, checked.findings, edition="0123abcd", day=ON.isoformat())


@pytest.fixture
def events(data: TripData) -> dict[str, Event]:
    """Read the calendar back; events go by their summaries."""
    calendar = Calendar.from_ical(trip_calendar(data, "The book"))
    return {str(event["summary"]): event for event in calendar.walk("VEVENT") if isinstance(event, Event)}


def span(event: Event) -> tuple[date | None, date | None]:
    """Give when an event begins and ends."""
    return event.DTSTART, event.DTEND


def rows(table: str) -> list[dict[str, str]]:
    """Read a table as another program does."""
    return list(csv.DictReader(StringIO(table.encode().decode("utf-8-sig"), newline="")))


def test_it_is_as_it_was(data: TripData, *, update_goldens: bool) -> None:
    """Data, both tables and the calendar, letter by letter, as somebody looked them through."""
    made = {
        "trip.json": f"{json.dumps(data, ensure_ascii=False, indent=2)}\n".encode(),
        "packing.csv": packing_table(data).encode(),
        "plan.csv": plan_table(data).encode(),
        "plan.ics": trip_calendar(data, "The book"),
    }
    for name, content in made.items():
        if update_goldens:
            (GOLDENS / name).write_bytes(content)
        assert content == (GOLDENS / name).read_bytes(), name


def test_every_leg_adds_up_and_names_every_kind(data: TripData) -> None:
    """Each field of the sums stands there; 520 + 10 + 6000 + 1000 + 400 + 800 = 8730, 400 + 30 + 3000 + 350 = 3780."""
    for leg, carried in zip(data["legs"], (8730, 3780), strict=True):
        pieces: dict[str, int] = dict(leg["water_ml"])  # type: ignore[arg-type]  # all its fields are whole numbers
        assert list(pieces) == list(LegWater._fields)
        assert sum(pieces.values()) == leg["carry_ml"] == carried
    first, second = data["legs"]
    assert (first["from"], first["to"], second["from"], second["to"]) == (
        "home",
        "the inner bay",
        "the inner bay",
        "the end",
    )
    assert (first["treatment"], second["short_ml"], second["from_other_ml"]) == (None, None, 900)
    assert second["treatment"] == {"treated_by": "filter and chlorine", "treated_ml": 3780, "wait_min": 30}


def test_packs_fills_and_fuel_add_up(data: TripData) -> None:
    """Packs weigh what is in them, 759 g in all; a fill is what it is drawn for; fuel is its stops and its margin."""
    for pack in data["packs"]:
        assert pack["grams"] == sum(item["grams"] for item in pack["items"])
    # rice 480, salt 6, egg 62, oil 11, milk powder 4 × 50
    assert sum(pack["grams"] for pack in data["packs"]) == data["weight_g"] == 480 + 6 + 62 + 11 + 200
    packed = {pack["mark"]: pack for pack in data["packs"]}
    for fill in data["fills"]:
        into = {one["pack"]: one["grams"] for one in fill["into"]}
        assert sum(into.values()) + fill["for_mixes_g"] == fill["need_g"]
        found = sum(one["grams"] for one in fill["drawn"]) + fill["bought_on_the_way_g"] + fill["short_g"]
        assert found == fill["need_g"]
        for mark, weight_g in into.items():
            items = packed[mark]["items"]
            assert weight_g == sum(one["grams"] for one in items if one["component"] == fill["component"])
    [gas] = data["fuel"]
    # 9 at the quay, 6 + 4 in the bay, 6 in reserve, 4 of margin
    assert sum(stop["fuel_g"] for stop in gas["by_stop"]) + gas["margin_g"] == gas["fuel_g"] == data["fuel_g"] == 29
    assert [stop["fuel_g"] for stop in data["stops"]] == [{"gas mix": 9}, {"gas mix": 10}, {}]


def test_stops_hold_their_meals_with_people_and_times(data: TripData) -> None:
    """Ada alone eats 1 serving; both eat 1 + 1.5; what is in reserve stands apart; the soak is step 1, at 18:15."""
    quay, bay, home = data["stops"]
    rice, omelette = quay["meals"]
    assert (rice["people"], rice["portions"], omelette["people"], omelette["portions"]) == (
        ["Ada"],
        1,
        ["Ada", "Bo"],
        2.5,
    )
    assert rice["start_at"] == "2027-07-02T18:10"
    assert rice["soaks"] == [{"step": 1, "at": "2027-07-02T18:15", "minutes": 8}]
    assert (omelette["date"], omelette["start_at"], omelette["eat_at"]) == ("2027-07-03", None, "2027-07-03T07:30")
    assert [meal["number"] for meal in (*bay["meals"], *home["meals"], *data["spare_day"])] == [3, 4]


def test_what_is_raw_is_told_wherever_it_stands(data: TripData) -> None:
    """Egg powder is RAW in its pack, its fill, its shortfall, on its tray and among the tasks, and nothing else is."""
    told = [
        *((item["name"], item["raw"]) for pack in data["packs"] for item in pack["items"]),
        *((one["name"], one["raw"]) for one in (*data["fills"], *data["shortfall"])),
        *((one["name"], one["raw"]) for load in data["loads"] for one in load["on_the_trays"]),
        *((one["name"], one["raw"]) for task in data["plan"] for one in task["components"]),
    ]
    assert {name for name, raw in told if raw} == {"Egg powder"}
    assert {raw for name, raw in told if name == "Egg powder"} == {True}
    assert [load["raw"] for load in data["loads"]] == [True]


def test_notes_and_gaps_are_told_in_plain_spaces(data: TripData) -> None:
    """What the rules found comes with its source, what could not be worked out with what is missing."""
    assert data["missing"] == ["when to dry rice: no dryer in book.yaml gives it"]
    [note] = data["safety"]
    assert (note["rule"], note["severity"]) == ("hands-after-raw", "note")
    assert note["text"] in " ".join(plain_trip(trip(), checked_trip().findings, book().household, "foot").split())
    assert note["source"]


def test_only_planned_trips_are_handed_on() -> None:
    """A trip that is gone is left out, and so are its downloads: nobody packs for it any more."""
    checked = checked_trip()
    gone = replace(checked.sums, id="gone", model=checked.sums.model.model_copy(update={"stands": Stands.GONE}))
    both = {ID: checked, "gone": CheckedTrip(sums=gone, findings=())}
    _, of_the_trip = downloads(("a6",), both)
    assert of_the_trip.trip == Link(kind="trip", id=ID, name=checked.sums.model.name)
    assert [one.address for one in of_the_trip.files] == [
        "print/trip-shore-a6-imposed-a4.pdf",
        "print/trip-shore-a6.pdf",
        "print/trip-shore-labels-a4-8.pdf",
        "trips/shore-packing.csv",
        "trips/shore-plan.csv",
        "trips/shore-plan.ics",
    ]


def test_a_build_writes_the_files_of_a_trip(tmp_path: Path, data: TripData) -> None:
    """Data as the command prints it, two tables, one calendar; a book without trips gets no folder for them."""
    index = TripIndex(planned=(), gone=(), next=None)
    trips = BookTrips(index=index, sheets={}, data={ID: data}, booklets={}, labels={})
    sheet = replace(BOOK, trips=trips)
    assert (build_data(sheet, out=tmp_path), build_trip_files(trips.data, BOOK.title, out=tmp_path)) == ((), ())
    assert json.loads((tmp_path / "data/trips/shore.json").read_text("utf-8")) == data
    assert {path.name for path in (tmp_path / "trips").iterdir()} == {
        "shore-packing.csv",
        "shore-plan.csv",
        "shore-plan.ics",
    }
    assert (tmp_path / "trips/shore-packing.csv").read_bytes() == packing_table(data).encode()
    build_data(BOOK, out=tmp_path / "without")
    assert not list((tmp_path / "without").rglob("trips"))


def test_the_packing_table_is_the_packing_list(data: TripData) -> None:
    """Read back, it has a line for each item, in order, with the same grams: 759 in all."""
    read = rows(packing_table(data))
    items = [(pack["mark"], item["name"], item["grams"]) for pack in data["packs"] for item in pack["items"]]
    assert [(row["pack"], row["component"], float(row["grams"])) for row in read] == items
    assert sum(float(row["grams"]) for row in read) == data["weight_g"]
    assert {row["component"] for row in read if row["RAW"] == "RAW"} == {"Egg powder"}
    egg = next(row for row in read if row["RAW"])
    assert (egg["day"], egg["date"], egg["inside"], egg["bearer"]) == ("2", "2027-07-03", "2.1", "Ada")
    assert (read[0]["meal"], read[-1]["meal"], read[-1]["day"]) == (
        'supper: Rice, "red"; hot',
        "on the move",
        "spare day",
    )


def test_tables_keep_to_rfc_4180(data: TripData) -> None:
    """Lines end in CR LF, none has more cells than the head, and what holds a comma or a quote is quoted."""
    for table in (packing_table(data), plan_table(data)):
        assert table.endswith("\r\n")
        assert re.search(r"(?<!\r)\n|\r(?!\n)", table) is None
        read = list(csv.reader(StringIO(table, newline=""), strict=True))
        assert {len(row) for row in read} == {len(read[0])}
    assert '"supper: Rice, ""red""; hot"' in packing_table(data)


@pytest.mark.parametrize("sign", ["=", "+", "-", "@", "\t"])
def test_no_text_of_a_households_becomes_a_formula(data: TripData, sign: str) -> None:
    """A place, a bearer or a food that begins like a formula gets a quote before it; figures do not."""
    data["stops"][0]["place"] = f"{sign}1+1"
    data["packs"][0]["bearer"] = f"{sign}cmd"
    data["packs"][0]["items"][0]["name"] = f"{sign}A1"
    row = rows(packing_table(data))[0]
    assert (row["stop"], row["bearer"], row["component"], row["grams"]) == (
        f"'{sign}1+1",
        f"'{sign}cmd",
        f"'{sign}A1",
        "1",
    )


def test_the_plan_table_goes_over_the_months_end(data: TripData) -> None:
    """From buying on 28 June to packing on 1 July, times only where they matter."""
    read = rows(plan_table(data))
    assert [(row["date"], row["time"], row["end"], row["what"], row["load"]) for row in read] == [
        ("2027-06-28", "", "2027-06-28", "buy", ""),
        ("2027-06-29", "16:00", "2027-06-29 17:00", "cook", "1"),
        ("2027-06-29", "20:00", "2027-07-01 00:00", "dry", "1"),
        ("2027-07-01", "02:00", "2027-07-01 02:00", "weigh again", "1"),
        ("2027-06-30", "", "2027-07-01", "condition", ""),
        ("2027-07-01", "", "2027-07-01", "pack", ""),
    ]
    assert (read[0]["components"], read[0]["grams"]) == ("Rice, Egg powder (RAW)", "434")


def test_the_calendar_keeps_to_rfc_5545(data: TripData) -> None:
    """3.1: CR LF ends each line, none has over 75 octets, none is cut inside a letter; 3.3.11: commas are escaped."""
    data["name"] = "Øya, " + "ø" * 90
    made = trip_calendar(data, "The book")
    assert made.endswith(b"END:VCALENDAR\r\n")
    assert re.search(rb"(?<!\r)\n|\r(?!\n)", made) is None
    lines = made.split(b"\r\n")
    assert max(map(len, lines)) <= 75
    assert b"".join(lines).decode() == "".join(line.decode() for line in lines)
    whole = made.replace(b"\r\n ", b"").decode().split("\r\n")
    assert f"SUMMARY:Øya\\, {'ø' * 90}" in whole
    # 3.6: PRODID and VERSION once; 3.6.1: UID and DTSTAMP in each event
    assert (whole.count("VERSION:2.0"), sum(line.startswith("PRODID:") for line in whole)) == (1, 1)
    uids = [line for line in whole if line.startswith("UID:")]
    assert len(set(uids)) == len(uids) == whole.count("BEGIN:VEVENT") == whole.count("DTSTAMP:20270601T000000Z") == 7


def test_whole_days_end_on_the_day_after(events: dict[str, Event]) -> None:
    """3.6.1: an end is not part of an event. Conditioning on 30 June and 1 July ends on 2 July, the trip on 5 July."""
    dry = events["Condition: Rice"]
    assert span(dry) == (date(2027, 6, 30), date(2027, 7, 2))
    assert b"DTSTART;VALUE=DATE:20270630\r\nDTEND;VALUE=DATE:20270702\r\n" in dry.to_ical()
    away = events[trip().model.name]
    assert span(away) == (date(2027, 7, 2), date(2027, 7, 5))
    assert span(events["Pack"]) == (date(2027, 7, 1), date(2027, 7, 2))


def test_times_are_those_of_the_own_clock(events: dict[str, Event]) -> None:
    """No zone and no Z: 20:00 is 20:00 wherever the calendar is read; what takes no time has no end."""
    load = events["Dry, load 1: Rice, Egg powder (RAW)"]
    assert span(load) == (at(6, 29, 20), at(7, 1))
    assert b"DTSTART:20270629T200000\r\n" in load.to_ical()
    assert "dtend" not in events["Weigh again, load 1: Rice, Egg powder (RAW)"]
    assert datetime(2027, 6, 1, tzinfo=UTC) == load.DTSTAMP


def test_it_reminds_of_shopping_and_loading(events: dict[str, Event]) -> None:
    """A day before a time, at 18:00 of the day before a whole day, and of nothing else."""
    reminders = {
        summary: [alarm.TRIGGER for alarm in event.walk("VALARM") if isinstance(alarm, Alarm)]
        for summary, event in events.items()
    }
    assert {summary: found for summary, found in reminders.items() if found} == {
        "Buy: Rice, Egg powder (RAW)": [timedelta(hours=-6)],
        "Dry, load 1: Rice, Egg powder (RAW)": [timedelta(days=-1)],
    }
    assert {TaskKind.SHOP.value, TaskKind.DRY.value} == REMINDED_OF


def test_an_event_keeps_its_name_when_it_moves(data: TripData) -> None:
    """Moved by a week and built on another day, the plan has the same UIDs; another book's are others."""

    def uids(book: str) -> list[str]:
        return re.findall(r"UID:(\S+)", trip_calendar(data, book).decode())

    before = uids("The book")
    data["day"] = "2027-06-02"
    data["plan"][0]["starts"] = data["plan"][0]["ends"] = "2027-06-21"
    assert uids("The book") == before
    assert not set(uids("Another book")) & set(before)


def test_the_calendar_says_all_that_the_plan_says(data: TripData, events: dict[str, Event]) -> None:
    """Each task is there once, with its grams where it has some, and what trip it is for."""
    assert len(events) == len(data["plan"]) + 1
    said = str(events["Buy: Rice, Egg powder (RAW)"]["description"])
    assert said == f"434 g\nFor {data['name']}, from 2027-07-02."


def test_text_and_data_agree(data: TripData) -> None:
    """The text keeps to 80 columns and has the data's legs, fuel, shortfalls, times and RAW."""
    checked = checked_trip()
    text = plain_trip(checked.sums, checked.findings, book().household, "foot")
    assert max(map(len, text.splitlines())) <= 80
    flat = " ".join(text.split())
    for leg in data["legs"]:
        assert f"{leg['from']} to {leg['to']}" in flat
        assert f" {leg['carry_ml'] / 1000:.2f} L " in flat
    for short in data["shortfall"]:
        assert f"{short['short_g']:g} g short, to dry at home, buy {short['bought_g']:g} g" in flat
    for words in (
        "gas mix 29 g with margin: 21 g part used + 1 × 100 g whole",
        "start 18:10; pour at 18:15, 8 min; ready 18:25; for Ada",
        "Omelette [RAW]",
        "The containers lack 1.73 L.",
        "3.78 L must be made fit to drink: filter it, chlorinate it, and wait 30 min.",
        "the inner bay, day 2 1.00 L used where it is filled",
        "900 mL must be made fit to drink: filter it, chlorinate it, and wait 30 min.",
        "Tuesday 29 June, 20:00 dry: Rice, Egg powder [RAW], 650 g, load 1, until Thursday 1 July, 0:00",
        "Bo at least 500 kcal",
    ):
        assert words in flat


def test_text_is_in_the_households_units() -> None:
    """130 g are 4.59 oz, rounded up to 4¾; 8,730 mL are 295.2 fl oz, and what cooks pour in cups is more."""
    checked = checked_trip()
    ours = book().household
    text = plain_trip(checked.sums, checked.findings, ours.model_copy(update={"units": Units.US}), "foot")
    assert "4¾ oz short" in text
    [first, _] = leg_rows(checked.sums, ours)
    assert f" {as_typed(first.total.us[0])}  " in text
    assert not re.search(r"\d (g|mL|L)\b", text)
