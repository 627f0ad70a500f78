"""From rules that apply to what a page shows and what stops a build."""

import time

import pytest
from tests.rules.build import DISH, FUEL_MARGIN, Case, build

from packlarder.faults import Fault, Severity, Spot, has_errors
from packlarder.reckon.dish import usual_conditions, work_out_each
from packlarder.reckon.settled import settle
from packlarder.safety import (
    DishCase,
    Finding,
    Shows,
    check_dish,
    check_larger,
    faults_of,
    general_cautions,
    in_the_booklet,
    on_the_page,
)

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


def test_booklet_shows_four() -> None:
    """The booklet shows at most four: no tasting, clean hands, no honey for infants, then how hot the egg must get."""
    findings = build(PANCAKES).findings()
    shown = [finding.rule.id for finding in in_the_booklet(findings)]
    assert shown == ["no-tasting-raw", "hands-after-raw", "honey-and-infants", "egg-temperature"]
    assert "sachet-in-pack" in {finding.rule.id for finding in in_the_booklet(findings, most=5)}


def test_allergens_take_no_room_among_the_cautions() -> None:
    """The sheet prints allergens and traces itself, so that no caution makes way for them."""
    findings = build("""
components:
  nut-bar: {name: Nut bar, was: almonds, dried: not dried, contains: [almond], may contain: [milk], form: bar}
dish: {parts: [nut bar: 20 g], steps: [Eat the nut bar.]}
""").findings()
    assert {"allergens", "traces"} <= {finding.rule.id for finding in on_the_page(findings)}
    assert in_the_booklet(findings, most=99) == ()


def test_people_at_risk_are_told_on_the_page_and_at_the_front() -> None:
    """A RAW dish's page says it beside the dish; the booklet has it among its general cautions."""
    assert "people-at-risk" in {finding.rule.id for finding in on_the_page(build(PANCAKES).findings())}
    assert "people-at-risk" in {rule.id for rule in general_cautions()}


def test_source_follows_the_authority() -> None:
    """Who follows Health Canada reads its name beside its figure."""
    case = build("book: {authority: Health Canada}" + PANCAKES)
    (egg,) = [finding for finding in case.findings() if finding.rule.id == "egg-temperature"]
    assert egg.source.startswith("Health Canada")
    assert "Health Canada" in egg.text


def for_more(beef_g: int, minutes: int = 25) -> tuple[Finding, ...]:
    """Give what only more than two people bring to a pot of beef that simmers."""
    case = build(
        f"""
        dish:
          parts: [beef crumbles: {beef_g} g]
          steps: [soak: beef crumbles, drain: into the pot, {{simmer: beef crumbles, in: 900 mL, for: {minutes} min}}]
        """
    )
    assert case.plan is not None
    each = work_out_each(settle(case.plan, usual_conditions(case.household)), range(1, 13), FUEL_MARGIN)
    assert "over-two-hours" not in case.fired()  # for two it takes well under an hour
    return check_larger(DishCase(case.plan, case.sums, case.household), each)


def test_large_groups_are_told_once_from_how_many_on() -> None:
    """Rounds in one small pot take over two hours some day; the caution names the number, and two are told nothing."""
    (found,) = for_more(200)
    number = int(found.text.split()[1])
    assert 2 < number <= 12
    assert found.text.startswith(f"From {number} servings on this takes over 2")
    assert found.severity is Severity.NOTE
    (earlier,) = for_more(400)  # twice the food fills the pot for half the people
    assert int(earlier.text.split()[1]) < number


def test_small_pots_for_large_groups() -> None:
    """A dish that twelve eat within two hours has no such note."""
    assert for_more(10, minutes=5) == ()


def test_egg_for_many_is_mixed_by_shares() -> None:
    """Leek fried in rounds of 5 min keeps mixed egg waiting: told once, from the first servings that are too many."""
    case = build(
        "dish: {parts: [egg powder: 40 g, leek rings: 20 g], steps: [moisten: leek rings, mix: egg powder,"
        " {fry: leek rings, pot: pan, for: 4 min}, {fry: egg powder, pot: pan, for: 5 min}]}"
    )
    assert case.plan is not None
    assert "egg-by-shares" not in case.fired()
    each = work_out_each(settle(case.plan, usual_conditions(case.household)), range(1, 13), FUEL_MARGIN)
    told = check_larger(DishCase(case.plan, case.sums, case.household), each)
    [egg] = [finding for finding in told if finding.rule.id == "egg-by-shares"]
    first = int(egg.words["servings"])
    assert first > 2
    assert egg.text.startswith(f"From {first} servings on mix raw egg powder a share at a time")


def test_what_holds_for_the_usual_servings_is_not_told_again() -> None:
    """Beans that boil for 130 min are told by the dish's own findings."""
    case = build("dish: {parts: [chicken: 9 g], steps: [soak: chicken, {boil: chicken, in: 1 L, for: 130 min}]}")
    assert case.plan is not None
    assert "over-two-hours" in case.fired()
    each = work_out_each(settle(case.plan, usual_conditions(case.household)), (2, 3), FUEL_MARGIN)
    assert check_larger(DishCase(case.plan, case.sums, case.household), each) == ()


@pytest.mark.parametrize("text", [STEEPED_EGG, PANCAKES])
def test_dish_without_sums_is_checked_too(text: str) -> None:
    """A dish that could not be worked out is followed all the same; only its clock and temperatures are missing."""
    case = build(text)
    assert case.plan is not None
    without = check_dish(DishCase(case.plan, None, case.household))
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
            check_dish(DishCase(case.plan, case.sums, case.household))
        spent.append(time.process_time() - start)
    assert min(spent) < 0.5
