"""Exit status, JSON, loudness and colour: what other programs and pipes rely on."""

import json
import re
import subprocess
import sys
from pathlib import Path

import click
import pytest
from kit import picture

from padspec.cli.main import COMMANDS
from padspec.report import finding_data

from .command import FAULTY, PLAIN, padspec, padspec_process, put

ESCAPE = "\x1b"
FINDING_KEYS = {
    *("check", "severity", "file", "line", "column", "length"),
    *("message", "measured", "limit", "remedy", "changes", "allowed"),
}


@pytest.fixture
def sound(tmp_path):
    return put(tmp_path, moth__pad__yaml=PLAIN)


@pytest.fixture
def faulty(tmp_path):
    return put(tmp_path, moth__pad__yaml=FAULTY)


def test_check_ends_with_0_where_nothing_is_wrong(sound):
    assert padspec(sound, "check").status == 0


def test_check_ends_with_0_on_warnings(tmp_path):
    put(tmp_path, moth__pad__yaml=PLAIN + 'rows: {colour: "#cccccc"}\n')
    checked = padspec(tmp_path, "check")
    assert (checked.status, "warning rule-contrast" in checked.err) == (0, True)


def test_check_ends_with_1_on_errors(faulty):
    assert padspec(faulty, "check").status == 1


def test_check_ends_with_0_where_the_error_is_allowed(tmp_path):
    put(tmp_path, moth__pad__yaml=FAULTY + "allow: {rule-contrast: a whisper on purpose}\n")
    checked = padspec(tmp_path, "check")
    assert checked.status == 0
    assert "allowed error rule-contrast" in checked.err
    assert "a whisper on purpose" in checked.err
    assert "1 allowed" in checked.err


def test_check_writes_nothing(sound):
    before = sorted(sound.rglob("*"))
    padspec(sound, "check")
    assert sorted(sound.rglob("*")) == before


def test_a_finding_shows_place_line_caret_measure_limit_and_remedy(faulty):
    told = padspec(faulty, "check").err
    assert "moth.pad.yaml:3:16: error rule-contrast: " in told
    assert 'rows: {colour: "#eeeeee", checkbox: none}' in told
    assert "^" in told
    assert re.search(r"measured 1\.16\d* : 1, limit 1\.5 : 1", told)
    assert re.search(r'Set rows\.colour: "#[0-9a-f]{6}"', told)


def test_check_from_a_folder_above_shows_paths_from_here(tmp_path):
    (tmp_path / "pads").mkdir()
    put(tmp_path / "pads", moth__pad__yaml=FAULTY)
    assert "pads/moth.pad.yaml:3:16: error" in padspec(tmp_path, "check", "pads").err


@pytest.mark.parametrize("command", ["check", "build"])
def test_json_is_one_document_on_stdout_and_nothing_else(faulty, command):
    """json.loads refuses anything before or behind one document."""
    outcome = padspec(faulty, command, "--json")
    assert (outcome.status, outcome.err) == (1, "")
    design = outcome.json["designs"][0]
    assert (design["state"], design["n_up"], design["copies"]) == ("failed", 3, 20)
    assert set(design["findings"][0]) == FINDING_KEYS


@pytest.mark.parametrize(
    "args",
    [
        ("check", "missing.pad.yaml"),
        ("build", "missing.pad.yaml"),
        ("new", "missing.png"),
        ("palette", "missing.png"),
        ("build", "broken.pad.yaml"),
        ("check", "broken.pad.yaml"),
    ],
)
def test_json_tells_problems_too(tmp_path, args):
    put(tmp_path, broken__pad__yaml="pad: Errands\ntrimm: 3\n")
    outcome = padspec(tmp_path, *args, "--json")
    assert (outcome.status, outcome.err) == (2, "")
    assert set(outcome.json["problems"][0]) == {"file", "line", "column", "message", "mend"}


def test_json_of_new_and_palette_is_one_document(tmp_path):
    put(tmp_path, moth__png=picture(900, 800))
    assert padspec(tmp_path, "palette", "moth.png", "--json").json["colours"][0]["rank"] == 1
    new = padspec(tmp_path, "new", "moth.png", "--json")
    assert (new.json["written"], new.err) == ("moth.pad.yaml", "")


def test_json_stays_one_document_when_the_picture_is_copied_in(tmp_path):
    (tmp_path / "pads").mkdir()
    put(tmp_path, moth__png=picture(900, 800))
    assert padspec(tmp_path / "pads", "new", "../moth.png", "--json").json["state"] == "passed"


@pytest.mark.parametrize("stage", ["document", "design", "face", "sheet", "findings"])
def test_show_prints_every_stage_as_one_json_document(sound, stage):
    shown = padspec(sound, "show", "moth.pad.yaml", "--stage", stage)
    assert (shown.status, shown.err) == (0, "")
    assert json.loads(shown.out) is not None


@pytest.mark.parametrize("folder", ["almanac", "night-garden"])
@pytest.mark.parametrize("stage", ["design", "face", "sheet"])
def test_show_prints_every_example(folder, stage):
    for design in sorted((Path(__file__).parents[2] / "examples" / folder).glob("*.pad.yaml")):
        told = padspec(design.parent, "show", design.name, "--stage", stage)
        assert told.status == 0, told
        assert told.json is not None


def test_show_tells_a_price_as_it_was_written(sound):
    put(sound, moth__pad__yaml=(sound / "moth.pad.yaml").read_text() + "price: 6.50\n")
    design = padspec(sound, "show", "moth.pad.yaml", "--stage", "design").json
    assert design["listing"]["price"] == "6.50"


def test_show_tells_where_each_leaf_lies(sound):
    """Three leaves of 90 mm with 4 mm between: 278 mm, centred on the 297 mm of A4."""
    data = padspec(sound, "show", "moth.pad.yaml", "--stage", "sheet").json
    assert [slot["trim"]["y"] for slot in data["slots"]] == pytest.approx([9.5, 103.5, 197.5])


def test_quiet_says_nothing_where_nothing_is_wrong(sound):
    for command in ("check", "build"):
        outcome = padspec(sound, command, "--quiet")
        assert (outcome.out, outcome.err) == ("", "")


def test_quiet_still_tells_findings(faulty):
    assert "error rule-contrast" in padspec(faulty, "check", "-q").err


def test_quiet_build_still_tells_findings(faulty):
    assert "error rule-contrast" in padspec(faulty, "build", "-q", "--no-proofs").err


def test_verbose_names_the_steps_in_order_on_stderr(sound):
    outcome = padspec(sound, "build", "--verbose", "--no-proofs")
    steps = re.findall(r"moth\.pad\.yaml: (\w+)", outcome.err)
    assert steps == ["read", "resolve", "compose", "tile", "check", "draw"]
    assert "read" not in outcome.out


def test_a_pipe_gets_no_escape_codes(faulty):
    outcome = padspec_process(faulty, "build", "--no-proofs", NO_COLOR="")
    assert outcome.status == 1
    assert ESCAPE not in outcome.out + outcome.err


def test_a_terminal_gets_colour_and_no_color_takes_it_away(faulty):
    """With a pseudo-terminal on stderr, by the standard library's pty; see no-color.org for NO_COLOR."""
    assert ESCAPE in on_terminal(faulty)
    assert ESCAPE not in on_terminal(faulty, NO_COLOR="1")


def on_terminal(folder, **surroundings: str) -> str:
    import os
    import pty

    outer, inner = pty.openpty()
    environment = {k: v for k, v in os.environ.items() if k != "NO_COLOR"} | {"TERM": "xterm"} | surroundings
    program = "from padspec.cli.main import main; main()"
    process = subprocess.Popen(
        [sys.executable, "-c", program, "check"], cwd=folder, env=environment, stdout=inner, stderr=inner
    )
    os.close(inner)
    said = b""
    try:
        while part := os.read(outer, 4096):
            said += part
    except OSError:
        pass  # the other end of a pseudo-terminal ends with an error on Linux
    process.wait()
    os.close(outer)
    return said.decode()


def test_version_is_that_of_the_package(tmp_path):
    import padspec as package

    assert padspec(tmp_path, "--version").out == f"padspec {package.__version__}\n"


@pytest.mark.parametrize("command", list(COMMANDS))
def test_help_of_a_command_has_examples(tmp_path, command):
    outcome = padspec(tmp_path, command, "--help")
    assert outcome.status == 0
    assert re.search(rf"^ +padspec {command}", outcome.out, re.MULTILINE)


def test_help_lists_every_command_with_first_steps(tmp_path):
    told = padspec(tmp_path, "--help").out
    for command in COMMANDS:
        assert re.search(rf"^  {command} ", told, re.MULTILINE)
    assert "padspec new moth.png" in told


def test_every_command_in_an_example_is_one_that_there_is(tmp_path):
    for command in COMMANDS:
        shown = re.findall(r"^ +padspec ([\w-]+)", padspec(tmp_path, command, "--help").out, re.MULTILINE)
        assert set(shown) <= set(COMMANDS)


def test_explain_tells_every_check(tmp_path):
    from padspec.checks.table import CHECKS

    listed = padspec(tmp_path, "explain").out
    for check in CHECKS:
        assert check.name in listed
        told = padspec(tmp_path, "explain", check.name)
        assert told.status == 0
        assert "Remedy" in told.out


def test_explain_tells_a_key(tmp_path):
    told = padspec(tmp_path, "explain", "rows.pitch")
    assert (told.status, "8 mm" in told.out) == (0, True)


def test_bash_gets_a_completion_script(tmp_path):
    done = padspec_process(tmp_path, _PADSPEC_COMPLETE="bash_source", COMP_WORDS="padspec")
    assert done.status == 0
    assert "complete -o" in done.out


@pytest.mark.parametrize(
    ("typed", "position", "expected"),
    [
        ("padspec ", "1", set(COMMANDS)),
        ("padspec bu", "1", {"build"}),
        ("padspec build --d", "2", {"--despite-errors"}),
    ],
)
def test_bash_completes_commands_and_options(tmp_path, typed, position, expected):
    done = padspec_process(tmp_path, _PADSPEC_COMPLETE="bash_complete", COMP_WORDS=typed, COMP_CWORD=position)
    assert {line.partition(",")[2] for line in done.out.splitlines()} == expected


def test_importing_the_entry_point_loads_nothing_heavy():
    program = (
        "import sys, padspec.cli.main; "
        "print(sorted(set(sys.modules) & {'numpy', 'jsonschema', 'pikepdf', 'PIL', 'yaml', 'colormath'}))"
    )
    assert subprocess.run([sys.executable, "-c", program], capture_output=True, text=True).stdout == "[]\n"


def test_a_build_where_nothing_changed_loads_nothing_that_draws(sound):
    padspec(sound, "build", "--no-proofs")
    program = (
        "import sys\nsys.argv = ['padspec', 'build', '--no-proofs']\n"
        "from padspec.cli.main import main\n"
        "try: main()\nexcept SystemExit: pass\n"
        "print(sorted(set(sys.modules) & {'numpy', 'jsonschema', 'pikepdf', 'PIL', 'colormath', 'uharfbuzz'}))"
    )
    done = subprocess.run([sys.executable, "-c", program], cwd=sound, capture_output=True, text=True)
    assert "(unchanged)" in done.stdout
    assert done.stdout.endswith("[]\n")


def test_a_reader_that_goes_away_is_no_fault(sound):
    program = "from padspec.cli.main import main; main()"
    command = f"{sys.executable} -c '{program}' explain | head -1; echo ${{PIPESTATUS[0]}}"
    done = subprocess.run(["bash", "-c", command], cwd=sound, capture_output=True, text=True)
    assert done.stdout.splitlines()[-1] == "0"
    assert "Traceback" not in done.stderr
    assert "BrokenPipe" not in done.stderr


def test_colour_codes_are_what_click_would_write():
    """So that the tests above look for the right thing."""
    assert ESCAPE in click.style("x", fg="red")


def test_the_data_of_a_finding_has_every_key():
    from kit import pad

    assert set(finding_data(pad(FAULTY).findings[0])) == FINDING_KEYS
