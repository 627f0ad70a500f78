"""How the files are called that lie beside the site, for those who write them and those who offer them."""

FIELD = "field"
TRIP = "trip-{id}"
"""What the names of printed files begin with: the field booklet's, a trip's."""
TRIPS = "trips"
PACKING, PLAN, CALENDAR = "{id}-packing.csv", "{id}-plan.csv", "{id}-plan.ics"
"""The tables and the calendar of a trip, in a folder of their own."""


def booklet(name: str, size: str) -> str:
    """Name a plain booklet: `field-a6.pdf`."""
    return f"{name}-{size}.pdf"


def imposed(name: str, size: str, sheet: str) -> str:
    """Name a booklet to fold, on a sheet of paper: `field-a6-imposed-a4.pdf`."""
    return f"{name}-{size}-imposed-{sheet}.pdf"


def labels(name: str, stock: str) -> str:
    """Name the labels of a dish's or trip's packs: `trip-lake-labels-a4-8.pdf`."""
    return f"{name}-labels-{stock}.pdf"
