"""The files of planned trips: packing list and plan as tables, and the plan as a calendar."""

from collections.abc import Mapping
from pathlib import Path

from packlarder.faults import Fault
from packlarder.publish.file_names import CALENDAR, PACKING, PLAN, TRIPS
from packlarder.publish.trip_calendar import trip_calendar
from packlarder.publish.trip_tables import packing_table, plan_table
from packlarder.sheets.trip_data_records import TripData


def build_trip_files(trips: Mapping[str, TripData], book: str, *, out: Path) -> tuple[Fault, ...]:
    """Write the files of trips into `out`; `book` is the book's title. Finds nothing wrong."""
    folder = out / TRIPS
    folder.mkdir(parents=True, exist_ok=True)
    for id, trip in trips.items():
        (folder / PACKING.format(id=id)).write_bytes(packing_table(trip).encode())
        (folder / PLAN.format(id=id)).write_bytes(plan_table(trip).encode())
        (folder / CALENDAR.format(id=id)).write_bytes(trip_calendar(trip, book))
    return ()
