"""The command `show trip`: one trip, worked out, as text or data."""

import json

from packlarder.cli import texts
from packlarder.cli.console import print_json
from packlarder.cli.options import Options
from packlarder.cli.plain_trip import plain_trip
from packlarder.cli.stages import edition_of
from packlarder.cli.trip_asked import trip_asked_for
from packlarder.sheets.dish import day as printed_day
from packlarder.sheets.trip_data import trip_data


def show_trip(options: Options) -> int:
    """Print a trip; 1 if it, or what it uses, is wrong, so that it can not be worked out or is not safe."""
    asked = trip_asked_for(options)
    if asked is None:
        return 1
    opened, trip = asked
    edition, household = edition_of(opened.read.files, opened.day), opened.book.household
    if options.json:
        data = trip_data(trip.sums, trip.findings, edition=edition, day=opened.day.isoformat())
        print_json(json.dumps(data, ensure_ascii=False, indent=2))
    else:
        foot = texts.FOOT.format(title=household.title, edition=edition, day=printed_day(opened.day))
        print(plain_trip(trip.sums, trip.findings, household, foot), end="")
    return 0
