"""Figures of the days before a trip: how long drying takes, what comes before and after it, when people are about."""

from collections.abc import Mapping
from types import MappingProxyType

from packlarder.figures.dryness import Drying
from packlarder.figures.figure import Figure, Standing

DRYING_HOURS: Mapping[Drying, Figure] = MappingProxyType(
    {
        Drying.FREEZE_DRIED: Figure(
            name="a freeze-drying run, where no run of yours and no figure of the dryer tells",
            value=48,
            unit="h",
            source="Kansas State University Research and Extension: 24 to 48 h for a cycle; the longer",
            standing=Standing.PUBLISHED,
            low=24,
            high=48,
        ),
        Drying.AIR_DRIED: Figure(
            name="a run of a warm-air dryer, where no run of yours and no figure of the dryer tells",
            value=24,
            unit="h",
            source="half a day for thin vegetables, a day and a half for juicy fruit; our choice between",
            standing=Standing.COMMON_PRACTICE,
            low=6,
            high=36,
        ),
    }
)
REST_HOURS: Mapping[Drying, Figure] = MappingProxyType(
    {
        Drying.FREEZE_DRIED: Figure(
            name="rest of a freeze-dryer between two runs, where the dryer says nothing",
            value=4,
            unit="h",
            source="the ice thaws and runs off, trays are washed; our choice",
            standing=Standing.COMMON_PRACTICE,
        ),
        Drying.AIR_DRIED: Figure(
            name="rest of a warm-air dryer between two runs, where the dryer says nothing",
            value=1,
            unit="h",
            source="trays are emptied, washed and filled; our choice",
            standing=Standing.COMMON_PRACTICE,
        ),
    }
)
SECOND_WEIGHING = Figure(
    name="time in the dryer between the first and the second weighing",
    value=2,
    unit="h",
    source="two hours more and no lighter: the household's own test of dryness",
    standing=Standing.COMMON_PRACTICE,
)
CONDITIONING = Figure(
    name="conditioning of air-dried fruit and vegetables before they are packed",
    value=10,
    unit="days",
    source="7 to 10 days (T4-15), 4 to 10 (T4-16), 1 to 2 weeks in all (T4-17); a longer one of what all allow",
    standing=Standing.COPY,
    low=4,
    high=14,
)
PACKED_BEFORE = Figure(
    name="packs are filled before departure by",
    value=1,
    unit="day",
    source="our choice: nothing is packed in a hurry, and what is missing is noticed in time",
    standing=Standing.COMMON_PRACTICE,
)
FROZEN_FROM = Figure(
    name="hour of the evening before loading from which food for the freeze-dryer is frozen",
    value=20,
    unit="h of the day",
    source="a night in the freezer; our choice",
    standing=Standing.COMMON_PRACTICE,
)
LOADED_AT = Figure(
    name="hour at which a dryer is loaded, and from which packs are filled",
    value=8,
    unit="h of the day",
    source="our choice",
    standing=Standing.COMMON_PRACTICE,
)
UP_FROM = Figure(
    name="hour from which somebody is about to load or weigh, where time is short",
    value=7,
    unit="h of the day",
    source="our choice",
    standing=Standing.COMMON_PRACTICE,
)
UP_UNTIL = Figure(
    name="hour before which the last load or weighing of a day begins, where time is short",
    value=22,
    unit="h of the day",
    source="our choice",
    standing=Standing.COMMON_PRACTICE,
)
