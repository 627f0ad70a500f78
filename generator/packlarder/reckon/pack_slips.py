"""Slips in the packs of a dish: one that holds what the steps need apart, and packs numbered out of order."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from packlarder.book.book import dish_place
from packlarder.faults import Fault, Place, Severity
from packlarder.figures.verbs import VERBS
from packlarder.reckon.plan import is_told
from packlarder.reckon.records import DishPlan, PlannedPack


def pack_slips(plan: DishPlan) -> Iterator[Fault]:
    """Find what is most likely a slip in the packs that the author wrote."""
    written = [pack for pack in plan.packs if pack.written]
    for pack in written:
        outer = dish_place(plan.id).at("packs", int(pack.number) - 1)
        yield from _needed_apart(plan, pack, outer)
        for inner in pack.inside:
            yield from _needed_apart(plan, inner, outer)
        yield from _out_of_order(plan, pack.inside, pack.number)
    yield from _out_of_order(plan, written, "")


def opened_at(plan: DishPlan, pack: PlannedPack) -> int | None:
    """Give the first step that wants anything from a pack; None where no step names what it holds."""
    moments = [moment for part in pack.all_parts if (moment := _moment(plan, part)) is not None]
    return min(moments, default=None)


def _moment(plan: DishPlan, part: int) -> int | None:
    """Give the first step that names a part, be it in a sentence."""
    for step in plan.steps:
        if part in step.parts or (step.verb is None and is_told(plan.parts[part], step.sentence.lower())):
            return step.index
    return None


def _needed_apart(plan: DishPlan, pack: PlannedPack, place: Place) -> Iterator[Fault]:
    """Find a pack that gets water or heat for one of its parts while another is wanted dry, and later."""
    moments = {part: moment for part in pack.parts if (moment := _moment(plan, part)) is not None}
    first = min(moments.values(), default=None)
    later = [plan.parts[part].called.lower() for part, moment in moments.items() if moment != first]
    if first is None or not later or not _wets_or_heats(plan, first):
        return
    now = [plan.parts[part].called.lower() for part, moment in moments.items() if moment == first]
    yield _warning(
        place,
        "pack-needed-apart",
        f"{_listed(now)} and {_listed(later)} lie in one pack, and step {first + 1} wants only {_listed(now)}",
        "put them into packs of their own; one may lie inside the other",
    )


def _wets_or_heats(plan: DishPlan, index: int) -> bool:
    verb = plan.steps[index].verb
    return verb is not None and (VERBS[verb].gives_water or VERBS[verb].on_stove)


def _out_of_order(plan: DishPlan, packs: Sequence[PlannedPack], outer: str) -> Iterator[Fault]:
    """Find the first pack that is opened before one with a lower number."""
    opened = [(pack, moment) for pack in packs if (moment := opened_at(plan, pack)) is not None]
    for (before, earlier), (pack, moment) in pairwise(opened):
        if moment < earlier:
            yield _warning(
                dish_place(plan.id).at("packs", int((outer or pack.number).partition(".")[0]) - 1),
                "packs-out-of-order",
                f"pack {pack.number} is opened in step {moment + 1}, before pack {before.number} in step {earlier + 1}",
                "list the packs in the order in which they are opened: their numbers follow it",
            )
            return


def _listed(names: Sequence[str]) -> str:
    return ", ".join(names)


def _warning(place: Place, code: str, message: str, help: str) -> Fault:
    return Fault(place=place, code=code, message=message, help=help, severity=Severity.WARNING)
