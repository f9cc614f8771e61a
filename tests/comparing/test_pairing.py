"""Which pads there are before and now, and which belong together."""

from padspec.collection.variants import Member
from padspec.comparing.sides import Coded, Pair, Source, coded, members_of, paired, source_of
from padspec.reading.variation import Variation
from padspec.workspace import MemoryWorkspace

from .repository import BOTH, MOTH, OWL

HERE = source_of(".").root


def one(path: str, sku: str, *values: tuple[str, str]) -> Coded:
    return Coded(Member(path, Variation(values=values)), sku, sku, sku)


def test_pads_are_paired_by_sku_whatever_its_case_and_the_name_of_the_file() -> None:
    before, now = one("a.pad.yaml", "ng-moth"), one("b.pad.yaml", "NG-MOTH")
    assert paired([before], [now]) == (Pair(before, now),)


def test_a_pad_with_another_sku_is_known_by_its_file() -> None:
    before, now = one("a.pad.yaml", "OLD"), one("a.pad.yaml", "NEW")
    assert paired([before], [now]) == (Pair(before, now),)


def test_variants_are_known_by_their_values() -> None:
    before = [one("a.pad.yaml", f"A--{c}", ("colour", c)) for c in ("dusk", "dawn")]
    now = [one("a.pad.yaml", f"B-{c}", ("colour", c)) for c in ("dawn", "dusk")]
    assert paired(before, now) == (Pair(before[1], now[0]), Pair(before[0], now[1]))


def test_the_sku_goes_before_the_file() -> None:
    old = [one("a.pad.yaml", "A"), one("b.pad.yaml", "B")]
    new = [one("a.pad.yaml", "B"), one("b.pad.yaml", "A")]
    assert paired(old, new) == (Pair(old[1], new[0]), Pair(old[0], new[1]))


def test_of_pads_that_share_a_sku_those_of_one_file_belong_together() -> None:
    old = [one("a.pad.yaml", "X"), one("b.pad.yaml", "X")]
    new = [one("b.pad.yaml", "X"), one("a.pad.yaml", "X")]
    assert paired(old, new) == (Pair(old[1], new[0]), Pair(old[0], new[1]))


def test_what_is_new_stands_in_its_place_and_what_has_gone_at_the_end() -> None:
    stays, gone, new = one("a.pad.yaml", "A"), one("g.pad.yaml", "G"), one("n.pad.yaml", "N")
    assert paired([gone, stays], [new, stays]) == (Pair(None, new), Pair(stays, stays), Pair(gone, None))


def folder(**files: str) -> MemoryWorkspace:
    return MemoryWorkspace({name.replace("__", "."): text.encode() for name, text in files.items()})


def test_a_folder_means_its_collection_where_there_is_one() -> None:
    workspace = folder(collection__yaml=BOTH, moth__pad__yaml=MOTH, owl__pad__yaml=OWL, bat__pad__yaml=OWL)
    found = members_of(Source(HERE, ""), workspace)
    assert [member.path for member in found] == ["moth.pad.yaml", "owl.pad.yaml"]


def test_a_folder_without_a_collection_means_every_design_in_it() -> None:
    found = members_of(Source(HERE, ""), folder(moth__pad__yaml=MOTH, bat__pad__yaml=OWL))
    assert [member.path for member in found] == ["bat.pad.yaml", "moth.pad.yaml"]


def test_a_design_that_is_not_there_means_no_pad() -> None:
    assert members_of(Source(HERE, "gone.pad.yaml"), folder(moth__pad__yaml=MOTH)) == ()


def test_skus_and_names_are_read_off_designs_without_resolving_them() -> None:
    workspace = folder(moth__pad__yaml="pad: Moth list\nsku: M1\nlayout: nowhere\n", bat__pad__yaml="pad: Bats\n")
    found = coded(
        [Member("moth.pad.yaml", Variation(sku="{sku}--dusk")), Member("bat.pad.yaml", Variation())], workspace
    )
    assert [(pad.sku, pad.name) for pad in found] == [("M1--dusk", "Moth list"), ("bat", "Bats")]
