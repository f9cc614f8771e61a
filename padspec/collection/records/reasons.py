"""Why a pad has to be made again: everything that is not as its record says, in words."""

from collections.abc import Callable, Iterator

from padspec.base.errors import ProblemsError
from padspec.collection.records.digests import Digests, StampedDigests
from padspec.collection.records.record import Record
from padspec.collection.records.variation_digest import places_digest, settings_digest
from padspec.collection.work import BuildWish
from padspec.reading.variation import Variation

NEVER_BUILT = "it was never built here"
#: What is told where an option is not wished for any more, and where it is now.
_OPTIONS = {
    "embed": ("pictures are linked now", "pictures go into the faces now"),
    "despite-errors": ("errors hold sheets back again", "sheets are wished for despite errors"),
    "proofs": ("proofs are left out now", "proofs are wished for now"),
}


def reasons(
    record: Record | None,
    wish: BuildWish,
    now: dict[str, str],
    variation: Variation,
    source: Digests,
    output: StampedDigests,
    font: Callable[[str], str],
) -> Iterator[str]:
    """Every reason to make a pad again, none where its files can stay; `now` is what circumstances gives, `font`
    the digest of a family's file.
    """
    if record is None:
        yield NEVER_BUILT
        return
    if wish.again:
        yield "--again asks for it"
    yield from _circumstances(record.circumstances, now)
    yield from _variation(record, variation)
    try:
        for path, digest in record.inputs.items():
            yield from _file(path, digest, source.of(path))
        for family, digest in record.fonts.items():
            if digest != font(family):
                yield f"the installed font {family} is another"
        for path, digest in record.outputs.items():
            yield from _output(path, digest, output.of(path))
    except ProblemsError as error:
        # Making it tells what is wrong with the file, in the words of the design that names it.
        yield f"{error.problems[0].place.file} cannot be read"


def drawn_files_stand(record: Record, output: StampedDigests) -> bool:
    """Whether every file that was drawn is still there as it was written; the findings do not count."""
    findings = f"{record.sku}/findings.json"
    try:
        return all(output.of(path) == digest for path, digest in record.outputs.items() if path != findings)
    except ProblemsError:
        return False


def _circumstances(before: dict[str, str], now: dict[str, str]) -> Iterator[str]:
    for name in sorted(before.keys() | now.keys()):
        was, is_now = before.get(name, ""), now.get(name, "")
        if was == is_now:
            continue
        if name == "code":
            yield "padspec's own files have changed"
        elif name in _OPTIONS:
            yield _OPTIONS[name][is_now == "True"]
        else:
            yield f"{name} was {was or 'not there'} and is {is_now or 'not there'}"


def _variation(record: Record, variation: Variation) -> Iterator[str]:
    if record.varied != settings_digest(variation):
        yield f"{variation.file or 'the collection'} sets something else for it"
    elif variation.file in record.told_places and record.varied_places != places_digest(variation):
        yield f"lines have moved in {variation.file}, where its findings point"


def _file(path: str, before: str, now: str) -> Iterator[str]:
    if before != now:
        yield f"{path} has {'come' if not before else 'gone' if not now else 'changed'}"


def _output(path: str, written: str, now: str) -> Iterator[str]:
    if written != now:
        what = "should not be there" if not written else "is not as it was written" if now else "has gone"
        yield f"{path} {what}"
