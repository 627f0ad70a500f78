"""From rules that apply to what a page shows and what stops a build."""

import time

import pytest
from tests.rules.build import DISH, Case, build

from packlarder.faults import Fault, Severity, Spot, has_errors
from packlarder.safety import Shows, check_dish, faults_of, in_the_booklet, on_the_page

STEEPED_EGG = """
dish:
  parts: [egg powder: 20 g, noodles: 100 g]
  steps: [{pour over: [egg powder, noodles], with: 500 mL boiling water, for: 10 min}]
"""
PANCAKES = """
dish:
  parts: [egg powder: 20 g, flour: 100 g, milk powder: 20 g, honey: 20 g]
  packs: [{holds: [egg powder, flour, milk powder], sachet: yes}]
  steps: [mix: [egg powder, flour, milk powder], {fry: flour, for: 6 min}, Eat with honey.]
"""


def fault(case: Case, code: str) -> Fault:
    """Give the one fault with a code."""
    (found,) = [one for one in faults_of(case.findings()) if one.code == code]
    return found


def test_raw_steeped_stops_the_build_and_names_both_places() -> None:
    """Something raw in a steeped dish is an error at the step, which names the part and its component as well."""
    found = fault(build(STEEPED_EGG), "raw-steeped")
    assert found.severity is Severity.ERROR
    assert (found.place.file, found.place.path, found.place.spot) == (
        f"dishes/{DISH}.yaml",
        ("steps", 0, "pour over"),
        Spot.KEY,
    )
    assert [(place.file, place.path) for place in found.also] == [
        (f"dishes/{DISH}.yaml", ("parts", 0, "egg powder")),
        ("components/egg-powder.yaml", ()),
    ]


def test_raw_heated_dry_stops_the_build_and_names_both_places() -> None:
    """Raw powder fried dry is an error at the step, which names the component as well."""
    found = fault(build("dish: {parts: [flour: 9 g], steps: [{fry: flour, for: 9 min}]}"), "raw-heated-dry")
    assert found.place.path == ("steps", 0, "fry")
    assert found.also[-1].file == "components/flour.yaml"
    assert has_errors([found])


def test_raw_in_a_pack_stops_the_build_and_names_both_places() -> None:
    """RAW in a pack with ready food is an error at the pack, which names both parts and the component."""
    found = fault(
        build(
            """
        dish:
          parts: [egg powder: 20 g, cheese: 10 g, leek rings: 5 g]
          packs: [[leek rings, [egg powder, cheese]]]
          steps: [mix: egg powder, {fry: egg powder, for: 5 min}, soak: leek rings]
        """
        ),
        "raw-pack-shared",
    )
    assert found.place.path == ("packs", 0, 1)  # the pack inside the pack: the second thing in it
    assert [place.path for place in found.also] == [("parts", 0, "egg powder"), ("parts", 1, "cheese"), ()]


def test_one_slip_one_error() -> None:
    """Egg that is steeped with noodles is one error about the egg, not one about all it touched as well."""
    errors = [one.code for one in faults_of(build(STEEPED_EGG).findings()) if one.severity is Severity.ERROR]
    assert errors == ["raw-steeped"]


def test_notes_are_no_faults() -> None:
    """A sound dish has notes to show and nothing to mend."""
    findings = build(PANCAKES).findings()
    assert findings
    assert faults_of(findings) == ()


def test_general_cautions_stand_elsewhere() -> None:
    """A dish's own page shows what is its own; what holds for all stands at the front."""
    findings = build(PANCAKES).findings()
    shown = {finding.rule.shows for finding in on_the_page(findings)}
    assert Shows.FRONT in {finding.rule.shows for finding in findings}
    assert Shows.FRONT not in shown


def test_gravest_first() -> None:
    """On a page errors stand before warnings, and those before notes."""
    order = [Severity.ERROR, Severity.WARNING, Severity.NOTE]
    shown = [finding.severity for finding in on_the_page(build(STEEPED_EGG).findings())]
    assert shown == sorted(shown, key=order.index)
    assert set(shown) == set(order)  # the noodles are only steeped: a warning


def test_booklet_shows_three() -> None:
    """The booklet shows at most three, those that a cook needs most: no tasting, the sachet, the temperature."""
    shown = [finding.rule.id for finding in in_the_booklet(build(PANCAKES).findings())]
    assert shown == ["no-tasting-raw", "sachet-in-pack", "egg-temperature"]


def test_source_follows_the_authority() -> None:
    """Who follows Health Canada reads its name beside its figure."""
    case = build("book: {authority: Health Canada}" + PANCAKES)
    (egg,) = [finding for finding in case.findings() if finding.rule.id == "egg-temperature"]
    assert egg.source.startswith("Health Canada")
    assert "Health Canada" in egg.text


@pytest.mark.parametrize("text", [STEEPED_EGG, PANCAKES])
def test_dish_without_sums_is_checked_too(text: str) -> None:
    """A dish that could not be worked out is followed all the same; only its clock and temperatures are missing."""
    case = build(text)
    assert case.plan is not None
    without = check_dish(case.plan, None, case.household)
    assert {one.code for one in faults_of(without)} == {one.code for one in faults_of(case.findings())}
    assert all("{" not in finding.text for finding in without)


def test_many_dishes_in_little_time() -> None:
    """A thousand dishes take a fraction of a second: twice what was wanted (0.25 s) is the line for slow machines."""
    case = build(PANCAKES)
    assert case.plan is not None
    spent = []
    for _ in range(3):
        start = time.process_time()
        for _ in range(1000):
            check_dish(case.plan, case.sums, case.household)
        spent.append(time.process_time() - start)
    assert min(spent) < 0.5
