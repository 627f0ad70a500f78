"""The labels of jars and pouches, built from what stands in the larder."""

from collections.abc import Iterable
from dataclasses import replace

from packlarder.book.days import DAYS_PER_WEEK, Span
from packlarder.book.household import Household
from packlarder.figures.kinds import Cooking, WentIn
from packlarder.figures.temperatures import Authority
from packlarder.measure import NO_BREAK, as_typed, as_weighed, for_number, in_celsius, in_fahrenheit, in_ounces
from packlarder.reckon.drying import DRIED_AT_HOME
from packlarder.reckon.larder import NOT_FOR_STORE
from packlarder.reckon.larder_records import Standing
from packlarder.reckon.measures import PER_ML
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.use_by import KeepingTimes
from packlarder.safety.heat import temperature_of
from packlarder.sheets import store_words as words
from packlarder.sheets import words as common
from packlarder.sheets.component import bring_back_line
from packlarder.sheets.dish import day
from packlarder.sheets.label_sheet import JarLabel, LabelSet
from packlarder.sheets.larder import stands_for
from packlarder.sheets.shelf import keeping


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
        form=_form(one),
        raw=component.raw,
        state=_state(one),
        take_out=common.SACHET if container.filled.sachet or model.sachet else "",
        dried=day(one.batch.dried_on) if one.batch.dried_on and _was_dried(component) else "",
        net=words.NET.format(weight=as_weighed(container.dry_g), ounces=in_ounces(container.dry_g)),
        stands_for=_stands_for(one),
        bring_back=_use(component, household.authority),
        cook_to=cook_to(component, household.authority),
        contains=common.COMMA.join(sorted(allergen.value for allergen in component.allergens)),
        may_contain=common.COMMA.join(sorted(allergen.value for allergen in one.batch.traces | component.traces)),
        use_by="" if one.use_by is None else day(one.use_by.day),
        keeping=_keeping(one, household),
        nth=words.NTH.format(nth=container.nth, of=container.of),
        warning=_warning(one),
        code_text="",
    )
    return replace(label, code_text=_code_text(label))


def _form(one: Standing) -> str:
    """Name its form, unless its name does; of what was only mixed or filled, the day as well."""
    model, filled_on = one.batch.component.model, one.batch.dried_on
    form = "" if model.form.lower() in model.name.lower() else model.form
    if filled_on is None or _was_dried(one.batch.component):
        return form
    return common.COMMA.join(filter(None, (form, words.FILLED_ON.format(day=day(filled_on)))))


def _was_dried(component: ComponentSums) -> bool:
    return component.model.dried in DRIED_AT_HOME


def _state(one: Standing) -> str:
    """Give the word for how it is eaten: RAW, cook before eating, cooked, or ready; or that nobody tested it."""
    component = one.batch.component
    if not component.raw and _warns_of_water(one):
        return words.NOT_TESTED
    if component.must_be_cooked is Cooking.NO and component.model.went_in is WentIn.COOKED:
        return words.COOKED
    return common.STATES[component.must_be_cooked.value]


def _stands_for(one: Standing) -> str:
    """Say what the container stands for fresh; in pieces too where people count it."""
    ratio = stands_for(one)
    if ratio == 1:
        return ""
    fresh_g = one.container.dry_g * ratio
    for noun, piece_g in one.batch.component.fresh_grams_per.items():
        number = round(fresh_g / piece_g)
        if noun != PER_ML and number:
            count = f"{number}{NO_BREAK}{for_number(noun, number)}"
            return words.STANDS_FOR_COUNT.format(count=count, weight=as_weighed(fresh_g))
    return words.STANDS_FOR.format(weight=as_weighed(fresh_g), ounces=in_ounces(fresh_g))


def cook_to(component: ComponentSums, authority: Authority) -> str:
    """Give how hot RAW food must get inside; "" for any other, and where no body gives a figure."""
    asked = temperature_of(component, authority) if component.raw else None
    return "" if asked is None else f"{in_celsius(asked.temp_c)} / {in_fahrenheit(asked.temp_c)}"


def _use(component: ComponentSums, authority: Authority) -> str:
    """Say how it comes back, and of RAW food without a temperature how to tell that it is done."""
    back = component.model.bring_back
    line = "" if back is None else bring_back_line(back)
    if not component.raw or cook_to(component, authority):
        return line
    done = sorted({kind.rules.done_when for kind in component.uncooked if kind.rules.done_when})
    return " ".join(filter(None, (line, words.COOK_BY_EYE.format(done="; ".join(done)))))


def _keeping(one: Standing, household: Household) -> str:
    """Say why its day is what it is, and of a sealed container how long it keeps once opened, if that is shorter."""
    opened = KeepingTimes(household).once_opened(one.batch.component, one.container.filled)
    filled_on, keeps = one.container.filled_on, one.use_by
    if one.opened_on is not None or opened is None or keeps is None or keeps.untested or filled_on is None:
        return keeping(one)
    if opened.after(filled_on) >= keeps.day:
        return keeping(one)
    return words.ONCE_OPENED.format(keeping=keeping(one), span=_said(opened))


def _said(span: Span) -> str:
    """Say a span in the largest unit that it fills: 4 months, 2 weeks, 10 days."""
    if span.months:
        return f"{span.months}{NO_BREAK}{for_number('month', span.months)}"
    unit, number = ("week", span.days // DAYS_PER_WEEK) if span.days % DAYS_PER_WEEK == 0 else ("day", span.days)
    return f"{number}{NO_BREAK}{for_number(unit, number)}"


def _warns_of_water(one: Standing) -> bool:
    return one.batch.verdict in NOT_FOR_STORE or (one.use_by is not None and one.use_by.untested)


def _warning(one: Standing) -> str:
    """Say what must be known before it is stored or eaten: that nobody knows it to be dry, and what lay beside it."""
    verdict, told = one.batch.verdict, []
    if verdict in NOT_FOR_STORE and verdict is not None:
        told.append(words.NOT_DRY.format(verdict=verdict.value))
    elif one.use_by is not None and one.use_by.untested:
        told.append(words.NOT_TESTED_LABEL)
    if one.batch.beside_raw and not one.batch.component.raw:
        names = common.COMMA.join(map(common.lowered, one.batch.beside_raw))
        told.append(words.BESIDE_RAW.format(names=names))
    return " ".join(told)


def _code_text(label: JarLabel) -> str:
    """Write what a QR code says in plain text: what matters most to a cook first, a line each."""
    told = (
        common.COMMA.join(filter(None, (label.name, label.form))),
        label.state,
        label.take_out,
        label.warning,
        label.bring_back,
        words.COOK_TO.format(degrees=label.cook_to) if label.cook_to else "",
        words.COMMA_STANDS_FOR.format(net=label.net, fresh=label.stands_for) if label.stands_for else label.net,
        words.CONTAINS.format(allergens=label.contains) if label.contains else "",
        words.MAY_CONTAIN.format(allergens=label.may_contain) if label.may_contain else "",
        words.BEST_BEFORE.format(day=label.use_by) if label.use_by else "",
        words.DRIED.format(mark=label.mark, day=label.dried) if label.dried else label.mark,
    )
    return as_typed("\n".join(line for line in told if line))
