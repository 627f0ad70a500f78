"""Every rule has a case that fires it and one that must not; both are found by walking."""

from pathlib import Path

import pytest
from tests.rules.build import CASES, case_files, read_case

from packlarder.measure import NO_BREAK
from packlarder.reckon.records import DishPlan
from packlarder.safety import RULES, DishRule, Rule, Shows
from packlarder.safety.texts import MOST_WORDS

FIRES, QUIET = "fires", "quiet"
RULE_OF = {rule.id: rule for rule in RULES}


def name_of(path: Path) -> str:
    """Name a case by its rule and file."""
    return path.relative_to(CASES).with_suffix("").as_posix()


def plain(text: str) -> str:
    """Give a text as an author of cases types it: with ordinary blanks between a number and its unit."""
    return text.replace(NO_BREAK, " ")


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_every_rule_has_both_cases(rule: Rule) -> None:
    """A rule without a case that fires it, or without one that must not, is not tested."""
    names = {path.stem.split("-")[0] for path in (CASES / rule.id).glob("*.yaml")}
    assert names == {FIRES, QUIET}


def test_every_case_has_a_rule() -> None:
    """A folder of cases that no rule bears the name of is a case that nobody runs."""
    assert {path.parent.name for path in case_files()} == set(RULE_OF)


@pytest.mark.parametrize("path", case_files(), ids=name_of)
def test_case(path: Path) -> None:
    """A case that is called `fires` fires its rule and says what it should; one called `quiet` does not."""
    rule, case = RULE_OF[path.parent.name], read_case(path)
    hits = case.hits(rule)
    if path.stem.startswith(QUIET):
        assert hits == []
        return
    assert hits, "the rule keeps still"
    found = [finding for finding in case.findings() if finding.rule is rule]
    assert len(found) == len(hits)
    for finding in found:
        assert finding.places
        assert "{" not in finding.text
        assert plain(case.says) in plain(finding.text)
        if rule.shows is not Shows.PAGE or finding.severity == "note":
            assert len(finding.text.split()) <= MOST_WORDS


def test_what_only_raw_food_brings_keeps_still_without_any() -> None:
    """Rules that no dish without RAW is asked would keep still there anyway, in every case there is."""
    without = [case for case in map(read_case, case_files()) if case.plan is not None and not _holds_raw(case.plan)]
    of_raw = [rule for rule in RULES if isinstance(rule, DishRule) and rule.of_raw]
    assert len(without) > 10
    assert len(of_raw) > 10
    assert [rule.id for rule in of_raw for case in without if case.hits(rule)] == []


def _holds_raw(plan: DishPlan) -> bool:
    return any(part.component.raw for part in plan.parts)
