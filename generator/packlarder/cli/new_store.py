"""New files of batches and stocktakes: a drying run with what is known of it, and what stands, to be counted."""

from collections.abc import Iterator, Sequence
from itertools import groupby

from packlarder.book.book import BATCHES_FOLDER, DRAWS_FOLDER, draws_place, run_place, spoken
from packlarder.book.draw import Mark
from packlarder.book.meant import ALIKE
from packlarder.cli import texts
from packlarder.cli.hints import meant_or, meant_or_known
from packlarder.cli.larder_stage import LarderOpened
from packlarder.cli.new_batch import batch_text, dried_at_home
from packlarder.cli.new_file import free_id, quoted, short_id, skeleton
from packlarder.cli.options import Misuse
from packlarder.cli.plain_store import named
from packlarder.measure import as_typed, written
from packlarder.reckon.larder_records import Standing
from packlarder.reckon.records import ComponentSums
from packlarder.sheets.dish import day as printed_day
from packlarder.sheets.shelf import container_state

MANY = 3
"""From so many components on, a batch is called by the first of them."""


def new_batch(opened: LarderOpened, name: str) -> tuple[str, str]:
    """Give the file of a new drying run of one or several components, and what stands in it. Raises Misuse."""
    components = _components(opened, name)
    first = components[0]
    for other in components[1:]:
        if dried_at_home(other) is not dried_at_home(first):
            raise Misuse(
                texts.TWO_BATCHES.format(
                    first=first.model.name, one=_says(first), second=other.model.name, other=_says(other)
                )
            )
    ids = [one.id for one in components]
    called = "-".join(ids if len(ids) < MANY else (ids[0], texts.AND_MORE.format(count=len(ids) - 1)))
    id = free_id(f"{opened.day.isoformat()}-{short_id(called)}", opened.ids_in(BATCHES_FOLDER))
    return run_place(id).file, batch_text(opened, components)


def _components(opened: LarderOpened, name: str) -> list[ComponentSums]:
    """Find the components that are meant: one, or several with commas between them."""
    names = [name] if opened.book.component_id(name) else name.split(",")
    found = [component_named(opened, " ".join(one.split())) for one in names if one.strip()]
    if not found:
        raise Misuse(texts.REQUIRED.format(word="NAME"))
    return list({one.id: one for one in found}.values())


def component_named(opened: LarderOpened, name: str) -> ComponentSums:
    """Find a component by id, name or former id. Raises Misuse where there is none, or it can not be worked out."""
    book = opened.book
    id = book.component_id(name)
    if id is None and not book.has_unread_component(name):
        names = [one.name for one in book.components.values()]
        hint = meant_or(name, names, texts.NEW_COMPONENT, least=ALIKE)
        raise Misuse(texts.NO_COMPONENT.format(name=name, hint=hint))
    found = opened.components.sums.get(id or "")
    if found is None:
        raise Misuse(texts.UNSOUND.format(name=name))
    return found


def _says(component: ComponentSums) -> str:
    drying = dried_at_home(component)
    return texts.NOT_DRIED if drying is None else drying.value


def new_stocktake(opened: LarderOpened, place: str) -> tuple[str, str]:
    """Give the file of a stocktake, of one place or of all, and what stands in it. Raises Misuse for an unknown place.

    Every line is a comment until somebody takes its mark away, so that nothing is counted that nobody has looked at.
    """
    standing = _at(opened, place)
    what_for = texts.STOCKTAKE_OF.format(place=standing[0].container.filled.stands) if place else texts.STOCKTAKE
    id = free_id(f"{opened.day.isoformat()}-{short_id(what_for)}", opened.ids_in(DRAWS_FOLDER))
    known = {
        "on": printed_day(opened.day),
        "day": opened.day.isoformat(),
        "what_for": quoted(what_for),
        "lines": "\n".join(_lines(standing)),
    }
    return draws_place(id).file, skeleton("stocktake", known)


def _at(opened: LarderOpened, place: str) -> Sequence[Standing]:
    """Give what stands in a place, or everywhere, in the order of places and of names."""
    standing = opened.store.larder.standing
    if not standing:
        raise Misuse(texts.NOTHING_STANDS)
    found = [one for one in standing if not place or spoken(one.container.filled.stands) == spoken(place)]
    if not found:
        places = sorted({one.container.filled.stands for one in standing} - {""})
        raise Misuse(texts.NO_PLACE.format(place=place, hint=meant_or_known(place, places)))
    return sorted(found, key=_along_the_shelf)


def _along_the_shelf(one: Standing) -> tuple[bool, str, str, Mark]:
    stands = one.container.filled.stands
    return not stands, stands, one.batch.component.model.name.lower(), one.mark


def _lines(standing: Sequence[Standing]) -> Iterator[str]:
    deeds = [texts.COUNT_LINE.format(mark=one.mark, left=_left(one)) for one in standing]
    width = max(map(len, deeds))
    for place, group in groupby(zip(standing, deeds, strict=True), lambda pair: pair[0].container.filled.stands):
        yield from ("", f"# {place or texts.NO_PLACE_SAID}")
        for one, deed in group:
            name = named(one.batch.component.model.name, raw=one.batch.component.raw)
            what = ", ".join((name, one.container.filled.in_, container_state(one.container, one)))
            yield f"{deed:<{width}}  # {what}"


def _left(one: Standing) -> str:
    """Give what the book believes, so exactly that a sealed container which is counted so stays sealed."""
    untouched = one.left_g == one.container.dry_g
    text = written(one.container.filled.holds) if untouched else f"{round(one.left_g, 1):g} g"
    return as_typed(text)
