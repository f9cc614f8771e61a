"""padspec plan and build --plan: a job from its file or from words, its pages, and what is wrong with one."""

import json

import pytest

from .command import padspec, put

PAD = "pad: {name}\nsku: {name}\ntrim: {{width: 90 mm, height: 190 mm}}\nlayout: ruled\n"
JOB = "job: Fair\npads: {A: 4, B: 1}\n"


@pytest.fixture
def stall(tmp_path):
    return put(
        tmp_path,
        a__pad__yaml=PAD.format(name="A"),
        b__pad__yaml=PAD.format(name="B"),
        c__pad__yaml=PAD.format(name="C"),
        fair__job__yaml=JOB,
        studio__yaml="stock: {price: 0.05}\nmoney: {currency: GBP}\n",
    )


def told(folder, *words):
    return json.loads(padspec(folder, "plan", *words, "--json").out)


def test_a_job_file_says_how_many_of_which(stall):
    data = told(stall, "fair.job.yaml")
    assert [(d["sku"], d["pads_wanted"]) for d in data["designs"]] == [("A", 4), ("B", 1)]
    assert data["job"] == "Fair"


def test_words_say_the_same(stall):
    """4 × 52.5 ÷ 3 + 2 = 72 for A, 52.5 ÷ 3 + 2 = 20 for B."""
    file, words = told(stall, "fair.job.yaml"), told(stall, "--pads", "A=4", "--pads", "B=1")
    assert file["pages"] != []
    assert file["sheets"] == words["sheets"] == 92
    assert file["paper_cost"] == "4.60"


def test_a_bare_number_is_for_every_design(stall):
    assert [(d["sku"], d["pads_wanted"]) for d in told(stall, "--pads", "2")["designs"]] == [
        ("A", 2),
        ("B", 2),
        ("C", 2),
    ]


def test_designs_share_a_page_where_that_saves_sheets(stall):
    # One pad deep of each, 53 sheets and 2 to test; each alone 17.5: 18 and 2, three times.
    assert (told(stall)["sheets"], told(stall, "--no-gang")["sheets"]) == (55, 60)


def test_the_plan_is_told_in_words(stall):
    out = padspec(stall, "plan", "fair.job.yaml").out
    for words in ("Fair: 5 pads of 2 designs", "Print 92 sheets", "4.60 GBP", "from the raw", "gutter 4 mm"):
        assert words in out


def test_pages_are_written_in_order_with_their_copies(stall):
    done = padspec(stall, "build", "--plan", "fair.job.yaml")
    assert done.status == 0, done.err
    names = sorted(path.name for path in (stall / "out/jobs/Fair").iterdir())
    assert names == [
        "page-1-72-copies.pdf",
        "page-1-cuts.svg",
        "page-1.png",
        "page-2-20-copies.pdf",
        "page-2-cuts.svg",
        "page-2.png",
        "plan.json",
    ]


def test_pages_of_an_earlier_plan_go(stall):
    padspec(stall, "build", "--plan", "fair.job.yaml")
    (stall / "out/jobs/Fair/notes.txt").write_text("mine")
    put(stall, fair__job__yaml="job: Fair\npads: {A: 1}\n")
    padspec(stall, "build", "--plan", "fair.job.yaml", "--no-proofs")
    names = sorted(path.name for path in (stall / "out/jobs/Fair").iterdir())
    assert names == ["notes.txt", "page-1-20-copies.pdf", "page-1-cuts.svg", "plan.json"]


def test_the_same_job_gives_the_same_bytes(stall):
    def pages():
        padspec(stall, "build", "--plan", "fair.job.yaml")
        return {path.name: path.read_bytes() for path in (stall / "out/jobs/Fair").iterdir()}

    assert pages() == pages()


def test_no_page_is_written_of_a_design_with_errors(stall):
    put(stall, b__pad__yaml=PAD.format(name="B") + "rows: {weight: 0.01 mm}\n")
    done = padspec(stall, "build", "--plan", "fair.job.yaml")
    assert done.status == 1
    assert "B" in done.err
    assert not (stall / "out").exists()
    assert padspec(stall, "build", "--plan", "fair.job.yaml", "--despite-errors").status == 1
    assert (stall / "out/jobs/Fair/plan.json").exists()


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--pads", "X=3"), "No design here has the SKU X"),
        (("--pads", "0"), "from 1 to 100000"),
        (("--pads", "some"), "--pads SKU=12"),
        (("none.job.yaml",), "There is no such job"),
        (("fair.job.yaml", "fair.job.yaml"), "Here are 2 jobs"),
        (("fair.job.yaml", "--pads", "3"), "--pads does too"),
    ],
)
def test_what_is_wrong_is_told(stall, words, says):
    done = padspec(stall, "plan", *words)
    assert done.status == 2
    assert says in done.err


def test_an_unknown_sku_is_told_at_its_line(stall):
    put(stall, fair__job__yaml="job: Fair\npads:\n  A: 4\n  BB: 1\n")
    done = padspec(stall, "plan", "fair.job.yaml")
    assert done.status == 2
    assert "fair.job.yaml:4:3" in done.err


def test_a_design_that_does_not_fit_is_told(stall):
    put(stall, b__pad__yaml=PAD.format(name="B").replace("190 mm", "390 mm"))
    done = padspec(stall, "plan", "fair.job.yaml")
    assert done.status == 2
    assert "b.pad.yaml:3:7: Not one face fits A4: 90 + 2 × 1.5 = 93 mm by 390 + 2 × 1.5 = 393 mm" in done.err


def test_pages_of_an_earlier_plan_go_when_a_design_has_errors_or_no_longer_fits(stall):
    for text in (
        PAD.format(name="B") + "rows: {weight: 0.01 mm}\n",
        PAD.format(name="B").replace("190 mm", "390 mm"),
    ):
        put(stall, b__pad__yaml=PAD.format(name="B"))
        padspec(stall, "build", "--plan", "fair.job.yaml", "--no-proofs")
        assert (stall / "out/jobs/Fair/plan.json").exists()
        put(stall, b__pad__yaml=text)
        assert padspec(stall, "build", "--plan", "fair.job.yaml").status in (1, 2)
        assert not (stall / "out/jobs/Fair").exists()


def test_pages_go_even_where_the_plan_that_named_them_was_lost(stall):
    padspec(stall, "build", "--plan", "fair.job.yaml", "--no-proofs")
    (stall / "out/jobs/Fair/plan.json").unlink()
    put(stall, fair__job__yaml="job: Fair\npads: {A: 1}\n")
    padspec(stall, "build", "--plan", "fair.job.yaml", "--no-proofs")
    names = sorted(path.name for path in (stall / "out/jobs/Fair").iterdir())
    assert names == ["page-1-20-copies.pdf", "page-1-cuts.svg", "plan.json"]


def test_two_jobs_do_not_share_a_folder(stall):
    put(stall, fair__job__yaml="job: A b\npads: {A: 1}\n", other__job__yaml="job: A-b\npads: {B: 1}\n")
    assert padspec(stall, "build", "--plan", "fair.job.yaml", "--no-proofs").status == 0
    done = padspec(stall, "build", "--plan", "other.job.yaml", "--no-proofs")
    assert done.status == 2
    assert "A b" in done.err
    assert json.loads((stall / "out/jobs/A-b/plan.json").read_text())["job"] == "A b"


def test_two_designs_of_one_sku_are_refused(stall):
    put(stall, c__pad__yaml=PAD.format(name="A"))
    done = padspec(stall, "plan", "--pads", "A=3")
    assert done.status == 2
    assert "a.pad.yaml" in done.err
    assert "c.pad.yaml" in done.err


def test_a_sku_that_is_nearly_right_is_guessed_among_all_designs(stall):
    put(stall, c__pad__yaml=PAD.format(name="LONG-NAME"), fair__job__yaml="job: Fair\npads: {A: 1, LONG-NAM: 1}\n")
    assert "Did you mean LONG-NAME?" in padspec(stall, "plan", "fair.job.yaml").err


def test_a_chance_of_nothing_is_no_fault(stall):
    put(stall, studio__yaml="tolerance: {chance: 0 %}\n")
    assert padspec(stall, "plan", "--pads", "A=1").status == 0


def test_every_input_stands_in_the_data(stall):
    put(
        stall,
        studio__yaml="stock: {caliper: 0.1 mm, price: 0.05}\ncutter: {kind: guillotine, clamp-height: 12 mm}\n",
    )
    data = told(stall, "--pads", "A=4")
    inputs, cuts = data["inputs"], data["pages"][0]["cut_plan"]
    assert cuts["lifts"] == -(
        -cuts["sheets"] // int(inputs["cutter"]["clamp-height"] / inputs["stock"]["caliper"])
    )
    assert cuts["minutes"] == pytest.approx(cuts["strokes"] * inputs["cutter"]["stroke-seconds"] / 60, abs=1e-3)
    assert float(data["paper_cost"]) == data["sheets"] * float(inputs["price_of_a_sheet"]["A4"])
    assert data["designs"][0]["leaves_with_overs"] == 50 * (1 + inputs["overs"]["share"])


def test_a_job_is_no_design(stall):
    for command in ("check", "build"):
        done = padspec(stall, command, "fair.job.yaml")
        assert done.status == 2
        assert "padspec build --plan fair.job.yaml" in done.err


def test_a_job_without_designs_beside_it_says_so(stall, tmp_path):
    (tmp_path / "away").mkdir()
    put(tmp_path / "away", fair__job__yaml=JOB)
    done = padspec(stall, "plan", "away/fair.job.yaml")
    assert done.status == 2
    assert "No design lies beside this job" in done.err
