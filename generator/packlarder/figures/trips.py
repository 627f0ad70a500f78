"""Figures of trips: when people eat, who carries, what wind costs, what a day of food should come to."""

from packlarder.figures.figure import Figure, Standing

CARRIES_FROM = Figure(
    name="age from which somebody carries as much as others, unless the trip says",
    value=12,
    unit="years",
    source="our choice; a child carries what it likes to",
    standing=Standing.COMMON_PRACTICE,
)
ENERGY_A_DAY = Figure(
    name="energy of food to plan for a grown person on the move",
    value=2250,
    unit="kcal a day",
    source="rationing of outdoor schools; measured hard work in the field takes 3,400 to 6,300",
    standing=Standing.COPY,
    low=2250,
    high=4500,
)
FOOD_A_DAY = Figure(
    name="food to plan for a grown person on the move",
    value=500,
    unit="g a day",
    source="rationing of outdoor schools",
    standing=Standing.COPY,
    low=500,
    high=1100,
)
