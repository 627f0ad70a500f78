"""From an amount as an author writes it to grams as it is carried."""

from packlarder.book.household import Household
from packlarder.book.part import Take
from packlarder.faults import Gap
from packlarder.measure import Dimension, Quantity, written
from packlarder.reckon.measures import PER_ML, in_grams
from packlarder.reckon.records import ComponentSums


def dry_grams(take: Take, component: ComponentSums, household: Household) -> float | Gap:
    """Turn an amount into dry grams, not yet multiplied for `each`.

    A count that the component knows only fresh (`4 eggs`) is fresh. A Gap says what to weigh.
    """
    quantity, fresh = take.quantity, take.fresh
    if quantity.dimension is Dimension.COUNT:
        quantity = _in_household_measure(quantity, household)
        fresh = fresh or _counted_fresh(quantity, component)
    if fresh:
        return _from_fresh(quantity, component)
    grams = in_grams(quantity, component.grams_per)
    if grams is None:
        name = component.model.name.lower()
        return Gap(what=f"the weight of {written(quantity)} of {name}", missing=_weigh(quantity, component, "weighs"))
    return grams


def _in_household_measure(quantity: Quantity, household: Household) -> Quantity:
    """Turn `2 mugs` into a volume where the household's mug is known."""
    if quantity.noun in household.measures:
        mug = household.measures[quantity.noun]
        return Quantity(number=mug.number * quantity.number, unit=mug.unit)
    return quantity


def _counted_fresh(quantity: Quantity, component: ComponentSums) -> bool:
    if quantity.dimension is not Dimension.COUNT:
        return False
    return quantity.noun in component.fresh_grams_per and quantity.noun not in component.grams_per


def _from_fresh(quantity: Quantity, component: ComponentSums) -> float | Gap:
    fresh_g = in_grams(quantity, component.fresh_grams_per)
    name = component.model.name.lower()
    if fresh_g is None:
        return Gap(what=f"the weight of {written(quantity)} of it fresh", missing=_weigh(quantity, component, "counts"))
    if component.yielded is None:
        return Gap(what=f"what {name} stands for fresh", missing="weigh it before and after drying and write `yields`")
    return fresh_g / component.yielded.fresh_g


def _weigh(quantity: Quantity, component: ComponentSums, key: str) -> str:
    measure = f"1 {quantity.unit.name}" if quantity.dimension is Dimension.VOLUME else f"1 {quantity.noun or 'piece'}"
    fresh = " fresh" if key == "counts" else ""
    return (
        f"weigh {measure} of {component.model.name.lower()}{fresh} "
        f"and write `{key}: {{{measure}: ... g}}` in components/{component.id}.yaml"
    )


def per_ml(component: ComponentSums) -> float | None:
    """Give the grams of a millilitre of it as it is carried, None where it was never weighed."""
    return component.grams_per.get(PER_ML)
