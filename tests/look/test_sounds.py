"""Each answer has its sound; a PC that cannot play says so once and beeps."""

import io
import logging
import struct
import subprocess
import wave
from importlib.resources import files

import pytest
from PySide6.QtWidgets import QApplication

from resources.sounds.made import RATE, SOUNDS, wave_file
from station.look import sounds
from station.look.sounds import Sounds, choose_sound
from station.shop.acts import Answer, ask, attention, good, notice, refuse
from station.shop.words import say

WORDS = say("Anything")


@pytest.mark.parametrize(
    ("answer", "sound"),
    [
        (good(WORDS), "good"),
        (attention(WORDS), "look"),
        (notice(WORDS), "look"),
        (refuse(WORDS), "refuse"),
        (ask(WORDS, WORDS, "sure"), "ask"),
        (ask(WORDS, WORDS, "supervisor"), "ask"),
    ],
)
def test_an_answer_has_its_sound(answer: Answer, sound: str) -> None:
    assert choose_sound(answer) == sound


@pytest.mark.parametrize("name", SOUNDS)
def test_the_files_are_what_the_command_makes(name: str) -> None:
    kept, length = samples((files("resources") / "sounds" / f"{name}.wav").read_bytes())
    made, _ = samples(wave_file(name))
    assert max(abs(a - b) for a, b in zip(kept, made, strict=True)) <= 1  # sines may be rounded
    assert length == pytest.approx(sum(s for _, s in SOUNDS[name]), abs=0.001)
    assert 10_000 < max(kept) < 32_000


def samples(held: bytes) -> tuple[list[int], float]:
    with wave.open(io.BytesIO(held)) as file:
        assert (file.getnchannels(), file.getsampwidth(), file.getframerate()) == (1, 2, RATE)
        frames = file.readframes(file.getnframes())
    return list(struct.unpack(f"<{len(frames) // 2}h", frames)), len(frames) / 2 / RATE


@pytest.fixture
def beeps(monkeypatch, qapp):
    heard: list[str] = []
    monkeypatch.setattr(QApplication, "platformName", lambda: "xcb")
    monkeypatch.setattr(sounds, "_beep", heard.append)
    return heard


def ended(playing: Sounds) -> None:
    assert playing._thread
    playing._thread.join(5)
    assert not playing._thread.is_alive()


def test_a_pc_that_cannot_play_says_so_once_and_beeps(beeps, monkeypatch, caplog):
    monkeypatch.setattr(sounds.sys, "platform", "linux")
    monkeypatch.setattr(sounds, "find_player", lambda: ())
    playing = Sounds()
    with caplog.at_level(logging.WARNING, "station"):
        playing.play_answer(refuse(WORDS))
        ended(playing)
        playing.play_answer(refuse(WORDS))
        playing.play_answer(good(WORDS))
    assert beeps == ["refuse", "good"]
    (said,) = (r.message for r in caplog.records if "no sounds here" in r.message)
    assert said.endswith("none of pw-play, paplay, aplay, afplay is installed")


def test_a_player_that_fails_is_not_tried_again(beeps, monkeypatch):
    def broken(command, **_):
        raise subprocess.CalledProcessError(1, command)

    monkeypatch.setattr(sounds.sys, "platform", "linux")
    monkeypatch.setattr(sounds, "find_player", lambda: ("pw-play",))
    monkeypatch.setattr(subprocess, "run", broken)
    playing = Sounds()
    playing.play_answer(good(WORDS))
    ended(playing)
    playing.play_answer(refuse(WORDS))
    assert beeps == ["refuse"]


def test_the_right_file_goes_to_the_player(beeps, monkeypatch):
    heard: list[list[str]] = []
    monkeypatch.setattr(sounds.sys, "platform", "linux")
    monkeypatch.setattr(sounds, "find_player", lambda: ("aplay", "-q"))

    def note(command, **_):
        heard.append(command)
        raise OSError("enough")

    monkeypatch.setattr(subprocess, "run", note)
    playing = Sounds()
    playing.play_answer(ask(WORDS, WORDS, "sure"))
    ended(playing)
    assert heard[0][:2] == ["aplay", "-q"]
    assert heard[0][2].endswith("ask.wav")


def test_a_muted_station_is_silent(beeps, monkeypatch):
    playing = Sounds()
    playing.muted, playing._failed = True, True
    playing.play_answer(refuse(WORDS))
    assert beeps == []
    playing.muted = False
    playing.play_answer(refuse(WORDS))
    assert beeps == ["refuse"]
