"""Packs: as the author wrote them, or worked out from what is RAW and from the moment at which it is used."""

from collections.abc import Sequence

from packlarder.book.dish import Dish, Pack
from packlarder.faults import Fault, Place, Severity
from packlarder.reckon.parts import PartNames
from packlarder.reckon.records import PlannedPack, PlannedPart, PlannedStep

NEVER = 1_000
"""The moment of a part that no step names."""


def plan_packs(
    dish: Dish,
    names: PartNames,
    steps: Sequence[PlannedStep],
    place: Place,
    faults: list[Fault],
) -> tuple[PlannedPack, ...]:
    """Give the packs of a dish in the order of opening. Adds to `faults`.

    Parts that travel in a tub of their own lie in no pack. What the author put in no pack gets packs worked out.
    """
    parts = names.parts
    written = tuple(_written(pack, number, names, place, faults) for number, pack in enumerate(dish.packs, start=1))
    packed = [part for pack in written for part in pack.all_parts]
    faults += _packed_twice(packed, parts, place)
    left = [part for part in parts if part.index not in packed and not part.component.model.carried_in]
    if written and left:
        lacking = ", ".join(part.called for part in left)
        message = f"no pack holds {lacking}; a pack was worked out"
        help = "add it to a pack, or say in its component what it is `carried in`"
        faults.append(
            Fault(place=place.at("packs"), code="not-packed", message=message, help=help, severity=Severity.WARNING)
        )
    return (*written, *_worked_out(left, steps, len(written)))


def _written(pack: Pack, number: int, names: PartNames, place: Place, faults: list[Fault]) -> PlannedPack:
    keys = "packs", number - 1, "holds"
    loose = [(at, item) for at, item in enumerate(pack.holds) if isinstance(item, str)]
    inner = [(at, item) for at, item in enumerate(pack.holds) if not isinstance(item, str)]
    return PlannedPack(
        number=str(number),
        called=pack.called,
        parts=names.find_each(loose, place, keys, faults),
        inside=tuple(
            PlannedPack(
                number=f"{number}.{order}",
                called="",
                parts=names.find_each(enumerate(held), place, (*keys, at), faults),
                inside=(),
                sachet=False,
                written=True,
            )
            for order, (at, held) in enumerate(inner, start=1)
        ),
        sachet=pack.sachet,
        written=True,
    )


def _packed_twice(packed: list[int], parts: Sequence[PlannedPart], place: Place) -> list[Fault]:
    return [
        Fault(
            place=place.at("packs"),
            code="packed-twice",
            message=f"{parts[index].called} lies in two packs",
            help="list it as two parts, one with a name of its own (`called`), or take it out of one pack",
        )
        for index in sorted({index for index in packed if packed.count(index) > 1})
    ]


def _worked_out(parts: Sequence[PlannedPart], steps: Sequence[PlannedStep], before: int) -> tuple[PlannedPack, ...]:
    """Put together what is used at the same moment, and so gets its water the same way; RAW lies apart.

    Raw meat and fish always lie alone.
    """
    groups: dict[tuple[object, ...], list[int]] = {}
    for part in sorted(parts, key=lambda part: (_moment(part.index, steps), part.index)):
        alone = part.index if part.component.raw and any(kind.rules.animal for kind in part.component.kinds) else None
        moment = _moment(part.index, steps)
        groups.setdefault((moment, part.component.raw, alone), []).append(part.index)
    return tuple(
        PlannedPack(number=str(number), called="", parts=tuple(together), inside=(), sachet=False, written=False)
        for number, together in enumerate(groups.values(), start=before + 1)
    )


def _moment(part: int, steps: Sequence[PlannedStep]) -> int:
    return next((step.index for step in steps if part in step.parts), NEVER)
