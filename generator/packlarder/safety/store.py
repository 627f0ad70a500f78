"""From the dryer to the shelf: what shares a run, what goes into a pack without oxygen, what is kept too long."""

from collections.abc import Iterator, Sequence

from packlarder.book.batch import DrynessTest, Sachet
from packlarder.book.draw import Deed
from packlarder.book.stock import Together
from packlarder.faults import Place, Severity, Spot
from packlarder.figures.dryness import Drying
from packlarder.figures.kinds import Group, HomeDrying, Kind
from packlarder.figures.margins import DRY_WITHOUT_OXYGEN
from packlarder.figures.temperatures import Authority
from packlarder.measure import in_celsius, in_fahrenheit, in_percent
from packlarder.reckon.batch_records import BatchSums, FilledContainer
from packlarder.reckon.drying import Verdict
from packlarder.safety.heat import groups_of, perishable, raw_kinds, temperature_of
from packlarder.safety.hit import Hit
from packlarder.safety.limits import HEAT_STEP, HEAT_STEP_POULTRY, SAME_DEGREES
from packlarder.safety.rule import LarderRule, RunRule
from packlarder.safety.sachets import oily
from packlarder.safety.store_case import LarderCase, RunCase, groups, heated_to_c, known_dry, water_left, went_in_cooked

_MEAT_OR_FISH = frozenset({Group.MEAT, Group.FISH})
_EGG_OR_MILK = frozenset({Group.EGG, Group.MILK})
_BIRDS = frozenset({Kind.POULTRY, Kind.GAME_BIRD})
_SNAPS_OR_NOT = frozenset({Group.FRUIT, Group.VEGETABLE})


def raw_with_cooked(case: RunCase) -> Iterator[Hit]:
    """Find raw and cooked food in one run, where the household lets that pass."""
    if case.household.larder.raw_with_cooked is Together.CAUTION:
        yield from _both(case)


def raw_never_with_cooked(case: RunCase) -> Iterator[Hit]:
    """Find raw and cooked food in one run, where the household forbids it."""
    if case.household.larder.raw_with_cooked is Together.NEVER:
        yield from _both(case)


def _both(case: RunCase) -> Iterator[Hit]:
    """Find raw and other food that shared a dryer; what was only mixed or filled on one day did not."""
    others = [batch for batch in case.run.kept if not batch.component.raw]
    if case.run.model.dryer and case.raw and others:
        raw, other = case.raw[0], others[0]
        there = Place(file=other.place.file, path=other.place.path, spot=Spot.KEY)
        yield case.hit(raw, "", there, other=other.component.model.name)


def batch_without_heat_step(case: RunCase) -> Iterator[Hit]:
    """Find raw meat or fish in a warm-air dryer that was not heated to what the heat step and its authority ask."""
    for batch in _in_warm_air(case):
        if _MEAT_OR_FISH & groups_of(raw_kinds(batch.component)):
            asked_c, reached_c = _heat_step_c(batch, case.household.authority), heated_to_c(batch)
            if reached_c is None or reached_c < asked_c - SAME_DEGREES.value:
                degrees = f"{in_celsius(asked_c)} ({in_fahrenheit(asked_c)})"
                yield case.hit(batch, "treated" if reached_c is not None else "", degrees=degrees)


def not_cooked_through(case: RunCase) -> Iterator[Hit]:
    """Find meat or fish that is said to have gone in cooked, in a run that says it was heated less than that."""
    for batch in case.run.kept:
        reached_c = heated_to_c(batch)
        if reached_c is None or not (went_in_cooked(batch) and _MEAT_OR_FISH & groups(batch)):
            continue
        step_c = (HEAT_STEP_POULTRY if _BIRDS & batch.component.kinds else HEAT_STEP).value
        if reached_c < step_c - SAME_DEGREES.value:
            degrees = f"{in_celsius(step_c)} ({in_fahrenheit(step_c)})"
            yield case.hit(batch, "treated", reached=in_celsius(reached_c), degrees=degrees)


def _heat_step_c(batch: BatchSums, authority: Authority) -> float:
    """Give how hot raw meat becomes before warm air: once dry, germs stand more heat than in a pan."""
    step = HEAT_STEP_POULTRY if _BIRDS & raw_kinds(batch.component) else HEAT_STEP
    asked = temperature_of(batch.component, authority)
    return step.value if asked is None else max(step.value, asked.temp_c)


def raw_egg_or_milk_in_warm_air(case: RunCase) -> Iterator[Hit]:
    """Find egg or milk that went uncooked into a warm-air dryer."""
    for batch in _in_warm_air(case):
        if _EGG_OR_MILK & groups(batch) and not went_in_cooked(batch):
            yield case.hit(batch)


def _in_warm_air(case: RunCase) -> Sequence[BatchSums]:
    return case.run.kept if case.drying is Drying.AIR_DRIED else ()


def not_for_this_dryer(case: RunCase) -> Iterator[Hit]:
    """Find food that is not dried at home in this way, or not uncooked, and say why.

    Meat and fish for warm air are left to the rule about the heat step.
    """
    for batch in case.run.kept if case.drying is not None else ():
        for kind in sorted(batch.component.kinds) if len(batch.component.kinds) == 1 else ():
            rules = kind.rules
            suits = rules.freeze_dry if case.drying is Drying.FREEZE_DRIED else rules.air_dry
            uncooked = kind in batch.component.uncooked and rules.group not in _MEAT_OR_FISH
            if suits is HomeDrying.NO:
                yield case.hit(batch, why=rules.caution or "it does not dry well")
            elif suits is HomeDrying.COOKED_FIRST and uncooked:
                why = f"it is cooked before it is dried. {rules.caution}".rstrip(". ")
                yield case.hit(batch, why=why, facts=rules.facts)


def not_tested(case: RunCase) -> Iterator[Hit]:
    """Find food dried at home that was put into containers before anybody could tell whether it is dry."""
    for batch in case.run.kept:
        if batch.containers and batch.verdict is Verdict.CAN_NOT_TELL:
            yield case.hit(batch, "put in")


def too_moist_without_oxygen(case: RunCase) -> Iterator[Hit]:
    """Find an oxygen absorber beside food that is not known to be dry enough for it."""
    for batch, container in case.filled():
        if _without_oxygen(container) and not _dry_enough(batch):
            yield _at_container(batch, container, limit=in_percent(DRY_WITHOUT_OXYGEN.value))


def _without_oxygen(container: FilledContainer) -> bool:
    return container.filled.sachet is Sachet.OXYGEN_ABSORBER


def _dry_enough(batch: BatchSums) -> bool:
    """Tell whether a batch is dry by its test, by its weights, and for fruit and vegetables by its snap."""
    water = water_left(batch)
    if not known_dry(batch) or (water is not None and water > DRY_WITHOUT_OXYGEN.value):
        return False
    bends = _SNAPS_OR_NOT & groups(batch) and batch.component.model.dried is Drying.AIR_DRIED
    return not bends or DrynessTest.SNAPS_COLD in batch.model.detail.tested


def too_fat_without_oxygen(case: RunCase) -> Iterator[Hit]:
    """Find an oxygen absorber beside food with more oil than such packs are for, or beside jerky."""
    for batch, container in case.filled():
        is_jerky = batch.component.model.dried is Drying.AIR_DRIED and Group.MEAT in groups(batch)
        if _without_oxygen(container) and (is_jerky or oily(batch.component)):
            yield _at_container(batch, container)


def moist_in_vacuum(case: RunCase) -> Iterator[Hit]:
    """Find food that spoils in a vacuum jar without its own test of dryness."""
    for batch, container in case.filled():
        if container.filled.vacuum and perishable(batch.component.kinds) and not known_dry(batch):
            yield _at_container(batch, container)


def vacuum_is_no_preservation(case: RunCase) -> Iterator[Hit]:
    """Say of a vacuum jar what it does not do, once for each batch."""
    for batch in case.run.kept:
        if any(container.filled.vacuum for container in batch.containers):
            yield case.hit(batch, "put in")


def freeze_dried_keeping(case: RunCase) -> Iterator[Hit]:
    """Say of home freeze-dried food that nobody knows how long it keeps."""
    for batch in case.run.kept:
        if case.drying is Drying.FREEZE_DRIED and batch.containers:
            yield case.hit(batch, "put in")


def _at_container(batch: BatchSums, container: FilledContainer, **words: str) -> Hit:
    key = "sachet" if container.filled.sachet else "vacuum"
    words = {"component": batch.component.model.name, "mark": str(container.mark), **words}
    return Hit(places=(container.place.at(key), batch.place.at("tested")), words=words)


def past_its_use_by(case: LarderCase) -> Iterator[Hit]:
    """Find containers that are past their use-by day."""
    for standing in case.larder.standing:
        if standing.past(case.larder.on):
            yield case.hit(standing)


def given_away(case: LarderCase) -> Iterator[Hit]:
    """Say of what was given away what the law may ask, once."""
    for standing in (*case.larder.standing, *case.larder.emptied):
        if any(drawn.deed is Deed.GAVE_AWAY for drawn in standing.drawn):
            yield case.hit(standing)
            return


RULES = (
    RunRule(
        id="raw-egg-or-milk-in-warm-air", severity=Severity.ERROR, facts=("T4-27",), check=raw_egg_or_milk_in_warm_air
    ),
    RunRule(
        id="batch-without-heat-step", severity=Severity.ERROR, facts=("T4-01", "T4-03"), check=batch_without_heat_step
    ),
    RunRule(id="not-cooked-through", severity=Severity.ERROR, facts=("T4-01",), check=not_cooked_through),
    RunRule(id="raw-never-with-cooked", severity=Severity.ERROR, facts=("T3-17",), check=raw_never_with_cooked),
    RunRule(id="raw-with-cooked", severity=Severity.NOTE, facts=("T3-17",), check=raw_with_cooked),
    RunRule(
        id="too-moist-without-oxygen", severity=Severity.ERROR, facts=("T5-08", "T5-09"), check=too_moist_without_oxygen
    ),
    RunRule(
        id="too-fat-without-oxygen", severity=Severity.ERROR, facts=("T5-08", "T5-09"), check=too_fat_without_oxygen
    ),
    RunRule(id="not-tested", severity=Severity.WARNING, facts=("T4-13", "T5-23"), check=not_tested),
    RunRule(id="moist-in-vacuum", severity=Severity.WARNING, facts=("T5-10", "T5-11"), check=moist_in_vacuum),
    RunRule(id="not-for-this-dryer", severity=Severity.WARNING, facts=("T4-26", "T4-27"), check=not_for_this_dryer),
    RunRule(
        id="vacuum-is-no-preservation",
        severity=Severity.NOTE,
        facts=("T5-10", "T5-11"),
        check=vacuum_is_no_preservation,
    ),
    RunRule(id="freeze-dried-keeping", severity=Severity.NOTE, facts=("T5-20",), check=freeze_dried_keeping),
    LarderRule(id="past-its-use-by", severity=Severity.NOTE, facts=("T5-13", "T5-25"), check=past_its_use_by),
    LarderRule(id="given-away", severity=Severity.NOTE, facts=("T2-04", "T2-09"), check=given_away),
)
