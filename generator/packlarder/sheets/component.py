"""The sheet of a component, built from its sums and the safety rules' findings."""

from collections.abc import Mapping, Sequence

from packlarder.book.bring_back import BringBack
from packlarder.figures.units import SALT_PER_SODIUM
from packlarder.measure import in_grams, in_kcal, in_minutes, in_ml, in_ounces, written
from packlarder.measure.units import CUP
from packlarder.reckon.kitchen import spoons
from packlarder.reckon.measures import PER_ML
from packlarder.reckon.records import ComponentSums, WaterPerGram, YieldFrom
from packlarder.safety import Finding, on_the_page
from packlarder.sheets import words
from packlarder.sheets.component_sheet import ComponentSheet
from packlarder.sheets.dish import caution
from packlarder.sheets.facts import Fact, Link
from packlarder.sheets.origins import component_origins, yield_from
from packlarder.sheets.store_sheet import Stored
from packlarder.sheets.trip_stores_sheet import Reserved

SAMPLE_G = 100
"""Waters and nutrients of a component are told for this much dry."""
KILO_G = 1000


def component_sheet(
    sums: ComponentSums,
    findings: Sequence[Finding],
    *,
    used_in: Sequence[Link],
    held_in: Sequence[Link],
    stored: Stored | None = None,
    reserved: Sequence[Reserved] = (),
) -> ComponentSheet:
    """Build the sheet of a component."""
    model = sums.model
    return ComponentSheet(
        id=sums.id,
        name=model.name,
        raw=sums.raw,
        state=words.STATES[sums.must_be_cooked.value],
        about=model.about,
        facts=_facts(sums),
        allergens=tuple(sorted(one.value for one in sums.allergens)),
        traces=tuple(sorted(one.value for one in sums.traces)),
        yields=_yields(sums),
        yield_notes=component_origins(sums),
        weighs=_weighs(sums),
        bring_back="" if model.bring_back is None else bring_back_line(model.bring_back),
        waters=() if sums.water is None else _waters(sums.water),
        to_dry=model.to_dry,
        made_of=tuple(_weight(one.name, one.weight.base) for one in model.made_of),
        feeds=_feeds(sums),
        cautions=tuple(caution(finding) for finding in on_the_page(findings)),
        used_in=tuple(used_in),
        held_in=tuple(held_in),
        missing=tuple(words.MISSING.format(what=gap.what, missing=gap.missing) for gap in sums.gaps),
        notes=model.notes,
        stored=stored,
        reserved=tuple(reserved),
    )


def bring_back_line(back: BringBack) -> str:
    """Say in one line how a component comes back, with the author's own amounts."""
    water = back.water
    amount = "" if back.amount is None else written(back.amount)
    given = "" if water.quantity is None else written(water.quantity)
    line = words.BRING_BACK[back.way.value].format(
        amount=f"{amount} " if amount else "",
        water=f"{given} " if given else "",
        warmth="boiling" if back.way.value == "pour over" else water.warmth.value,
        takes="" if back.takes is None else words.TAKES.format(water=written(back.takes)),
        stir="" if back.stir_at is None else words.STIR_AT.format(minutes=in_minutes(back.stir_at.base)),
        wait="" if back.wait is None else words.WAIT_FOR.format(minutes=in_minutes(back.wait.base)),
        cosy=words.COSY if back.cosy else "",
    )
    return words.opened(" ".join(line.split()).replace(" ,", ",")) + words.END


def _facts(sums: ComponentSums) -> tuple[Fact, ...]:
    model = sums.model
    rows = (
        ("was", model.was or ""),
        ("went_in", "" if model.went_in is None else model.went_in.value),
        ("dried", words.MIXED if model.dried is None else model.dried.value),
        ("form", model.form),
        ("carried_in", model.carried_in),
        ("sachet", words.SACHET if model.sachet else ""),
    )
    return tuple(Fact(label=words.COMPONENT[key], metric=text, us=text) for key, text in rows if text)


def _yields(sums: ComponentSums) -> tuple[Fact, ...]:
    """Set what a kilogram fresh gives, what a gram stands for, and the water that was lost."""
    made = sums.yielded
    if made is None or made.origin is YieldFrom.AS_IT_IS:
        return ()
    dry_g, lost_ml = KILO_G / made.fresh_g, made.lost_ml * SAMPLE_G
    source = yield_from(made)
    stands = made.fresh_g * SAMPLE_G
    rows = [
        Fact(label=words.COMPONENT["dry_per_kg"], metric=in_grams(dry_g), us=in_ounces(dry_g), source=source),
        Fact(label=words.COMPONENT["stands_for"], metric=in_grams(stands), us=in_ounces(stands), source=source),
        Fact(label=words.COMPONENT["lost"], metric=in_ml(lost_ml), us=spoons(lost_ml), source=source),
    ]
    if made.dry_water is not None:
        share = f"{made.dry_water * 100:.0f}\u00a0%"
        rows.append(Fact(label=words.COMPONENT["dry_water"], metric=share, us=share, source=source))
    for noun, grams in sums.fresh_grams_per.items():
        if noun != PER_ML:
            label = words.COMPONENT["one_is"].format(noun=noun)
            dry = grams / made.fresh_g
            rows.append(Fact(label=label, metric=in_grams(dry), us=in_ounces(dry), source=source))
    return tuple(rows)


def _weighs(sums: ComponentSums) -> tuple[Fact, ...]:
    own = tuple(
        Fact(label=measure, metric=in_grams(weight.base), us=in_ounces(weight.base), source=words.OUR_SCALE)
        for measure, weight in sums.model.weighs.items()
    )
    per_ml = sums.grams_per.get(PER_ML)
    if own or per_ml is None:
        return own
    cup = per_ml * CUP.size
    return (Fact(label="1 cup", metric=in_grams(cup), us=in_ounces(cup), source=words.FOOD_TABLE),)


def _waters(water: WaterPerGram) -> tuple[Fact, ...]:
    """Set offered, absorbed and drained for 100 g dry."""
    taken = water.takes_ml
    rows = [("offered", water.offered_ml), ("absorbed", taken)]
    if water.way.value == "soak" and taken is not None:
        rows.append(("drained", water.offered_ml - taken))
    return tuple(
        Fact(label=words.COMPONENT[key], metric=in_ml(value * SAMPLE_G), us=spoons(value * SAMPLE_G))
        for key, value in rows
        if value
    )


def _weight(name: str, grams: float) -> Fact:
    return Fact(label=name, metric=in_grams(grams), us=in_ounces(grams))


def _feeds(sums: ComponentSums) -> tuple[Fact, ...]:
    rows: list[Fact] = []
    for name, label in words.FEEDS.items():
        value: float | None = getattr(sums.nutrients, name)
        if value is None:
            continue
        if name == "energy_kcal":
            text = in_kcal(value * SAMPLE_G)
        else:
            text = in_grams(value * SAMPLE_G * (SALT_PER_SODIUM.value / 1000 if name == "sodium_mg" else 1))
        rows.append(Fact(label=label, metric=text, us=text))
    return tuple(rows)


def links(names: Mapping[str, str], kind: str) -> tuple[Link, ...]:
    """Give links to things of one kind, by name."""
    by_name = sorted(names.items(), key=lambda pair: pair[1].lower())
    return tuple(Link(kind=kind, id=id, name=name) for id, name in by_name)
