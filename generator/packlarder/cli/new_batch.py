"""The text of a new drying run: what its components' drying cards say, and blanks for what must be weighed."""

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from textwrap import wrap

from packlarder.book.batch import BatchDetail
from packlarder.book.treatment import Treated
from packlarder.cli import texts
from packlarder.cli.larder_stage import LarderOpened
from packlarder.cli.new_file import EMPTY, quoted, skeleton
from packlarder.figures.dryness import Drying
from packlarder.measure import Quantity, as_typed, written
from packlarder.reckon.batch_records import BatchSums
from packlarder.reckon.card import DryingCard, drying_card
from packlarder.reckon.drying import DRIED_AT_HOME
from packlarder.reckon.learnt import NOTHING_LEARNT, counts
from packlarder.reckon.records import ComponentSums
from packlarder.sheets.history import history
from packlarder.sheets.run import hours
from packlarder.sheets.store_words import CARD

COMMENT_COLUMN = 36
LINE_COLUMNS = 100
INDENT = " " * 6
SAID_BELOW = frozenset({CARD["dryer"], CARD["treated"], CARD["deep"]})
"""What of a drying card stands in the file as a value."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Known:
    """What is known of a component: its drying card, what that says, and its last batch that can be a pattern."""

    component: ComponentSums
    card: DryingCard | None
    says: tuple[str, ...]
    last: BatchSums | None

    @property
    def detail(self) -> BatchDetail:
        """Give what was written of it last time."""
        return BatchDetail() if self.last is None else self.last.model.detail


def dried_at_home(component: ComponentSums) -> Drying | None:
    """Give how a component is dried at home, None for what is only mixed or filled."""
    return component.model.dried if component.model.dried in DRIED_AT_HOME else None


def batch_text(opened: LarderOpened, components: Sequence[ComponentSums]) -> str:
    """Write the file of a run of these components, which are all dried alike, or all only mixed or filled."""
    found = [_known(opened, one) for one in components]
    drying = dried_at_home(components[0])
    fits = _fit_together(opened, found)
    entries = [_mixed(opened, one) if drying is None else _dried(opened, one, fits=fits) for one in found]
    known = {
        "day": opened.day.isoformat(),
        "dryer": EMPTY if drying is None else _dryer(found, drying),
        "took": EMPTY if drying is None else _took(found),
        "batches": "\n".join(entry.rstrip() for entry in entries),
    }
    return skeleton("batch", known, COMMENT_COLUMN)


def _known(opened: LarderOpened, component: ComponentSums) -> _Known:
    store, household = opened.store, opened.book.household
    batches = [batch for run in store.runs.values() for batch in run.batches if batch.component.id == component.id]
    done = [batch for batch in batches if counts(batch) or dried_at_home(component) is None]
    card = drying_card(component, batches, household)
    told = history(batches, store.learnt.get(component.id, NOTHING_LEARNT), card)
    facts = () if told is None else tuple(fact for fact in told.card if fact.label not in SAID_BELOW)
    us = household.units.value == "us"
    return _Known(
        component=component,
        card=card,
        says=tuple(f"{fact.label}: {fact.us if us else fact.metric}" for fact in facts),
        last=done[-1] if done else None,
    )


def _fit_together(opened: LarderOpened, found: Sequence[_Known]) -> bool:
    """Tell whether all can lie on as many trays as last time, with one shared between any two."""
    dryer = opened.book.household.dryers.get(found[0].card.dryer if found[0].card else "")
    trays = sum(one.detail.trays or 0 for one in found)
    return dryer is not None and trays - (len(found) - 1) <= dryer.trays


def _dryer(found: Sequence[_Known], drying: Drying) -> str:
    card = found[0].card
    return f"dryer:  # {texts.NO_DRYER.format(drying=drying.value)}" if card is None else f"dryer: {quoted(card.dryer)}"


def _took(found: Sequence[_Known]) -> str:
    cards = [one.card for one in found if one.card is not None]
    spent = [took for card in cards if (took := card.last_hours or card.usual_hours) is not None]
    says = texts.TOOK_LAST if any(card.hours for card in cards) else texts.TOOK_USUALLY
    told = says.format(hours=hours(max(spent))) if spent else texts.TOOK
    return f"{'# took: ... h':<{COMMENT_COLUMN}}# {as_typed(told)}"


def _dried(opened: LarderOpened, one: _Known, *, fits: bool) -> str:
    detail = one.detail
    loaded = texts.LOADED
    if detail.fresh is not None and detail.trays is not None:
        loaded = texts.LOADED_LAST.format(fresh=_written(detail.fresh), trays=texts.counted(detail.trays, "tray"))
    dryer = opened.book.household.dryers.get("" if one.card is None else one.card.dryer)
    depth = detail.deep or (None if dryer is None else dryer.deep)
    trays = detail.trays if fits else None
    takes = (
        texts.TRAYS
        if one.card is None or dryer is None
        else texts.TRAYS_OF.format(dryer=one.card.dryer, trays=dryer.trays)
    )
    lines = {
        "fresh": loaded,
        "treated": _line("treated", _treated(detail.treated), texts.AS_LAST_TIME, texts.TREATMENTS),
        "trays": f"{INDENT}trays: {trays}  # {texts.AS_LAST_TIME}" if trays else f"{INDENT}trays:  # {takes}",
        "deep": _line("deep", _written(depth), texts.AS_LAST_TIME if detail.deep else texts.AS_USUAL, texts.DEPTH),
    }
    return skeleton("batch-dried", {**_shared(opened, one), **lines}, COMMENT_COLUMN)


def _mixed(opened: LarderOpened, one: _Known) -> str:
    bought = one.component.model.dried is Drying.BOUGHT_DRY
    best_before = f"{INDENT}# best before: ...  # {texts.BEST_BEFORE}" if bought else EMPTY
    return skeleton("batch-mixed", {**_shared(opened, one), "best_before": best_before}, COMMENT_COLUMN)


def _shared(opened: LarderOpened, one: _Known) -> dict[str, str]:
    return {
        "component": quoted(one.component.model.name.lower()),
        "told": "".join(f"{line}\n" for line in _told(one)) or EMPTY,
        "measure": next(iter(one.detail.weighs), "1 cup"),
        "filled": _filled(opened, one),
        "unit": _unit(opened),
    }


def _told(one: _Known) -> Iterator[str]:
    """Say as comments what it is and how it is dried: RAW, how it is prepared, what the card says, what was noted."""
    if one.component.raw:
        yield from _comment(texts.RAW_IN_JARS if dried_at_home(one.component) is None else texts.RAW_ON_TRAYS)
    for line in one.component.model.to_dry:
        yield from _comment(line)
    if one.last is not None:
        yield from _comment(texts.LAST_TIME.format(run=one.last.run))
    for line in (*one.says, *one.detail.notes):
        yield from _comment(line)


def _unit(opened: LarderOpened) -> str:
    return "oz" if opened.book.household.units.value == "us" else "g"


def _filled(opened: LarderOpened, one: _Known) -> str:
    """Write how a container is filled, as last time, or else with the household's first size."""
    unit = _unit(opened)
    if not one.detail.put_in:
        size = next(iter(opened.book.household.containers), texts.ANY_CONTAINER)
        return f"in: {_in_braces(size)}, holds: ... {unit}"
    filled = one.detail.put_in[0]
    pairs = [f"in: {_in_braces(filled.in_)}", f"holds: ... {unit}"]
    if filled.vacuum:
        pairs.append("vacuum: yes")
    if filled.sachet is not None:
        pairs.append(f"sachet: {filled.sachet.value}")
    if filled.stands:
        pairs.append(f"stands: {_in_braces(filled.stands)}")
    return ", ".join(pairs)


def _in_braces(text: str) -> str:
    return json.dumps(text, ensure_ascii=False) if "," in text else quoted(text)


def _treated(treated: Sequence[Treated]) -> str:
    names = [
        one.treatment.value if one.to is None else f"{one.treatment.value} to {_written(one.to)}" for one in treated
    ]
    return f"[{', '.join(names)}]" if len(names) > 1 else "".join(names)


def _line(key: str, value: str, says: str, examples: str) -> str:
    """Write a key with what is known of it, or as a comment with examples."""
    return f"{INDENT}{key}: {value}  # {says}" if value else f"{INDENT}# {key}: ...  # {examples}"


def _comment(text: str) -> list[str]:
    return wrap(as_typed(text), LINE_COLUMNS, initial_indent=f"{INDENT}# ", subsequent_indent=f"{INDENT}#   ")


def _written(quantity: Quantity | None) -> str:
    return "" if quantity is None else as_typed(written(quantity))
