"""The drying before a trip: raw food that has to lie in one load with other food."""

from collections.abc import Iterator

from packlarder.faults import Severity
from packlarder.safety.case import listed
from packlarder.safety.hit import Hit
from packlarder.safety.rule import Rule, TripRule
from packlarder.safety.trip_case import TripCase


def raw_shares_a_load(case: TripCase) -> Iterator[Hit]:
    """Find loads in which raw food lies with other food; a household that forbids it gets none."""
    for load in case.sums.stores.loads:
        lying = [one.component for one in load.on_the_trays]
        raw = [one.model.name for one in lying if one.raw]
        other = [one.model.name.lower() for one in lying if not one.raw]
        if raw and other:
            yield case.hit("starts", load=str(load.number), raw=listed(raw), other=listed(other))


RULES: tuple[Rule, ...] = (
    TripRule(id="raw-shares-a-load", severity=Severity.NOTE, facts=("T3-17",), check=raw_shares_a_load),
)
