"""What is filled from which jar into which pack, component by component, so that each jar is opened once."""

from collections import defaultdict
from collections.abc import Iterable, Sequence

from packlarder.book.draw import Mark
from packlarder.reckon.trip.records import TripPack
from packlarder.reckon.trip.shelf import tidy
from packlarder.reckon.trip.stores import Drawn, Fill
from packlarder.reckon.trip.wants import Taken


def fills_of(taken: Iterable[Taken], packs: Iterable[TripPack]) -> tuple[Fill, ...]:
    """Sum up by component, in the order of names, what was taken and into which packs it goes."""
    into = _into(packs)
    by_component: dict[str, list[Taken]] = defaultdict(list)
    for one in taken:
        by_component[one.want.component.id].append(one)
    fills = [_fill(found, into.get(id, {})) for id, found in by_component.items()]
    return tuple(sorted(fills, key=lambda fill: (fill.component.model.name.casefold(), fill.component.id)))


def _into(packs: Iterable[TripPack]) -> dict[str, dict[str, float]]:
    """Give for each component the marks of packs with what goes into each."""
    into: dict[str, dict[str, float]] = defaultdict(lambda: defaultdict(float))
    for pack in packs:
        for item in pack.items:
            into[item.component.id][pack.mark] += item.grams
    return into


def _fill(taken: Sequence[Taken], into: dict[str, float]) -> Fill:
    wants = [one.want for one in taken]
    return Fill(
        component=wants[0].component,
        need_g=tidy(sum(want.grams for want in wants)),
        drawn=_drawn(taken),
        bought_on_the_way_g=tidy(sum(want.grams for want in wants if want.bought_at is not None)),
        short_g=tidy(sum(one.short_g for one in taken)),
        into=tuple([(mark, tidy(grams)) for mark, grams in into.items()]),
        first_on=min(want.on for want in wants),
        last_on=max(want.on for want in wants),
        for_mixes_g=tidy(sum(want.grams for want in wants if want.for_mix)),
    )


def _drawn(taken: Iterable[Taken]) -> tuple[Drawn, ...]:
    """Put together what was taken from one container for several meals, in the order in which they were opened."""
    grams: dict[Mark, float] = defaultdict(float)
    drawn = {one.mark: one for found in taken for one in found.drawn}
    for one in (one for found in taken for one in found.drawn):
        grams[one.mark] += one.grams
    return tuple([Drawn(mark=mark, grams=tidy(grams[mark]), use_by=drawn[mark].use_by) for mark in grams])
