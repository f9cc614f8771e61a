"""Remedies are tried before they are offered."""

from dataclasses import replace

from kit import PLAIN, apply

from padspec.base.findings import Finding, Remedy
from padspec.pipeline import make
from padspec.reading.with_value import with_value
from padspec.trial import WITHDRAWN, tried
from padspec.workspace import MemoryWorkspace

FAINT = apply(PLAIN, {"rows.colour": "#dddddd", "rows.checkbox": "none"})


def offered(key: tuple[str, ...], value: str) -> Finding:
    """The finding about faint rules with another remedy, after it was tried."""
    workspace = MemoryWorkspace({"x.pad.yaml": FAINT.encode()})
    pad = make("x.pad.yaml", workspace)
    (finding,) = (found for found in pad.findings if found.check == "rule-contrast")
    proposed = replace(finding, remedy=Remedy("Do this.", ((key, value),)))
    (told,) = tried((proposed,), pad.documents, workspace)
    return told


def test_a_value_that_cures_is_offered() -> None:
    assert offered(("rows", "colour"), "#444444").remedy == Remedy("Do this.", ((("rows", "colour"), "#444444"),))


def test_a_value_that_does_not_cure_is_withdrawn() -> None:
    assert offered(("rows", "colour"), "#d8d8d8").remedy == Remedy(WITHDRAWN)


def test_a_value_that_the_schema_refuses_is_withdrawn() -> None:
    assert offered(("rows", "weight"), "900 mm").remedy == Remedy(WITHDRAWN)


def test_a_value_that_contradicts_another_is_withdrawn() -> None:
    assert offered(("sheet", "least-bleed"), "9 mm").remedy == Remedy(WITHDRAWN)


def test_a_value_is_set_where_there_was_no_bundle_yet() -> None:
    root = make("x.pad.yaml", MemoryWorkspace({"x.pad.yaml": PLAIN.encode()})).documents.design.root
    changed = with_value(root, ("sheet", "bleed"), "2 mm")
    assert changed.get("sheet").get("bleed").text == "2 mm"
    assert root.get("sheet") is None
