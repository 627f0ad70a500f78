"""The labels of jars and pouches, built from what stands in the larder."""

from collections.abc import Iterable
from dataclasses import replace

from packlarder.book.household import Household
from packlarder.figures.kinds import Cooking, WentIn
from packlarder.figures.temperatures import Authority
from packlarder.measure import NO_BREAK, as_weighed, for_number, in_celsius, in_fahrenheit, in_ounces
from packlarder.reckon.larder import NOT_FOR_STORE
from packlarder.reckon.larder_records import Standing
from packlarder.reckon.measures import PER_ML
from packlarder.reckon.records import ComponentSums
from packlarder.safety.heat import temperature_of
from packlarder.sheets import store_words as words
from packlarder.sheets import words as common
from packlarder.sheets.component import bring_back_line
from packlarder.sheets.dish import day
from packlarder.sheets.label_sheet import JarLabel, LabelSet
from packlarder.sheets.larder import stands_for
from packlarder.sheets.shelf import keeping

LEAST_COUNT = 0.75
"""Less than this of a piece is no count that helps anybody."""


def jar_labels(standing: Iterable[Standing], household: Household, edition: str, title: str) -> LabelSet:
    """Build the labels of containers, in the order given."""
    return LabelSet(
        title=title,
        language=household.language,
        edition=edition,
        jars=tuple(jar_label(one, household) for one in standing),
        with_code=household.larder.code_on_labels,
    )


def jar_label(one: Standing, household: Household) -> JarLabel:
    """Build the label of one container as it was filled; what was drawn later is for the lines to write on."""
    component, model, container = one.batch.component, one.batch.component.model, one.container
    label = JarLabel(
        file=container.place.file,
        mark=str(one.mark),
        name=model.name,
        form=model.form,
        raw=component.raw,
        state=_state(component),
        take_out=common.SACHET if container.filled.sachet or model.sachet else "",
        dried="" if one.batch.dried_on is None else day(one.batch.dried_on),
        net=words.NET.format(weight=as_weighed(container.dry_g), ounces=in_ounces(container.dry_g)),
        stands_for=_stands_for(one),
        bring_back="" if model.bring_back is None else bring_back_line(model.bring_back),
        cook_to=cook_to(component, household.authority),
        contains=common.COMMA.join(sorted(allergen.value for allergen in component.allergens)),
        may_contain=common.COMMA.join(sorted(allergen.value for allergen in one.batch.traces | component.traces)),
        use_by="" if one.use_by is None else day(one.use_by.day),
        keeping=keeping(one),
        nth=words.NTH.format(nth=container.nth, of=container.of),
        warning=_warning(one),
        code_text="",
    )
    return replace(label, code_text=_code_text(label))


def _state(component: ComponentSums) -> str:
    """Give the word for how it is eaten: RAW, cook before eating, cooked, or ready."""
    if component.must_be_cooked is Cooking.NO and component.model.went_in is WentIn.COOKED:
        return words.COOKED
    return common.STATES[component.must_be_cooked.value]


def _stands_for(one: Standing) -> str:
    """Say what the container stands for fresh; in pieces too where people count it."""
    ratio = stands_for(one)
    if ratio == 1:
        return ""
    fresh_g = one.container.dry_g * ratio
    pieces = [(noun, fresh_g / grams) for noun, grams in one.batch.component.fresh_grams_per.items() if noun != PER_ML]
    weight = as_weighed(fresh_g)
    for noun, number in pieces:
        if number >= LEAST_COUNT:
            count = f"{round(number)} {for_number(noun, round(number))}"
            return words.STANDS_FOR_COUNT.format(count=count, weight=weight)
    return words.STANDS_FOR.format(weight=weight, ounces=in_ounces(fresh_g))


def cook_to(component: ComponentSums, authority: Authority) -> str:
    """Say how hot it must get inside to be safe; "" for what needs no cooking, by eye where no body gives a figure."""
    if component.must_be_cooked is not Cooking.TO_BE_SAFE:
        return ""
    asked = temperature_of(component, authority)
    if asked is None:
        done = sorted({kind.rules.done_when for kind in component.uncooked if kind.rules.done_when})
        return words.COOK_BY_EYE.format(done="; ".join(done))
    return words.COOK_TO.format(degrees=f"{in_celsius(asked.temp_c)} / {in_fahrenheit(asked.temp_c)}")


def _warning(one: Standing) -> str:
    verdict = one.batch.verdict
    return words.NOT_DRY.format(verdict=verdict.value) if verdict in NOT_FOR_STORE and verdict else ""


def _code_text(label: JarLabel) -> str:
    """Write what a QR code says in plain text: what matters most to a cook first, a line each."""
    told = (
        f"{label.name}, {label.form}",
        label.state,
        label.take_out,
        label.warning,
        label.bring_back,
        label.cook_to,
        f"{label.net} {label.stands_for}".strip(),
        words.CONTAINS.format(allergens=label.contains) if label.contains else "",
        words.MAY_CONTAIN.format(allergens=label.may_contain) if label.may_contain else "",
        words.BEST_BEFORE.format(day=label.use_by) if label.use_by else "",
        words.DRIED.format(mark=label.mark, day=label.dried) if label.dried else label.mark,
    )
    return "\n".join(line for line in told if line).replace(NO_BREAK, " ")
