"""Every file with faults gives exactly the text that lies beside it."""

import pytest
from tests.faults.cases import CASES, FOLDER, GOLDEN, Case, shown


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_file_gives_the_faults_that_lie_beside_it(case: Case, *, update_goldens: bool) -> None:
    """The faults of a file, as shown on a terminal, are those expected."""
    actual = shown(case)
    if update_goldens:
        case.golden.write_text(actual, encoding="utf-8", newline="\n")
    assert case.golden.exists(), (
        f"no {case.golden.name}: run pytest tests/faults --update-goldens, and read what it writes"
    )
    assert actual == case.golden.read_text(encoding="utf-8")


def test_every_expected_text_belongs_to_a_file() -> None:
    """No expected text is left behind when its file goes, and the walk finds files at all."""
    expected = {case.golden for case in CASES}
    assert len(CASES) > 100
    assert {path for path in FOLDER.rglob(f"*{GOLDEN}") if path not in expected} == set()
