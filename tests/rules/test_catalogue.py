"""What the rules say, and who says so."""

import re
from pathlib import Path
from string import Formatter

import pytest

from packlarder.faults import Severity
from packlarder.figures.facts import FACTS
from packlarder.figures.figure import Figure, Standing
from packlarder.figures.trips import BOIL_LONGER_ABOVE
from packlarder.safety import (
    RULES,
    ComponentRule,
    DishRule,
    LarderRule,
    Rule,
    RunRule,
    Shows,
    Subject,
    TripRule,
    general_cautions,
    limits,
)
from packlarder.safety.rule import SURENESS, source_of, standing_of
from packlarder.safety.texts import FIRST_LANGUAGE, MOST_WORDS, RuleText, texts_in

by_id = pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)


def slots(text: str) -> set[str]:
    """Give the names of a text's slots."""
    return {name for _, name, _, _ in Formatter().parse(text) if name is not None}


def test_rules_are_many_and_told_apart() -> None:
    """There are at least thirty rules, and each has an id of its own in small letters and hyphens."""
    ids = [rule.id for rule in RULES]
    assert len(ids) >= 30
    assert len(set(ids)) == len(ids)
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", id) for id in ids)


def test_catalogue_holds_every_rule_and_nothing_else() -> None:
    """Each rule has its texts, and no text is left of a rule that is gone."""
    assert set(texts_in(FIRST_LANGUAGE)) == {rule.id for rule in RULES}


@by_id
def test_text_is_short_and_whole(rule: Rule) -> None:
    """A text has at most 25 words and no slots, and ends with a full stop."""
    assert 1 < len(rule.text.split()) <= MOST_WORDS
    assert slots(rule.text) == set()
    assert rule.text.endswith(".")
    assert rule.title
    assert not rule.title.endswith(".")


@by_id
def test_what_is_to_be_mended_has_message_and_help(rule: Rule) -> None:
    """An error or warning says what is wrong here and the way out; both read on inside a line of the terminal."""
    said = rule.said()
    if rule.severity is Severity.NOTE:
        assert not said.help
        return
    assert said.here
    assert said.help
    assert not said.here.endswith(".")
    assert not said.help.endswith(".")


@by_id
def test_sources(rule: Rule) -> None:
    """Each rule rests on one fact at least, each of them once, and names body, document and standing."""
    assert rule.facts
    assert len(set(rule.facts)) == len(rule.facts)
    assert all(fact.body for fact in rule.sources)
    assert rule.source
    assert isinstance(rule.standing, Standing)


def test_subject_is_the_class() -> None:
    """A rule is about what its check is shown."""
    kinds = {
        Subject.COMPONENT: ComponentRule,
        Subject.DISH: DishRule,
        Subject.RUN: RunRule,
        Subject.LARDER: LarderRule,
        Subject.TRIP: TripRule,
    }
    assert set(kinds) == set(Subject) == {rule.subject for rule in RULES}
    for rule in RULES:
        assert type(rule) is kinds[rule.subject]


def test_general_cautions_are_notes_about_dishes() -> None:
    """What stands once at the front is a note: nothing in a book can mend it."""
    front = general_cautions()
    assert len(front) >= 10
    assert {rule.severity for rule in front} == {Severity.NOTE}
    assert {rule.id for rule in front} == {rule.id for rule in RULES if rule.shows in (Shows.FRONT, Shows.BOTH)}


def test_standing_of_the_least_known() -> None:
    """Several facts are as well known as the least known of them, and each source is named once."""
    published, memory = "T8-03", "T2-16"
    assert FACTS[published].standing is Standing.PUBLISHED
    assert FACTS[memory].standing is Standing.FROM_MEMORY
    assert standing_of((published, memory)) is Standing.FROM_MEMORY
    assert source_of((published, published)) == FACTS[published].source
    assert set(SURENESS) == set(Standing)


def test_language_without_a_file_falls_back() -> None:
    """A book in a language that has no file gets the first language."""
    assert texts_in("xx") == texts_in(FIRST_LANGUAGE)


def test_a_second_language_is_a_second_file(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """A file beside the first is all that a second language needs."""
    (tmp_path / "fr.toml").write_text('[sea-water]\ntitle = "Eau de mer"\ntext = "Jamais."\n', "utf-8")
    monkeypatch.setattr("packlarder.safety.texts.files", lambda _package: tmp_path)
    texts_in.cache_clear()
    assert texts_in("fr")["sea-water"] == RuleText(title="Eau de mer", text="Jamais.")
    texts_in.cache_clear()


def test_limits_have_sources() -> None:
    """Every figure that a rule measures by names where it comes from."""
    figures = [value for value in vars(limits).values() if isinstance(value, Figure)]
    assert len(figures) >= 10
    assert all(figure.source for figure in figures)


@pytest.mark.parametrize(
    ("limit", "fact", "words"),
    [
        (limits.WET_TIME, "T2-18", "2 h"),
        (limits.WET_TIME_HOT, "T2-18", "1 h"),
        (limits.HOT_DAY, "T2-02", "32"),
        (limits.SOAK_TIME, "T6-09", "2 h"),
        (limits.EGG_TIME, "T2-16", "1 h"),
        (limits.RICE_TIME, "T7-08", "1 h"),
        (limits.KIDNEY_SOAK, "T7-02", "5 h"),
        (limits.KIDNEY_BOIL, "T7-02", "30 min"),
        (limits.HEAT_STEP, "T4-01", "meat 160 °F / 71 °C"),
        (limits.HEAT_STEP_POULTRY, "T4-01", "poultry 165 °F / 74 °C"),
        (BOIL_LONGER_ABOVE, "T8-03", "5,000 ft"),
        (limits.COOK_LONGER_ABOVE, "T14-01", "914"),
    ],
    ids=lambda value: value.name if isinstance(value, Figure) else None,
)
def test_limits_are_what_the_facts_say(limit: Figure, fact: str, words: str) -> None:
    """The figure stands in the fact it is taken from."""
    assert words in FACTS[fact].figures
    assert limit.source == FACTS[fact].source


def test_limits_in_the_facts_own_units() -> None:
    """Hours and feet of the facts, in minutes and metres."""
    assert limits.WET_TIME.value == 2 * 60
    assert limits.KIDNEY_SOAK.value == 5 * 60
    assert BOIL_LONGER_ABOVE.value == pytest.approx(5000 * 0.3048, rel=0.02)  # 1,524 m, rounded down
    assert limits.COOK_LONGER_ABOVE.value == pytest.approx(3000 * 0.3048, abs=1)  # 914.4 m
    assert pytest.approx((160 - 32) / 1.8, abs=0.05) == limits.HEAT_STEP.value  # 71.1 °C
    assert pytest.approx((165 - 32) / 1.8, abs=0.05) == limits.HEAT_STEP_POULTRY.value  # 73.9 °C
    # water boils at 99.973 - 3.318 x 3 - 0.0046 x 9 = 89.98 °C at 3,000 m; 10^((99.97 - 89.98) / 19) = 3.36
    boils = 99.973 - 3.318 * limits.LEGUMES_ABOVE.value / 1000 - 0.0046 * (limits.LEGUMES_ABOVE.value / 1000) ** 2
    assert 10 ** ((99.97 - boils) / 19) > 3
