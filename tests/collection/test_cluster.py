"""Work done by a real cluster: a scheduler and two workers as processes of this machine, which may end."""

import os
import subprocess
import sys
from importlib.metadata import version
from pathlib import Path

import numpy as np
import pytest
from cli.command import padspec, written
from kit import PLAIN, apply, png

from padspec.base.errors import ProblemsError
from padspec.collection.cluster.cluster import Cluster
from padspec.collection.source import Folder
from padspec.collection.work import BuildWish, Unit, work
from padspec.reading.variation import Variation

from .local_cluster import (
    LocalCluster,
    Reading,
    arrivals,
    count_arrivals,
    empty_shelf,
    ends_its_worker,
    pretend,
    reads,
    slowly,
    started,
    until,
)

ART = {"file": "art.png", "cutout": "none", "width": "12 mm"}
DESIGN = apply(PLAIN, {"art": ART, "ground.pattern": {"kind": "motif", "file": "motif.png"}})
COLLECTION = """
collection: Errands
designs: [a.pad.yaml, b.pad.yaml]
variants:
  - {axis: ruling, values: {wide: {rows: {pitch: 9 mm}}, middle: {}, narrow: {rows: {pitch: 7 mm}}}}
"""


@pytest.fixture(scope="module")
def running():
    with started(workers=2) as cluster:
        yield cluster


@pytest.fixture(scope="module")
def empty():
    with started(workers=0) as cluster:
        yield cluster


@pytest.fixture
def cluster(running):
    one = Cluster(running.address)
    yield one
    one.close()


@pytest.fixture(scope="module")
def project(tmp_path_factory):
    return filled(tmp_path_factory.mktemp("project"))


def filled(folder: Path) -> Path:
    """Two designs in three variants each; both pictures are of noise, too large to travel with every task."""
    pixels = np.random.default_rng(5).integers(0, 256, (2, 160, 160, 3), np.uint8)
    files = {"art.png": png(pixels[0]), "motif.png": png(pixels[1]), "collection.yaml": COLLECTION.encode()}
    files |= {f"{name}.pad.yaml": DESIGN.replace("Errands", f"Errands {name}").encode() for name in "ab"}
    for name, data in files.items():
        (folder / name).write_bytes(data)
    assert min(len(files["art.png"]), len(files["motif.png"])) > 32 * 1024
    return folder


def units(project: Path, number: int = 1) -> list[Unit]:
    return [Unit(Folder(project), "a.pad.yaml", (Variation(),), ("",), BuildWish())] * number


def refusal(*how: object, **more: float) -> str:
    with pytest.raises(ProblemsError) as caught:
        Cluster(*how, **more)
    return str(caught.value)


class TestWhatItMakes:
    def test_it_is_what_one_process_makes_though_a_worker_ends_in_the_middle(self, running: LocalCluster, project):
        """Every byte, the record of the build included; only stamps are those of each folder."""
        alone, shared = project / "alone", project / "shared"
        assert padspec(project, "build", "--jobs", "1", "--out", str(alone)).status == 0
        running.add_workers(1)
        victim = max(running.client.nthreads())
        command = "from padspec.cli.main import main; main()"
        args = [sys.executable, "-c", command, "build", "--scheduler", running.address, "--out", str(shared)]
        building = subprocess.Popen(args, cwd=project, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
        until(lambda: running.client.processing().get(victim))
        running.kill(victim)
        _, told = building.communicate(timeout=60)
        assert (building.returncode, told) == (0, b"")
        assert running.running == 2
        one, other = written(alone), written(shared)
        assert one.keys() == other.keys()
        assert len(one) > 6 * 6
        differing = [name for name in one if one[name] != other[name] and name != ".cache/stamps.json"]
        assert differing == []

    def test_what_is_wrong_is_told_as_in_an_ordinary_build(self, cluster, tmp_path):
        """The file that lies beside the one that is named is not sent, and yet proposed."""
        filled(tmp_path)
        (tmp_path / "art.png").rename(tmp_path / "arc.png")
        (unit,) = units(tmp_path)
        ((_, (made,)),) = cluster.run(work, [unit])
        assert "arc.png" in made.problems[0].mend
        assert made.problems == work(unit)[0].problems

    def test_a_file_that_was_not_packed_is_read_all_the_same(self, cluster, project):
        reading = Reading(Folder(project), "a.pad.yaml", (), "collection.yaml")
        assert [read for _, read in cluster.run(reads, [reading])] == [COLLECTION.encode()]

    def test_tasks_of_another_kind_are_done_too(self, cluster):
        assert sorted(cluster.run(slowly, range(9))) == [(n, n * n) for n in range(9)]


class TestLargeFiles:
    def test_each_is_sent_to_a_worker_once(self, running, project):
        running.client.run(count_arrivals)
        for _ in range(2):  # a second build finds them there
            cluster = Cluster(running.address)
            assert len(list(cluster.run(work, units(project, 5)))) == 5
            cluster.close()
        noted = list(running.client.run(arrivals).values())
        assert [len(some) for some in noted] == [2, 2]
        assert [len(set(some)) for some in noted] == [2, 2]

    def test_a_worker_that_lost_them_gets_them_again(self, cluster, running, project):
        (unit,) = units(project)
        first = list(cluster.run(work, [unit]))
        running.client.run(empty_shelf, 2**29)
        assert list(cluster.run(work, [unit])) == first

    def test_a_worker_that_can_keep_only_one_gets_them_with_the_task(self, cluster, running, project):
        running.client.run(empty_shelf, 1)
        (unit,) = units(project)
        assert [made for _, made in cluster.run(work, [unit])] == [work(unit)]
        running.client.run(empty_shelf, 2**29)


class TestVersions:
    @pytest.fixture
    def other(self, running):
        """The worker that has another numpy."""
        worker = min(running.client.nthreads())
        running.client.run(pretend, "1.0.3", workers=[worker])
        yield worker
        running.client.run(pretend, version("numpy"), workers=[worker])

    def test_a_worker_with_others_is_refused_by_name(self, running, other):
        told = refusal(running.address)
        assert f"Worker {other} has numpy 1.0.3, this machine {version('numpy')}" in told
        assert told.count("Worker") == 1

    def test_a_worker_that_changes_later_is_refused_too(self, cluster, request):
        """As one that came only when the work had begun."""
        other = request.getfixturevalue("other")
        with pytest.raises(ProblemsError, match=r"has numpy 1\.0\.3") as caught:
            list(cluster.run(slowly, range(9)))
        assert other in str(caught.value)


class TestRefused:
    @pytest.mark.parametrize("address", ["here", "10.0.0.5:8786", "udp://a:1", "tcp://a", "tcp://a:70000"])
    def test_what_is_no_address(self, tmp_path, address):
        (tmp_path / "a.pad.yaml").write_text(PLAIN)
        assert padspec(tmp_path, "build", "--scheduler", address).refused(f"--scheduler {address}", "tcp://HOST")

    def test_where_nobody_answers(self):
        """Port 9 was for throwing things away (RFC 863); nothing listens there."""
        assert "No scheduler answered within 0.2 s" in refusal("tcp://127.0.0.1:9", patience=0.2)

    def test_a_scheduler_without_workers(self, empty):
        told = refusal(empty.address, patience=0.2)
        assert "no worker for 0.2 s" in told
        assert f"dask worker {empty.address}" in told

    def test_without_the_package(self, monkeypatch):
        monkeypatch.setitem(sys.modules, "distributed", None)
        assert "pip install 'padspec[cluster]'" in refusal("tcp://127.0.0.1:9")


class TestWhatEnds:
    def test_without_any_worker_for_too_long_it_says_so(self, empty):
        empty.add_workers(1)
        cluster = Cluster(empty.address, patience=0.5)
        results = cluster.run(slowly, range(10_000))
        next(results)
        empty.kill(*empty.client.nthreads())
        with pytest.raises(ProblemsError, match=r"For 0\.5 s no worker was left"):
            list(results)
        cluster.close()

    def test_a_task_that_ends_every_worker_is_named(self, empty):
        empty.client.run_on_scheduler(lambda dask_scheduler: setattr(dask_scheduler, "allowed_failures", 0))
        empty.add_workers(1)
        cluster = Cluster(empty.address)
        with pytest.raises(ProblemsError, match="ended before its time"):
            list(cluster.run(ends_its_worker, [3]))
        cluster.close()

    def test_what_nobody_waits_for_any_more_is_let_go(self, cluster, running):
        results = cluster.run(slowly, range(10_000))
        next(results)
        results.close()
        until(lambda: not any(running.client.processing().values()))


def test_nothing_of_it_is_loaded_without_being_asked_for(tmp_path):
    (tmp_path / "a.pad.yaml").write_text(PLAIN)
    code = (
        "import sys; from padspec.cli.main import main\n"
        "try: main()\n"
        "except SystemExit: pass\n"
        "print([name for name in sys.modules if name.split('.')[0] in ('distributed', 'dask')])"
    )
    args = [sys.executable, "-c", code, "build", "--no-proofs", "--quiet"]
    said = subprocess.run(args, cwd=tmp_path, env=os.environ, capture_output=True, text=True, check=True)
    assert said.stdout.strip() == "[]"
