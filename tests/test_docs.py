"""The documents are run: commands, files, steps and examples that they name are real."""

import json
import re
import shlex
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from press.made import profile_bytes

from padspec.pipeline import STEPS

ROOT = Path(__file__).resolve().parent.parent
README = (ROOT / "README.md").read_text("utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")
PADSPEC = Path(sys.executable).with_name("padspec")


def blocks(text: str, kind: str) -> list[str]:
    return re.findall(rf"```{kind}\n(.*?)```", text, re.DOTALL)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    shutil.copy(ROOT / "examples" / "night-garden" / "art" / "moth.png", tmp_path / "moth.png")
    return tmp_path


def run(command: str, folder: Path) -> subprocess.CompletedProcess[str]:
    words = shlex.split(command, comments=True)
    return subprocess.run([str(PADSPEC), *words[1:]], cwd=folder, capture_output=True, text=True, check=False)


def test_the_readme_holds_two_one_line_set_up_commands() -> None:
    found = re.findall(r"<!-- set-up: (\w+) -->\n```sh\n([^\n]+)\n```", README)
    assert [name for name, _ in found] == ["examples", "tests"]


def test_the_tour_of_the_readme_runs_and_makes_the_files_it_names(folder: Path) -> None:
    tour = next(block for block in blocks(README, "sh") if block.startswith("padspec new"))
    for line in tour.splitlines():
        done = run(line, folder)
        assert done.returncode == 0, done.stderr
    table = README[README.index("| file |") :].partition("\n\n")[0]
    named = re.findall(r"`([\w./-]+\.(?:pdf|png|svg|json))`", table)
    assert len(named) == 6
    for name in named:
        assert (folder / (name if "/" in name else f"out/moth/{name}")).is_file(), name


def test_every_other_command_that_the_readme_names_runs(folder: Path) -> None:
    named = {
        c for c in re.findall(r"`(padspec (?:palette|explain|check|show)[^`…]*)`", README) if len(c.split()) > 2
    }
    assert named >= {"padspec palette moth.png", "padspec explain rows.pitch"}
    for command in named:
        assert run(command, folder).returncode == 0, command


def test_the_design_of_the_readme_passes_its_checks(folder: Path) -> None:
    (folder / "moth.pad.yaml").write_text(blocks(README, "yaml")[0], "utf-8")
    done = run("padspec check moth.pad.yaml", folder)
    assert done.returncode == 0, done.stderr


def test_studio_collection_and_layout_of_the_readme_work_together(folder: Path) -> None:
    _, studio, collection, *_ = blocks(README, "yaml")
    layout = next(block for block in blocks(README, "yaml") if block.startswith("layout: two-lists"))
    (folder / "studio.yaml").write_text(studio, "utf-8")
    (folder / "collection.yaml").write_text(collection, "utf-8")
    (folder / "layouts").mkdir()
    (folder / "layouts" / "two-lists.yaml").write_text(layout, "utf-8")
    size = "trim: {width: 90 mm, height: 190 mm}\nart: {file: moth.png}\n"
    (folder / "moth.pad.yaml").write_text(f"pad: Moth\nlayout: two-lists\n{size}", "utf-8")
    (folder / "owl.pad.yaml").write_text(f"pad: Owl\n{size}", "utf-8")
    done = run("padspec build", folder)
    assert done.returncode == 0, done.stderr
    assert "Moth" in done.stdout
    assert "Owl" in done.stdout


def test_the_week_of_the_readme_begins_as_it_says(folder: Path) -> None:
    week = next(block for block in blocks(README, "yaml") if "layout: week" in block)
    (folder / "semaine.pad.yaml").write_text(week, "utf-8")
    assert run("padspec check semaine.pad.yaml", folder).returncode == 0
    face = json.loads(run("padspec show semaine.pad.yaml --stage design", folder).stdout)
    assert json.dumps(face).index("dimanche") < json.dumps(face).index("lundi")


def test_the_pictures_for_a_shop_are_made_as_the_readme_says(folder: Path) -> None:
    (folder / "moth.pad.yaml").write_text(blocks(README, "yaml")[0], "utf-8")
    commands = next(block for block in blocks(README, "sh") if "flat-lay" in block).splitlines()
    for command in commands:
        done = run(command, folder)
        assert done.returncode == 0, done.stderr
    assert (folder / "out/moth/flat-lay-colourways.png").is_file()
    assert (folder / "out/gallery/gallery.pdf").is_file()


def test_the_job_of_the_readme_is_planned_and_its_pages_are_made(folder: Path) -> None:
    job = next(block for block in blocks(README, "yaml") if block.startswith("job:"))
    (folder / "saturday.job.yaml").write_text(job, "utf-8")
    for sku in ("NG-MOTH", "NG-OWL"):
        trim = "trim: {width: 90 mm, height: 190 mm}"
        (folder / f"{sku}.pad.yaml").write_text(f"pad: {sku}\nsku: {sku}\n{trim}\n", "utf-8")
    commands = next(block for block in blocks(README, "sh") if block.startswith("padspec plan")).splitlines()
    assert len(commands) == 2
    for command in commands:
        done = run(command, folder)
        assert done.returncode == 0, done.stderr
    made = sorted(path.name for path in (folder / "out/jobs/Saturday-market").iterdir())
    assert made[-1] == "plan.json"
    assert any(re.fullmatch(r"page-1-\d+-copies\.pdf", name) for name in made)


def test_the_stock_is_kept_as_the_readme_says(folder: Path) -> None:
    (folder / "saturday.job.yaml").write_text("job: Saturday\npads: {NG-MOTH: 4, NG-OWL: 5}\n", "utf-8")
    for sku in ("NG-MOTH", "NG-OWL"):
        trim = "trim: {width: 90 mm, height: 190 mm}"
        (folder / f"{sku}.pad.yaml").write_text(f"pad: {sku}\nsku: {sku}\n{trim}\n", "utf-8")
    commands = next(block for block in blocks(README, "sh") if block.startswith("padspec stock")).splitlines()
    assert len(commands) == 5
    for command in commands:
        done = run(command, folder)
        assert done.returncode == 0, done.stderr
    assert (folder / "restock.job.yaml").is_file()


def test_tags_and_stamp_are_made_as_the_readme_says(folder: Path) -> None:
    studio = next(block for block in blocks(README, "yaml") if "tag-sheets:" in block)
    (folder / "studio.yaml").write_text(studio, "utf-8")
    (folder / "saturday.job.yaml").write_text("job: Saturday\npads: {NG-MOTH: 30}\n", "utf-8")
    design = "pad: Moth\nsku: NG-MOTH\ntrim: {width: 90 mm, height: 190 mm}\nprice: 6.5\nart: {file: moth.png}\n"
    (folder / "moth.pad.yaml").write_text(f'{design}barcode: "2000000000107"\n', "utf-8")
    commands = next(block for block in blocks(README, "sh") if block.startswith("padspec tags")).splitlines()
    assert len(commands) == 4
    for command in commands:
        done = run(command, folder)
        assert done.returncode == 0, done.stderr
    data = json.loads((folder / "out/tags/stickers/tags.json").read_text("utf-8"))
    assert (data["labels"], data["pages"], data["tags"][0]["price"]) == (30, 2, "$6.50")
    assert (folder / "out/tags/cards/tags.pdf").is_file()
    assert (folder / "out/stamp/stamp.svg").is_file()


def test_the_printer_is_calibrated_as_the_readme_says(folder: Path) -> None:
    commands = next(block for block in blocks(README, "sh") if block.startswith("padspec calibrate")).splitlines()
    assert run("padspec new moth.png", folder).returncode == 0
    for command in commands:
        assert run(command, folder).returncode == 0, command
    assert (folder / "out/calibration.pdf").is_file()
    assert (folder / "out/moth/strip.pdf").is_file()


def test_work_is_sent_out_as_the_readme_says(folder: Path) -> None:
    studio = next(block for block in blocks(README, "yaml") if "press:" in block)
    (folder / "studio.yaml").write_text(studio, "utf-8")
    (folder / "profiles").mkdir()
    (folder / "profiles/uncoated.icc").write_bytes(profile_bytes())
    (folder / "owl.pad.yaml").write_text("pad: Owl\ntrim: {width: 60 mm, height: 90 mm}\n", "utf-8")
    assert run("padspec build", folder).returncode == 0
    assert (folder / "out/owl/press.pdf").is_file()
    assert (folder / "out/owl/press.png").is_file()


def test_developers_names_the_steps_of_the_pipeline_in_order() -> None:
    assert tuple(re.findall(r"^\d\. `(\w+)`", DEVELOPERS, re.MULTILINE)) == STEPS


def test_verbose_prints_the_steps(folder: Path) -> None:
    assert run("padspec new moth.png", folder).returncode == 0
    said = run("padspec build --verbose", folder).stderr
    assert re.findall(r"^moth\.pad\.yaml: (\w+)$", said, re.MULTILINE) == list(STEPS)


def test_the_map_of_developers_is_the_package() -> None:
    named = set(re.findall(r"`(padspec/(?:\w+/)*(?:\w+/|\w+\.py))`", DEVELOPERS[DEVELOPERS.index("## The map") :]))
    named = {name for name in named if name.endswith("/") or name.count("/") == 1}
    packages = {f"{p.parent.relative_to(ROOT).as_posix()}/" for p in (ROOT / "padspec").glob("*/**/__init__.py")}
    modules = {f"padspec/{p.name}" for p in (ROOT / "padspec").glob("*.py")} - {"padspec/__init__.py"}
    assert named == packages | modules


@pytest.mark.parametrize("text", [README, DEVELOPERS], ids=["README", "DEVELOPERS"])
def test_every_path_that_a_document_names_is_there(text: str) -> None:
    named = re.findall(r"`((?:padspec|schemas|layouts|tests|examples|\.ci)/[\w./-]*)`", text)
    inside = re.findall(r"`((?:base|checks|cli|compose|draw|resolve|reading)/\w+\.py)`", text)
    linked = re.findall(r"\]\(([\w./-]+)\)", text)
    missing = [p for p in [*named, *linked, *(f"padspec/{p}" for p in inside)] if not (ROOT / p).exists()]
    assert [p for p in missing if "/out/" not in p and "NAME" not in p and "two-lists" not in p] == []


def test_generated_documents_are_up_to_date() -> None:
    done = subprocess.run(
        [sys.executable, ".ci/reference.py", "--check"], cwd=ROOT, capture_output=True, check=False
    )
    assert done.returncode == 0, done.stdout.decode()
