"""Slips in the packs of a dish: one that holds what the steps need apart, and packs numbered out of order."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from packlarder.book.book import dish_place
from packlarder.faults import Fault, Place, Severity
from packlarder.figures.verbs import VERBS
from packlarder.reckon.plan import is_told
from packlarder.reckon.records import DishPlan, PlannedPack, PlannedPart, PlannedStep


def pack_slips(plan: DishPlan) -> Iterator[Fault]:
    """Find what is most likely a slip in the packs that the author wrote."""
    written = [pack for pack in plan.packs if pack.written]
    moments = [_moment(part, plan.steps) for part in plan.parts]
    for pack in written:
        for one in (pack, *pack.inside):
            yield from _needed_apart(plan, one, moments)
        yield from _out_of_order(plan, pack.inside, moments)
    yield from _out_of_order(plan, written, moments)


def _moment(part: PlannedPart, steps: Sequence[PlannedStep]) -> int | None:
    """Give the first step that names a part, be it in a sentence."""
    for step in steps:
        if part.index in step.parts or (step.verb is None and is_told(part, step.sentence.lower())):
            return step.index
    return None


def _opened_at(pack: PlannedPack, moments: Sequence[int | None]) -> int | None:
    """Give the first step that wants anything from a pack; None where no step names what it holds."""
    return min([moment for part in pack.all_parts if (moment := moments[part]) is not None], default=None)


def _needed_apart(plan: DishPlan, pack: PlannedPack, moments: Sequence[int | None]) -> Iterator[Fault]:
    """Find a pack that gets water or heat for one of its parts while another is wanted dry, and later."""
    wanted = {part: moment for part in pack.parts if (moment := moments[part]) is not None}
    first = min(wanted.values(), default=None)
    later = [plan.parts[part].called.lower() for part, moment in wanted.items() if moment != first]
    if first is None or not later or not _wets_or_heats(plan, first):
        return
    now = [plan.parts[part].called.lower() for part, moment in wanted.items() if moment == first]
    yield _warning(
        _at(plan, pack),
        "pack-needed-apart",
        f"{_listed(now)} and {_listed(later)} lie in one pack, and step {first + 1} wants only {_listed(now)}",
        "put them into packs of their own; one may lie inside the other",
    )


def _wets_or_heats(plan: DishPlan, index: int) -> bool:
    verb = plan.steps[index].verb
    return verb is not None and (VERBS[verb].gives_water or VERBS[verb].on_stove)


def _out_of_order(plan: DishPlan, packs: Sequence[PlannedPack], moments: Sequence[int | None]) -> Iterator[Fault]:
    """Find the first pack that is opened before one with a lower number."""
    opened = [(pack, moment) for pack in packs if (moment := _opened_at(pack, moments)) is not None]
    for (before, earlier), (pack, moment) in pairwise(opened):
        if moment < earlier:
            yield _warning(
                _at(plan, pack),
                "packs-out-of-order",
                f"pack {pack.number} is opened in step {moment + 1}, before pack {before.number} in step {earlier + 1}",
                "list the packs in the order in which they are opened: their numbers follow it",
            )
            return


def _at(plan: DishPlan, pack: PlannedPack) -> Place:
    """Give the place of a pack, or of the one that it lies in."""
    outer = pack.number.partition(".")[0]
    return dish_place(plan.id).at("packs", int(outer) - 1)


def _listed(names: Sequence[str]) -> str:
    return ", ".join(names)


def _warning(place: Place, code: str, message: str, help: str) -> Fault:
    return Fault(place=place, code=code, message=message, help=help, severity=Severity.WARNING)
