"""Raw stays raw: what must be cooked to be safe, on its way through steps and packs."""

from collections.abc import Iterator

from packlarder.book.book import component_place
from packlarder.book.step import Fate, Verb
from packlarder.faults import Severity
from packlarder.figures.kinds import Group, Kind
from packlarder.reckon.records import PlannedPack, PlannedPart
from packlarder.safety.case import DishCase, listed, spoken
from packlarder.safety.heat import groups_of, raw_kinds, temperature_of
from packlarder.safety.hit import Hit
from packlarder.safety.journey import RawWater, Why
from packlarder.safety.rule import DishRule, Shows
from packlarder.safety.wording import degrees

_IN_PIECES = frozenset({Group.MEAT, Group.FISH})
_POWDER = "powder"


def raw_not_cooked(case: DishCase) -> Iterator[Hit]:
    """Find raw parts that no step cooks."""
    return _uncooked(case, Why.NOT_HEATED)


def raw_steeped(case: DishCase) -> Iterator[Hit]:
    """Find raw parts that get nothing but boiling water poured over them."""
    return _uncooked(case, Why.STEEPED)


def raw_on_heater(case: DishCase) -> Iterator[Hit]:
    """Find raw parts that only a ration heater warms."""
    return _uncooked(case, Why.ON_HEATER)


def raw_stirred_in_late(case: DishCase) -> Iterator[Hit]:
    """Find raw parts that are stirred in after the last step that cooks."""
    return _uncooked(case, Why.STIRRED_IN_LATE)


def raw_heated_dry(case: DishCase) -> Iterator[Hit]:
    """Find raw parts that meet a dry pan or oven before they are wetted right through."""
    return _uncooked(case, Why.HEATED_DRY)


def raw_soaked_short(case: DishCase) -> Iterator[Hit]:
    """Find raw parts that get less time to take their water than they need, before they meet dry heat."""
    for part in case.raw:
        journey, water = case.journey(part), part.component.water
        if water is None or journey.wet_at is None or journey.cooked_at is None:
            continue
        wetting, cooking = case.plan.steps[journey.wet_at], case.plan.steps[journey.cooked_at]
        same_way = wetting.verb is not None and wetting.verb.value == water.way.value
        if same_way and case.minutes(wetting) < water.wait_min and cooking.verb in (Verb.FRY, Verb.BAKE):
            yield case.hit(part, wetting.index, minutes=f"{case.minutes(wetting):g}", wanted=f"{water.wait_min:g}")


def raw_water_drunk(case: DishCase) -> Iterator[Hit]:
    """Find drained water of raw food that somebody drinks."""
    return (_water(case, water) for water in case.trail.bad_waters if water.fate is Fate.DRUNK)


def raw_water_not_boiled(case: DishCase) -> Iterator[Hit]:
    """Find drained water of raw food in a pot that never boils after it."""
    return (_water(case, water) for water in case.trail.bad_waters if water.fate is Fate.INTO_THE_POT)


def raw_touches_ready(case: DishCase) -> Iterator[Hit]:
    """Find ready food that lies together with raw food and is not cooked after that."""
    for part, journey in zip(case.plan.parts, case.trail.journeys, strict=True):
        if journey.touched_by is None:
            continue
        raw = case.plan.parts[journey.touched_by]
        if case.journey(raw).why is None:
            yield case.hit(part, journey.touched_at, component_place(raw.component.id), other=spoken(raw))


def raw_instead(case: DishCase) -> Iterator[Hit]:
    """Find RAW forms that may stand in for a part which the steps do not cook."""
    for part in case.plan.parts:
        if not part.instead or case.journey(part).cooked or part.component.raw:
            continue
        for other in part.instead:
            if other.raw:
                yield case.hit(part, None, component_place(other.id), other=other.model.name)


def raw_pack_shared(case: DishCase) -> Iterator[Hit]:
    """Find packs that hold RAW together with what reaches a mouth unheated."""
    for pack, raw, others in _shared(case):
        eaten_cold = [other for other in others if not case.journey(other).cooked and not other.component.raw]
        if eaten_cold and not _in_pieces(raw):
            yield _pack(case, pack, raw, eaten_cold)


def raw_pieces_pack_shared(case: DishCase) -> Iterator[Hit]:
    """Find packs that hold raw meat or fish in pieces together with anything else."""
    for pack, raw, others in _shared(case):
        if _in_pieces(raw):
            yield _pack(case, pack, raw, others)


def no_tasting_raw(case: DishCase) -> Iterator[Hit]:
    """Ask for no tasting where a dish holds RAW."""
    if case.raw:
        yield case.here


def hands_after_raw(case: DishCase) -> Iterator[Hit]:
    """Ask for clean hands and tools where a dish holds raw food of an animal."""
    if any(kind.rules.animal for part in case.raw for kind in raw_kinds(part.component)):
        yield case.here


def _uncooked(case: DishCase, why: Why) -> Iterator[Hit]:
    for part in case.raw:
        journey = case.journey(part)
        if journey.why is why and raw_kinds(part.component) != _KIDNEY_BEANS_ALONE:
            yield case.hit(part, journey.why_at, end=_end(case, part, journey.why_at))


_KIDNEY_BEANS_ALONE = frozenset({Kind.KIDNEY_BEAN})
"""They have rules of their own, which ask for more."""


def _end(case: DishCase, part: PlannedPart, step: int | None) -> str:
    """Say how warm a steeped or heater-warmed food ends, "" where that is unknown or no proof that it stays raw."""
    if case.sums is None or step is None:
        return ""
    ends_c, asked = case.sums.steps[step].steeped_c, temperature_of(part.component, case.household.authority)
    cooler = ends_c is not None and asked is not None and ends_c < asked.temp_c
    return f": it ends at about {degrees(ends_c)}" if ends_c is not None and cooler else ""


def _water(case: DishCase, water: RawWater) -> Hit:
    return case.hit(case.plan.parts[water.part], water.step)


def _shared(case: DishCase) -> Iterator[tuple[PlannedPack, PlannedPart, list[PlannedPart]]]:
    """Give each pack that holds RAW and other things, with the part that decides and the others."""
    if not case.raw:
        return
    for pack in case.packs():
        parts = [case.plan.parts[index] for index in pack.parts]
        raw = sorted((part for part in parts if part.component.raw), key=_in_pieces, reverse=True)
        if raw and len(parts) > 1:
            yield pack, raw[0], [part for part in parts if part is not raw[0]]


def _in_pieces(part: PlannedPart) -> bool:
    form = part.component.model.form.casefold()
    return _POWDER not in form and not _IN_PIECES.isdisjoint(groups_of(raw_kinds(part.component)))


def _pack(case: DishCase, pack: PlannedPack, raw: PlannedPart, others: list[PlannedPart]) -> Hit:
    return Hit(
        places=(
            case.pack_place(pack),
            case.part_place(raw),
            *map(case.part_place, others),
            component_place(raw.component.id),
        ),
        words={"part": spoken(raw), "other": listed(spoken(other) for other in others)},
    )


_WETTED_FACTS = ("T3-09", "T3-11")

RULES = (
    DishRule(id="raw-not-cooked", severity=Severity.ERROR, facts=("T3-02", "T6-11"), check=raw_not_cooked, of_raw=True),
    DishRule(id="raw-steeped", severity=Severity.ERROR, facts=("T3-02", "T6-11"), check=raw_steeped, of_raw=True),
    DishRule(id="raw-on-heater", severity=Severity.ERROR, facts=("T10-09", "T3-02"), check=raw_on_heater, of_raw=True),
    DishRule(
        id="raw-stirred-in-late",
        severity=Severity.ERROR,
        facts=("T3-02", "T3-14"),
        check=raw_stirred_in_late,
        of_raw=True,
    ),
    DishRule(id="raw-heated-dry", severity=Severity.ERROR, facts=_WETTED_FACTS, check=raw_heated_dry, of_raw=True),
    DishRule(
        id="raw-soaked-short", severity=Severity.WARNING, facts=_WETTED_FACTS, check=raw_soaked_short, of_raw=True
    ),
    DishRule(
        id="raw-water-drunk", severity=Severity.ERROR, facts=("T6-11", "T3-17"), check=raw_water_drunk, of_raw=True
    ),
    DishRule(
        id="raw-water-not-boiled",
        severity=Severity.ERROR,
        facts=("T6-11", "T1-25"),
        check=raw_water_not_boiled,
        of_raw=True,
    ),
    DishRule(id="raw-touches-ready", severity=Severity.ERROR, facts=("T3-17",), check=raw_touches_ready, of_raw=True),
    DishRule(id="raw-instead", severity=Severity.ERROR, facts=("T3-02", "T3-17"), check=raw_instead),
    DishRule(
        id="raw-pack-shared", severity=Severity.ERROR, facts=("T3-17", "T3-03"), check=raw_pack_shared, of_raw=True
    ),
    DishRule(
        id="raw-pieces-pack-shared",
        severity=Severity.ERROR,
        facts=("T3-18", "T3-17"),
        check=raw_pieces_pack_shared,
        of_raw=True,
    ),
    DishRule(
        id="no-tasting-raw",
        severity=Severity.NOTE,
        facts=("T3-14", "T3-02"),
        shows=Shows.FIELD,
        check=no_tasting_raw,
        of_raw=True,
    ),
    DishRule(
        id="hands-after-raw",
        severity=Severity.NOTE,
        facts=("T13-01", "T3-17", "T3-18"),
        shows=Shows.FIELD,
        check=hands_after_raw,
        of_raw=True,
    ),
)
