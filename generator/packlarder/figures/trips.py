"""Figures of trips: when people eat, who carries, what wind costs, what a day of food should come to."""

from packlarder.figures.figure import Figure, Standing

CARRIES_FROM = Figure(
    name="age from which somebody carries as much as others, unless the trip says",
    value=12,
    unit="years",
    source="our choice; a child carries what it likes to",
    standing=Standing.COMMON_PRACTICE,
)
