"""The command `show trip`: one trip, worked out, as text or data."""

import json

from packlarder.cli import texts
from packlarder.cli.console import print_json
from packlarder.cli.options import Options
from packlarder.cli.plain_trip import plain_trip
from packlarder.cli.stages import edition_of
from packlarder.cli.trip_asked import trip_worked_out
from packlarder.sheets.dish import day as printed_day
from packlarder.sheets.trip_data import trip_data


def show_trip(options: Options) -> int:
    """Print a trip; 1 if it, or what it uses, is wrong.

    One that could be worked out all the same is printed, for that is what it is mended by, and says at both its ends
    that it does not hold; other programs get no data of it.
    """
    opened, trip, sound = trip_worked_out(options)
    if opened is None or trip is None or (options.json and not sound):
        return 1
    edition, household = edition_of(opened.read.files, opened.day), opened.book.household
    if options.json:
        data = trip_data(trip.sums, trip.findings, edition=edition, day=opened.day.isoformat())
        print_json(json.dumps(data, ensure_ascii=False, indent=2))
        return 0
    foot = texts.FOOT.format(title=household.title, edition=edition, day=printed_day(opened.day))
    plan = plain_trip(trip.sums, trip.findings, household, foot)
    print(plan if sound else f"{texts.NOT_FIT}\n\n{plan}\n{texts.NOT_FIT}\n", end="")
    return int(not sound)
