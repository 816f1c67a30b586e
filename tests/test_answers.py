"""What `tests.answers` writes down, on a few lines."""

import io
from random import Random

from station.shop.faces import Cards, Entry, Face, Press
from station.shop.words import say
from tests import answers, replay


def test_a_walk_is_the_same_every_time():
    assert answers.walk(3) == answers.walk(3) != answers.walk(4)
    assert len(answers.walk(3)) > 100


def test_a_walk_names_what_answers_have_named():
    seen = {"batch": ["00001", "00004"], "pack": ["00007"]}
    line = answers.filled("slip ?new 2, ?pack", seen, Random(1))
    assert line == "slip 00004 2, 00007"


def test_the_clock_stays_within_its_day():
    assert answers.later("2026-11-25T07:50:00", 20) == "2026-11-25T08:10:00"
    assert answers.later("2026-11-25T23:50:00", 20) == "2026-11-25T23:59:00"


def test_a_screen_is_its_texts_and_codes():
    cards = Cards(title=say("Next {n}", n=2), entries=(Entry(big="00412", code="B00412AY"),))
    face = Face(title="Loading", main=(cards,), presses=(Press(label=say("Start"), code="X1"),))
    assert answers.screen(face) == ["Loading", "Next 2", "00412", "[B00412AY]", "Start", "[X1]"]


def test_lines_are_played_and_what_the_file_holds_is_told(capsys):
    files = io.StringIO()
    lines = ["@worker 04", "@area trimming", "traveller 00900", "@after 5", "button on_rack", "'x"]
    answers.play(replay, lines, files)
    told = capsys.readouterr().out
    assert "button on_rack\n> good | Batch 00900: 160 good |" in told
    assert "\n  045 160 ('trimming', '00900') ('rack/045', '00900')\n" in told
    assert "\n  = Trimming · " in told
    assert "\ncheck []\n" in told
    assert "\nrack/045 00900 045 160\n" in told
    assert '"kind":"put_on_rack","at":"2026-11-25T07:05:00"' in files.getvalue()
    assert "argon2" not in files.getvalue()


def test_what_differs_is_told_by_its_ways(tmp_path, capsys):
    old, new = (tmp_path / "old", tmp_path / "new")
    for folder, word, more in ((old, "Missing", ""), (new, "More reasons", ',"breaks_bit":true')):
        folder.mkdir()
        screens = f"  = Trimming · {word} · Leave\n> good | Left | Go on.\n" * 2
        (folder / "answers.txt").write_text(screens, encoding="utf-8")
        (folder / "files.txt").write_text(f'reason/11 {{"id":"11"{more}}}\n', encoding="utf-8")
    assert answers.differ(old, new) == 1
    told = capsys.readouterr().out
    assert "answers.txt: 2 lines differ in 1 ways\n  2 ×\n    - Missing\n    + More" in told
    assert '"breaks_bit":true' in told
    assert answers.differ(old, old) == 0
    lines = ["a", "b · c", "d"]
    assert answers.ways(lines, ["a", "b · x", "d", "e"]) == {("c", "x"): 1, ("", "e"): 1}
