"""Lines that keep a wrong sheet back, or a hand out of danger, broken on purpose."""

from tests.plants import Plant

LOADING = "station/floor/loading"
FIRST = ("tests/floor/test_loading_first.py",)
RULES = ("tests/floor/test_loading_rules.py",)
DIALOGUE = ("tests/floor/test_loading_dialogue.py",)
FACES = ("tests/floor/test_loading_faces.py",)

HOLDS = (
    Plant(f"{LOADING}/rules_start.py", "if find_repeated(sheet.view, bed, sheet.file) is None:",
          "if True:", "a wrong first-off is cut again", FIRST),
    Plant("station/queries/first_offs.py", "known.zero_since != bed.zero_since:", "False:",
          "a new zero does not count as new", FIRST),
    Plant("station/queries/first_offs.py", "if known.bits != list_bits_used(view, bed, run):",
          "if False:", "another bit has no first-off", FIRST),
    Plant(f"{LOADING}/rules_first.py", "if far := ask_if_far(one.size, act.args.reading_mm):",
          "if far := None:", "a reading that cannot be the size is booked", FIRST),
    Plant("station/queries/first_offs.py",
          'least = 2 if first.state == "wrong" and not', "least = 1 if not",
          "what a person says is wrong is right at one reading", FIRST),
    Plant(f"{LOADING}/rules_first.py", 'known = list_unagreed(bed) if first.state == "wrong"',
          "known = bed.firsts if first", "what agreed with a wrong bit still counts", FIRST),
    Plant("station/queries/first_offs.py", "return all(inside[-2:]) and",
          "return inside[-1:] == [True] and", "one reading inside settles one outside", FIRST),
    Plant(f"{LOADING}/rules_stop.py", "if unsafe := _refuse_restart(act, view, bed):",
          "if unsafe := None:", "a router runs on with nothing confirmed", RULES),
    Plant(f"{LOADING}/rules_off.py", "if bed.ran_on else off", "if False else off",
          "what was cut across a lost position goes on unseen", RULES),
    Plant(f"{LOADING}/rules_stop.py", "ran_on=(bed.ran_on or lost)", "ran_on=lost",
          "a second stop forgets that the position was lost", RULES),
    Plant(f"{LOADING}/dialogue.py", "return Took(let_go_of_sheet(here.hand), wrong)",
          "return Took(here.hand, wrong)", "a refused lot leaves the former one", DIALOGUE),
    Plant("station/shop/rooms.py", "return self.refused if wrong and self.refused else hand",
          "return hand", "a refused act leaves the ticks of what it was about", DIALOGUE),
    Plant(f"{LOADING}/dialogue.py", "untick_restart(untick_items(here.hand",
          "(untick_items(here.hand", "another bit leaves what was confirmed before it", DIALOGUE),
    Plant(f"{LOADING}/side_pane.py", 'return ("laser", found[0])', 'return ("laser",)',
          "a laser's caution replaces the others", FACES),
)  # fmt: skip
