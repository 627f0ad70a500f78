"""The lock files hold exact versions with digests, and no address."""

import re
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

LOCKS = ("run.txt", "test.txt", "test-source.txt")
PINNED = re.compile(r"(?P<name>[a-z0-9-]+)==(?P<version>[^ ]+)(?P<where> ; [^\\]+)? \\")


def pins(lock: Path) -> set[str]:
    """Give each line that names a package: `name==version` with the marker it may have."""
    return {line for line in lock.read_text("utf-8").splitlines() if line[:1].isalnum()}


def locked(lock: Path) -> dict[str, list[str]]:
    """Give the versions of each package that a lock file holds: more than one where systems differ."""
    versions: dict[str, list[str]] = {}
    for line in pins(lock):
        requirement = Requirement(line.removesuffix("\\"))
        version = str(requirement.specifier).removeprefix("==")
        versions.setdefault(canonicalize_name(requirement.name), []).append(version)
    return versions


@pytest.mark.parametrize("name", LOCKS)
def test_each_version_is_exact_and_sealed(checkout: Path, name: str) -> None:
    """Every package stands there in one exact version, followed by a digest; nothing else stands there."""
    text = (checkout / "requirements" / name).read_text("utf-8")
    entries = re.split(r"^(?=[a-z0-9])", text, flags=re.MULTILINE)
    assert entries[0] == ""
    assert len(entries) > 2
    for entry in entries[1:]:
        first, *rest = entry.splitlines()
        assert PINNED.fullmatch(first), first
        assert re.fullmatch(r"    --hash=sha256:[0-9a-f]{64}( \\)?", rest[0]), first
        assert all(line.startswith(("    --hash=sha256:", "    # ")) for line in rest), first


@pytest.mark.parametrize("name", LOCKS)
def test_no_lock_names_an_address(checkout: Path, name: str) -> None:
    """Where packages come from is the user's to say: a lock file holds no address and no option of pip."""
    text = (checkout / "requirements" / name).read_text("utf-8")
    assert "://" not in text
    assert not re.search(r"^-", text, flags=re.MULTILINE)


def test_tests_run_on_what_users_run(checkout: Path) -> None:
    """The test lock holds all of the run lock in the same versions, so that one install does for both."""
    folder = checkout / "requirements"
    assert pins(folder / "run.txt") < pins(folder / "test.txt")


def test_locks_hold_what_the_project_asks_for(checkout: Path) -> None:
    """Each requirement of pyproject.toml is met by the lock that is made from it: nobody forgot to refresh."""
    project = tomllib.loads((checkout / "pyproject.toml").read_text("utf-8"))
    groups = project["dependency-groups"]
    asked = {
        "run.txt": project["project"]["dependencies"] + groups["build"],
        "test.txt": groups["test"],
        "test-source.txt": groups["test-source"],
    }
    for name in LOCKS:
        versions = locked(checkout / "requirements" / name)
        for requirement in map(Requirement, asked[name]):
            found = versions.get(canonicalize_name(requirement.name), [])
            assert found, f"{requirement} is not in {name}"
            assert all(map(requirement.specifier.contains, found)), f"{requirement} is {found} in {name}"


def test_the_build_backend_is_locked(checkout: Path) -> None:
    """What builds the project is what the group `build` puts into the lock."""
    project = tomllib.loads((checkout / "pyproject.toml").read_text("utf-8"))
    assert project["dependency-groups"]["build"] == project["build-system"]["requires"]
