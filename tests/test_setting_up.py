"""The first use on a bare machine: what is missing is made, or named in one line."""

import subprocess
from types import SimpleNamespace

import pytest

from station import setting_up


@pytest.fixture
def ran(monkeypatch):
    """Every command that would be run; each succeeds."""
    commands = []

    def run(command, **_options):
        commands.append(command)
        return SimpleNamespace(returncode=0, stdout="libEGL.so.1 libGL.so.1")

    monkeypatch.setattr(subprocess, "run", run)
    return commands


def test_nothing_happens_where_all_is_there(ran):
    setting_up.ready(tests=True)
    assert ran == []


def test_a_bare_machine_gets_an_environment_and_runs_again_inside_it(ran, monkeypatch, tmp_path):
    monkeypatch.setattr(setting_up, "_missing", lambda _names: ["PySide6"])
    monkeypatch.setattr(setting_up, "_absent", list)
    monkeypatch.setattr(setting_up, "VENV", tmp_path / ".venv")
    with pytest.raises(SystemExit) as ended:
        setting_up.ready()
    assert ended.value.code == 0
    assert ran[0][1:3] == ["-m", "venv"]
    assert ran[1][1:3] == ["-m", "station"]


def test_inside_its_environment_the_packages_are_installed(ran, monkeypatch, tmp_path):
    monkeypatch.setattr(setting_up, "_missing", lambda _names: ["PySide6"])
    monkeypatch.setattr(setting_up, "VENV", tmp_path)
    monkeypatch.setattr("sys.prefix", str(tmp_path))
    setting_up.ready(tests=True)
    assert ran[0][1:4] == ["-m", "pip", "install"]
    assert ran[0][-1].endswith("[test]")
    assert "prepare_reader()" in ran[1][-1]  # not at the first cut file
    assert len(ran) == 2


def test_who_may_not_install_is_told_the_one_line(ran, monkeypatch):
    monkeypatch.setattr("os.geteuid", lambda: 1000, raising=False)
    with pytest.raises(SystemExit, match=r"Run once: sudo apt-get install -y libegl1 libgl1$"):
        setting_up._system(["libegl1", "libgl1"])
    assert ran == []


def test_who_may_install_gets_it_installed(ran, monkeypatch):
    monkeypatch.setattr("os.geteuid", lambda: 0, raising=False)
    setting_up._system(["libegl1"])
    assert ran == [["apt-get", "update"], ["apt-get", "install", "-y", "libegl1"]]


def test_only_missing_libraries_are_named(ran, monkeypatch):
    monkeypatch.setattr("shutil.which", lambda name: f"/usr/bin/{name}")
    monkeypatch.setattr("sys.platform", "linux")
    absent = setting_up._absent()
    assert "libegl1" not in absent
    assert "libxkbcommon0" in absent


def test_a_failed_installation_says_so(monkeypatch):
    monkeypatch.setattr(subprocess, "run", lambda *_a, **_o: SimpleNamespace(returncode=1))
    with pytest.raises(SystemExit, match="could not be installed"):
        setting_up._install(tests=False)
