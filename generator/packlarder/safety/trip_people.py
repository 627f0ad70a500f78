"""Who eats what on a trip: those who avoid an allergen, infants, people at risk, and whether it is enough."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from packlarder.book.amend import as_written
from packlarder.faults import Severity
from packlarder.figures.allergens import Allergen, concerns, wider
from packlarder.figures.kinds import Kind
from packlarder.figures.trips import LEAST_ENERGY
from packlarder.figures.verbs import VERBS
from packlarder.reckon.trip.journey import Fed
from packlarder.reckon.trip.records import Eater, TripMeal
from packlarder.safety.case import listed
from packlarder.safety.cooking import reheat_falls_short
from packlarder.safety.hit import Hit
from packlarder.safety.limits import AT_RISK_BELOW, AT_RISK_FROM
from packlarder.safety.rule import Rule, Shows, TripRule
from packlarder.safety.trip_case import Eaten, TripCase, as_cooked
from packlarder.safety.wording import days, litres

_NOT_THIS_DISH = "give it to others alone, `{line}`, or take another dish"
_NOT_ON_THE_LIST = "take it off `drinks`, and at a stop "
_OTHER_DISH = "take another dish"
_NOT_FROM_THE_BAG = "take something else on the move"
_SPOONS = "boards, spoons and hands"


def eats_allergen(case: TripCase) -> Iterator[Hit]:
    """Find food with an allergen that somebody avoids and eats: told once for each person and dish."""
    for eater in case.eaters:
        bad = [one for one in case.eaten_by(eater) if _held(eater, one.component.allergens)]
        for dish, eaten in _by_dish(bad).items():
            holds = _held(eater, frozenset().union(*[one.component.allergens for one in eaten]))
            yield _at(case, eater, eaten, dish=dish, holds=listed(holds), avoids=_avoided(eater, holds))


def allergen_in_the_pot(case: TripCase) -> Iterator[Hit]:
    """Find food with an allergen beside somebody who avoids it and eats none of it: once a person and allergen."""
    for eater in case.eaters:
        mine = _pots(meal for meal in case.sums.meals if eater.name in meal.eaters)
        for avoided in _widest(eater.model.avoided):
            others = [one for one in case.eaten if _beside(one, eater, avoided)]
            if not others:
                continue
            shared = [pot for pot in _pots(one.meal for one in others if one.meal is not None) if pot in mine]
            yield case.at_lines(
                (one.line for one in others),
                person=eater.name,
                avoids=avoided.value,
                holds=listed(held.value for one in others for held in concerns(avoided, _sorted(one))),
                dishes=listed(one.dish for one in others),
                shared=listed([f'the pot "{pot}"' for pot in shared] or [_SPOONS]),
            )


def eats_traces(case: TripCase) -> Iterator[Hit]:
    """Find food that may hold traces of an allergen that somebody avoids and eats: told once for each person."""
    for eater in case.eaters:
        eaten = case.eaten_by(eater)
        worse = {one.line for one in eaten if _held(eater, one.component.allergens)}  # nobody gives them that at all
        bad = [one for one in eaten if one.line not in worse and _held(eater, one.component.traces)]
        if bad:
            traces = _held(eater, frozenset().union(*[one.component.traces for one in bad]))
            yield _at(case, eater, bad, traces=listed(traces), avoids=_avoided(eater, traces))


def infant_eats_honey(case: TripCase) -> Iterator[Hit]:
    """Find honey in what an infant eats."""
    for eater in case.eaters:
        if eater.model.infant:
            sweet = [one for one in case.eaten_by(eater) if Kind.HONEY in one.component.kinds]
            for dish, eaten in _by_dish(sweet).items():
                yield _at(case, eater, eaten, dish=dish)


def infant_counted_whole(case: TripCase) -> Iterator[Hit]:
    """Find infants of whom nothing says how much they eat, or drink: they count like grown-ups."""
    for index, eater in enumerate(case.sums.eaters):
        if eater.model.infant and eater.model.unsaid:
            counted = {"appetite": _WHOLE_SERVING, "drinks": _DRINKS.format(water=litres(eater.drinks_ml))}
            told = " and ".join(counted[key] for key in eater.model.unsaid)
            milk_alone = ", ".join(_MILK_ALONE[key] for key in eater.model.unsaid)
            yield case.hit("people", index, eater.name, person=eater.name, counted=told, milk_alone=milk_alone)


_WHOLE_SERVING = "a whole serving of each dish"
_DRINKS = "{water} to drink a day"
_MILK_ALONE = {"appetite": "appetite: 0 %", "drinks": "drinks: 0 L"}


def infant_shares_food(case: TripCase) -> Iterator[Hit]:
    """Find infants that eat of dishes made for all: told once for each."""
    for eater in case.eaters:
        eaten = case.eaten_by(eater) if eater.model.infant else []
        if eaten:
            yield case.at_lines((one.line for one in eaten), person=eater.name)


def raw_for_people_at_risk(case: TripCase) -> Iterator[Hit]:
    """Find RAW in what somebody at risk eats: told once for each person."""
    for eater in filter(_at_risk, case.eaters):
        raw = [one for one in case.eaten_by(eater) if one.component.raw]
        if raw:
            yield _at(case, eater, raw)


def too_cool_for_people_at_risk(case: TripCase) -> Iterator[Hit]:
    """Find poured-on water or a ration heater that leaves food too cool for somebody at risk, once for each person."""
    cool = [meal for meal in case.sums.meals if any(reheat_falls_short(case.dish_case(meal)))]
    for eater in filter(_at_risk, case.eaters):
        mine = [meal for meal in cool if eater.name in meal.eaters]
        if mine:
            dishes = listed(meal.plan.model.name for meal in mine)
            yield case.at_lines((meal.line for meal in mine), person=eater.name, dishes=dishes)


def too_little_energy(case: TripCase) -> Iterator[Hit]:
    """Find days whose food lies below what planning starts from, by a whole appetite; what is not known keeps still.

    Only days count that have a breakfast, a lunch and a supper: on others people eat somewhere else as well.
    """
    portions = {one.name: one.portion for one in case.eaters}
    whole = {day for day in range(1, case.sums.last_day + 1) if _whole_day(case, day)}
    known = [fed for fed in case.sums.journey.fed if fed.complete and fed.day in whole and fed.name in portions]
    short = [(_kcal(fed, portions), fed.day) for fed in known if _kcal(fed, portions) < LEAST_ENERGY.value]
    if short:
        least_kcal = int(min(short)[0] // 10) * 10
        words = {"kcal": f"{least_kcal:,}", "days": days(day for _, day in short)}
        yield case.hit("stops", **words, least=f"{LEAST_ENERGY.value:,.0f}")


def _kcal(fed: Fed, portions: Mapping[str, float]) -> float:
    return fed.energy_kcal / portions[fed.name]


def _whole_day(case: TripCase, day: int) -> bool:
    found = {meal.meal.value for meal in case.sums.meals if meal.day == day and not meal.spare}
    return found >= {"breakfast", "lunch", "supper"}


def _at(case: TripCase, eater: Eater, eaten: Sequence[Eaten], **words: str) -> Hit:
    """Make a hit at all lines at which one person eats something, naming dishes and components."""
    way = _way_out(case, eater, eaten[0].meal)
    return case.at_lines(
        (one.line for one in eaten),
        person=eater.name,
        dishes=listed(one.dish for one in eaten),
        component=listed(one.component.model.name.lower() for one in eaten),
        way=way,
        **words,
    )


def _way_out(case: TripCase, eater: Eater, meal: TripMeal | None) -> str:
    """Say how a person is left out of a meal, with the line to write; nobody else may be left to eat it."""
    if meal is None:
        return _NOT_FROM_THE_BAG
    others = [one.name for one in case.eaters if one.name in meal.eaters and one.name != eater.name]
    if not others:
        return _OTHER_DISH
    detail = f"{{dish: {as_written(meal.plan.model.name.lower())}, for: [{', '.join(map(as_written, others))}]}}"
    daily = _NOT_ON_THE_LIST if "drinks" in meal.line.path else ""
    return daily + _NOT_THIS_DISH.format(line=f"- {meal.meal.value}: {detail}")


def _by_dish(eaten: Iterable[Eaten]) -> Mapping[str, list[Eaten]]:
    dishes: dict[str, list[Eaten]] = {}
    for one in eaten:
        dishes.setdefault(one.dish, []).append(one)
    return dishes


def _held(eater: Eater, held: frozenset[Allergen]) -> list[Allergen]:
    """Give those of some allergens that a person must not eat, in the order of the vocabulary."""
    bad = {one for avoided in eater.model.avoided for one in concerns(avoided, held)}
    return [one for one in Allergen if one in bad]


def _avoided(eater: Eater, held: Iterable[Allergen]) -> str:
    """Give what a person avoids and some allergens concern."""
    return listed(one.value for one in _widest(eater.model.avoided) if concerns(one, tuple(held)))


def _widest(avoided: Sequence[Allergen]) -> list[Allergen]:
    """Leave out what a wider word among them says already."""
    return [one for one in avoided if not any(parent in avoided for parent in wider(one))]


def _beside(one: Eaten, eater: Eater, avoided: Allergen) -> bool:
    """Tell whether others eat something with an allergen in a meal that a person does not share."""
    somebody_else = one.meal is not None and eater.name not in one.meal.eaters
    return somebody_else and bool(concerns(avoided, one.component.allergens))


def _sorted(one: Eaten) -> list[Allergen]:
    return [allergen for allergen in Allergen if allergen in one.component.allergens]


def _pots(meals: Iterable[TripMeal]) -> list[str]:
    """Give the pots in which meals are cooked, each once."""
    steps = (step for meal in meals for step in as_cooked(meal).steps if step.verb is not None and not step.heater)
    return list(dict.fromkeys(step.pot for step in steps if step.verb is not None and VERBS[step.verb].on_stove))


def _at_risk(eater: Eater) -> bool:
    """Tell whether germs harm somebody more than others: by their age, or as the trip says."""
    age = eater.model.age
    return eater.model.at_risk or (age is not None and not AT_RISK_BELOW.value <= age < AT_RISK_FROM.value)


RULES: tuple[Rule, ...] = (
    TripRule(id="eats-allergen", severity=Severity.ERROR, facts=("T11-08", "T11-01", "T11-05"), check=eats_allergen),
    TripRule(id="infant-eats-honey", severity=Severity.ERROR, facts=("T12-01", "T12-02"), check=infant_eats_honey),
    TripRule(
        id="infant-counted-whole",
        severity=Severity.WARNING,
        facts=("T12-10",),
        check=infant_counted_whole,
    ),
    TripRule(
        id="infant-shares-food",
        severity=Severity.NOTE,
        facts=("T12-10", "T12-11", "T12-01"),
        shows=Shows.FIELD,
        check=infant_shares_food,
    ),
    TripRule(
        id="allergen-in-the-pot",
        severity=Severity.WARNING,
        facts=("T11-09", "T11-08"),
        shows=Shows.FIELD,
        check=allergen_in_the_pot,
    ),
    TripRule(
        id="eats-traces",
        severity=Severity.WARNING,
        facts=("T11-04", "T11-08"),
        shows=Shows.FIELD,
        check=eats_traces,
    ),
    TripRule(
        id="raw-for-people-at-risk",
        severity=Severity.NOTE,
        facts=("T3-19", "T12-07"),
        shows=Shows.FIELD,
        check=raw_for_people_at_risk,
    ),
    TripRule(
        id="too-cool-for-people-at-risk",
        severity=Severity.NOTE,
        facts=("T1-10", "T1-11"),
        shows=Shows.FIELD,
        check=too_cool_for_people_at_risk,
    ),
    TripRule(id="too-little-energy", severity=Severity.NOTE, facts=("T15-01", "T15-02"), check=too_little_energy),
)
