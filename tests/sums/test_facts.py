"""The safety facts: how many, how well known, in how many words, and who uses them."""

import re
from collections import Counter

import pytest

from packlarder.figures.facts import FACTS, Fact
from packlarder.figures.figure import Standing

MOST_WORDS = 25  # a rule or note says what it says in at most 25 words


def test_none_was_lost() -> None:
    """240 facts in 15 topics, numbered without a gap within each topic."""
    assert len(FACTS) == 240
    assert len({fact.topic for fact in FACTS.values()}) == 15
    topics = Counter(fact.id.split("-")[0] for fact in FACTS.values())
    assert list(FACTS) == [f"{topic}-{number:02}" for topic, size in topics.items() for number in range(1, size + 1)]


def test_how_well_they_are_known() -> None:
    """80 read on the body's own page, 120 on a copy, 24 from memory, 13 worked out, 3 practice: none rose unseen."""
    assert Counter(fact.standing for fact in FACTS.values()) == {
        Standing.PUBLISHED: 80,
        Standing.COPY: 120,
        Standing.FROM_MEMORY: 24,
        Standing.COMPUTED: 13,
        Standing.COMMON_PRACTICE: 3,
    }


@pytest.mark.parametrize("fact", FACTS.values(), ids=lambda fact: fact.id)
def test_a_fact_is_a_short_sentence_with_a_source(fact: Fact) -> None:
    """A fact has at most 25 words, ends as a sentence, names who says so, and has a page only if it was read there."""
    assert len(fact.text.split()) <= MOST_WORDS
    assert fact.text.endswith(".")
    assert fact.body
    assert fact.source.startswith((fact.body, "worked out from "))
    assert not re.search(r"T[0-9]+-[0-9]+", fact.source), "a reader does not know our rows"
    assert fact.page == "" or fact.page.startswith("http")
    assert fact.page == "" or fact.standing is Standing.PUBLISHED
    assert not re.search(r"[*]|\bsame\b.*chart|\d [FC]\b", fact.figures)


@pytest.mark.parametrize(
    ("fact", "figures"),
    [
        ("T1-06", "160 °F / 71.1 °C"),
        ("T2-02", "2 h; 1 h if air above 90 °F (32 °C)"),
        ("T7-02", "soak at least 5 h; boil at least 30 min"),
        ("T8-02", "1 min; 3 min above 6,500 ft"),
        ("T12-01", "under 12 months"),
    ],
)
def test_figures_that_rules_lean_on(fact: str, figures: str) -> None:
    """The figures of facts that stop a build are pinned to the letter."""
    assert FACTS[fact].figures == figures
