"""Make a large book, time what is done with it, and print the timings: `python -m tests.bench.run 1000`."""

import json
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Mapping, Sequence
from pathlib import Path

from tests.bench import large_larder, large_trip
from tests.bench.jobs import BOOKLET_DISHES
from tests.bench.large_book import PARTS, files

MOST_RATIO, MOST_CHECK_S, MOST_MIB = 0.15, 2.0, 300
"""What the project asks of a book of 1,000 dishes."""
BATCHES, MOST_LARDER_S = 2000, 2.0
"""A large larder, and what the project asks of its sums and pages."""
MOST_TRIP_S = 1.5
"""What the project asks of showing a trip of 14 days for 12 people, dishes of its book and all."""
UNLIKE_AT_HOME = frozenset({"PYTHONDONTWRITEBYTECODE"})
"""Left out of the jobs' surroundings: with it our modules, unlike installed ones, are compiled anew each time."""
RUNS = 3
"""What is compared is done so often, by turns, and the least time counts: what else the machine does only adds."""
SAYS = f"Seconds of the processor, and from start to end; site and MkDocs by turns, the least of {RUNS}."


def timed(job: str, folder: Path) -> dict[str, float]:
    """Do a job in a process of its own; give its seconds in all and of the processor, and what it told."""
    start, spent = time.perf_counter(), processor_s()
    ended = subprocess.run(
        [sys.executable, "-m", "tests.bench.jobs", job, str(folder)],
        stdout=subprocess.PIPE,
        text=True,
        check=True,
        env={name: value for name, value in os.environ.items() if name not in UNLIKE_AT_HOME},
    )
    seconds = time.perf_counter() - start
    told: dict[str, float] = json.loads(ended.stdout.splitlines()[-1])
    return {"seconds": seconds, "processor": (processor_s() - spent) or seconds, "peak_mib": 0.0, **told}


def processor_s() -> float:
    """Give what ended jobs took of the processor: on a busy machine, the time from start to end tells little."""
    if sys.platform == "win32":
        return 0.0
    import resource

    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def least(runs: Sequence[dict[str, float]]) -> dict[str, float]:
    """Give the least of everything that several runs of a job told."""
    return {name: min(run[name] for run in runs) for name in runs[0]}


def write_book(folder: Path, dishes: int) -> None:
    """Write the large book."""
    _write(folder / "book", files(dishes))


def write_larder(folder: Path, batches: int) -> None:
    """Write the book with the large larder."""
    _write(folder / "larder", large_larder.files(batches))


def write_trip(folder: Path, dishes: int) -> None:
    """Write the large book with a long trip in it."""
    _write(folder / "trip", large_trip.files(dishes))


def _write(book: Path, contents: Mapping[str, bytes]) -> None:
    for path, content in contents.items():
        place = book / path
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_bytes(content)


def main(dishes: int) -> None:
    """Print all timings of one run."""
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        write_book(folder, dishes)
        print(f"{dishes:,} dishes of {PARTS} parts each. {SAYS}", flush=True)
        check = tell("check", timed("check", folder), most_s=MOST_CHECK_S)
        write_trip(folder, dishes)
        trip = least([timed("trip", folder) for _ in range(RUNS)])
        tell(f"trip of {large_trip.DAYS} days for {large_trip.PEOPLE}", trip, most_s=MOST_TRIP_S)
        timed("site", folder)
        timed("markdown", folder)
        by_turns = [(timed("site", folder), timed("stock", folder)) for _ in range(RUNS)]
        site, stock = (least(runs) for runs in zip(*by_turns, strict=True))
        tell("whole site", site)
        tell("MkDocs, same text, stock theme", stock, is_ours=False)
        write_larder(folder, BATCHES)
        larder = least([timed("larder", folder) for _ in range(RUNS)])
        booklet = tell(f"booklet of {min(dishes, BOOKLET_DISHES)} dishes", timed("booklet", folder))
    line("site beside MkDocs", f"{site['seconds'] / stock['seconds']:.3f}", f"in all, at most {MOST_RATIO}")
    line("", f"{site['processor'] / stock['processor']:.3f}", "of the processor")
    line(
        f"larder of {BATCHES:,} batches",
        f"{larder['sums_s'] + larder['pages_s']:.2f} s",
        f"files and sums {larder['sums_s']:.2f} s, {larder['pages']:,.0f} pages {larder['pages_s']:.2f} s, in all, "
        f"at most {MOST_LARDER_S:g} s",
    )
    line("each booklet page", f"{booklet['processor'] / booklet['pages']:.3f} s", f"{booklet['pages']:.0f} pages")
    peak = max(one["peak_mib"] for one in (check, trip, site, booklet, larder))
    line("most memory of ours", f"{peak:.0f} MiB", f"at most {MOST_MIB}")


def tell(name: str, told: dict[str, float], *, most_s: float | None = None, is_ours: bool = True) -> dict[str, float]:
    """Print one timing, and hand it on."""
    rest = [f"{told['seconds']:.2f} s in all", *([f"{told['peak_mib']:.0f} MiB"] if is_ours else [])]
    rest += [f"at most {most_s:g} s"] if most_s is not None else []
    line(name, f"{told['processor']:.2f} s", ", ".join(rest))
    return told


def line(name: str, figure: str, rest: str) -> None:
    """Print a line: what, its figure, what belongs to it."""
    print(f"  {name:<32}{figure:>10}   {rest}".rstrip(), flush=True)


if __name__ == "__main__":
    main(int(sys.argv[1]))
