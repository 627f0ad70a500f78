"""The sheet of what a trip takes from the larder, what is still to get, and the work before it starts."""

from dataclasses import dataclass

from packlarder.sheets.facts import Link
from packlarder.sheets.printed import Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class FromJar:
    """What is taken from one container: its mark, how much, until when it keeps."""

    mark: str
    run: str
    weight: Printed
    use_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class IntoPack:
    """What of a component goes into the pack with that mark."""

    mark: str
    weight: Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class FillRow:
    """All that a trip wants of a component: from which jars it comes and into which packs it goes.

    `need` is what comes from `jars`, `on_the_way` and `short` (empty where there is none); what goes into `packs` and
    `for_mixes` adds up to it too.
    """

    component: Link
    raw: bool
    need: Printed
    jars: tuple[FromJar, ...]
    on_the_way: Printed
    short: Printed
    packs: tuple[IntoPack, ...]
    for_mixes: Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class ShortRow:
    """What of a component the larder lacks, and by when work on it must begin ("" if no day matters)."""

    component: Link
    raw: bool
    short: Printed
    for_mixes: Printed
    fresh: Printed
    bought: Printed
    bought_as: str
    trays: str
    loads: str
    start_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ShortGroup:
    """What the larder lacks and is come by in one way; `plain` says that there is nothing to say but how much."""

    how: str
    rows: tuple[ShortRow, ...]
    plain: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayRow:
    """What of one component lies on the trays of a load."""

    component: Link
    raw: bool
    trays: str
    fresh: Printed
    dry: Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadRow:
    """A run of a dryer that is still to be made."""

    number: int
    dryer: str
    trays: tuple[TrayRow, ...]
    starts: str
    ends: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskItem:
    """A component that a task is about, and how much of it."""

    component: Link
    raw: bool
    weight: Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskRow:
    """Something to do: at what time ("" where only the day matters), until when, with what, for which load.

    `weight` is that of all its components together, where they have none each.
    """

    clock: str
    until: str
    kind: str
    items: tuple[TaskItem, ...]
    weight: Printed
    load: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanDay:
    """The tasks that begin on a day."""

    on: str
    tasks: tuple[TaskRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reserved:
    """What a planned trip takes of a component from the larder."""

    trip: Link
    on: str
    weight: Printed
