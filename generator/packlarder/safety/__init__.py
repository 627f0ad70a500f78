"""The safety rules: what applies to a component or dish, what is to be said, and who says so.

Opens nothing, prints nothing.
"""

from packlarder.safety.case import DishCase
from packlarder.safety.rule import ComponentRule, DishRule, Finding, LarderRule, Rule, RunRule, Shows, Subject, TripRule
from packlarder.safety.rules import (
    RULES,
    check_component,
    check_dish,
    check_larder,
    check_larger,
    check_run,
    check_trip,
    faults_of,
    general_cautions,
    in_the_booklet,
    on_the_page,
)

__all__ = [
    "RULES",
    "ComponentRule",
    "DishCase",
    "DishRule",
    "Finding",
    "LarderRule",
    "Rule",
    "RunRule",
    "Shows",
    "Subject",
    "TripRule",
    "check_component",
    "check_dish",
    "check_larder",
    "check_larger",
    "check_run",
    "check_trip",
    "faults_of",
    "general_cautions",
    "in_the_booklet",
    "on_the_page",
]
