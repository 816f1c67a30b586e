"""Thirty lines broken on purpose: where, what stands there, what is planted, who must see it."""

from typing import NamedTuple


class Plant(NamedTuple):
    """One broken line. `tests` are pytest paths, or ``replay:NAME`` for a day in the shop."""

    file: str
    old: str
    new: str
    why: str
    tests: tuple[str, ...]


LOADING = ("tests/floor/test_loading_rules.py",)
HELD = ("tests/floor/test_held_back.py",)
PEOPLE = ("tests/desk",)
RECORD = ("tests/ledger/test_record.py", "tests/ledger/test_reads.py")
UNDO = ("tests/ledger/test_undo.py",)
DESK = "station/desk/desk.py"
COMMON = "station/desk/common.py"
STEPS = "station/desk/steps.py"
QUESTIONS = "station/desk/questions.py"
SETTINGS = "station/queries/settings.py"
FLOOR = "station/floor"

RULES = (
    Plant(f"{FLOOR}/loading/rules_start.py", "if not sheet.bed.rehome:", "if sheet.bed.rehome:",
          "a sheet cut on a router that lost its zero", LOADING),
    Plant(f"{FLOOR}/loading/rules_start.py", 'if first and first.state == "due":',
          "if False:", "a first-off that is due is passed over", LOADING),
    Plant("station/queries/batches.py", "    if batch.cut >= batch.sheets:",
          "    if batch.cut > batch.sheets:", "a batch cut once more than planned", LOADING),
    Plant("station/queries/batches.py", '    if batch.state == "cancelled":\n',
          '    if batch.state == "no such":\n', "a cancelled batch is cut", LOADING),
    Plant(f"{FLOOR}/loading/rules_stop.py", 'if bit.state != "good":', 'if bit.state == "no":',
          "a broken bit goes back into a router", HELD),
    Plant(f"{FLOOR}/loading/rules_off.py", "at) < TOO_SOON * bed.minutes",
          "at) > TOO_SOON * bed.minutes", "a sheet taken off while the spindle turns", LOADING),
    Plant("station/queries/batches.py", "if batch and batch.why_held:", "if batch is None:",
          "a held batch goes on", HELD),
    Plant(f"{FLOOR}/trimming/rules.py", "if batch.tries >= MOST_TRIES and",
          "if batch.tries > MOST_TRIES and", "a third try at rework",
          ("tests/floor/test_trimming.py", "replay:07")),
    Plant(f"{FLOOR}/packing/rules_take.py", "    if want.on_rack < quantity:",
          "    if want.on_rack < 0:", "more is taken than lies there",
          ("tests/floor", "replay:17")),
    Plant(f"{FLOOR}/cart/rules.py", 'order.state == "cancelled"', 'order.state == "no such"',
          "a cancelled order is shipped", HELD),
    Plant(f"{FLOOR}/shared/approval.py", "    if act.args.approved:",
          "    if not act.args.approved:", "office work without a supervisor",
          ("tests/floor/test_office.py",)),
    Plant("station/queries/stock.py", "min(held.qty, quantity)", "held.qty",
          "a split takes a whole pile", ("tests/floor", "replay:08")),
)  # fmt: skip

LEDGER = (
    Plant("station/ledger/effects.py", "sums.get(out, 0) - qty", "sums.get(out, 0) + qty",
          "pieces appear from nowhere", RECORD),
    Plant("station/ledger/effects.py", "or m.qty < 1:", "or m.qty < 0:",
          "a move of nothing", RECORD),
    Plant("station/ledger/effects.py", "if qty < 0 and change < 0 and", "if qty < -1 and",
          "a place one below zero", RECORD),
    Plant("station/ledger/effects.py", "part, router), -n)", "part, router), n)",
          "an undo counts twice in the day's flow", UNDO),
    Plant("station/ledger/history.py", "        if again := self.repeated(act.id):\n"
          "            return again\n        if has_wrong", "        if has_wrong",
          "a double scan counts twice", RECORD),
    Plant("station/ledger/history.py", "else digest(self.digest, body", 'else digest(b"", body',
          "the chain of digests is no chain", ("tests/ledger",)),
    Plant("station/ledger/undo.py", "if history.reader.undone(id):", "if not id:",
          "an act is taken back twice", UNDO),
    Plant("station/ledger/undo.py", "if (now.entry if now else None) != mine:", "if not key:",
          "an undo overwrites what was set since", UNDO),
    Plant("station/ledger/view.py", "        if kind not in self._allowed:",
          "        if not self._allowed:", "a rule reads what it does not list", RECORD),
    Plant("station/ledger/codec.py", 'before + f"{id}\\n{body}".encode()',
          'before + f"{id}".encode()', "a changed entry is not noticed", ("tests/ledger",)),
)  # fmt: skip

AT_DESK = (
    Plant(COMMON, "if worker is None:", "if worker is False:",
          "a badge of nobody signs in", PEOPLE),
    Plant(SETTINGS, "worker if worker and worker.supervisor else", "worker if worker else",
          "a worker approves", PEOPLE),
    Plant(SETTINGS, "worker if worker and worker.active else", "worker if worker else",
          "who was switched off works on", ("tests/queries/test_settings.py",)),
    Plant(QUESTIONS, "worker and agrees(worker.pin, text)", "worker",
          "any PIN will do", PEOPLE),
    Plant(QUESTIONS, "if left := pins.find_wait(now):", "if left := timedelta():",
          "PINs may be tried for ever", ("tests/desk/test_wrong_pins.py",)),
    Plant(QUESTIONS, ">= A_MOMENT", ">= -A_MOMENT",
          "a trigger pulled twice is a yes", (*PEOPLE, "replay:11")),
    Plant(COMMON, '"•" * len(digits) if secret else figure(digits)', "digits",
          "a PIN stands on the screen", PEOPLE),
    Plant(DESK, "self._draft, self.unlocked = before", "pass",
          "a full disk loses what was in hand", PEOPLE),
    Plant(STEPS, "depth, here = draft.depth - 1,", "depth, here = draft.depth,",
          "undo twice in a row takes back the same act", PEOPLE),
)  # fmt: skip

PLANTS = (*RULES, *LEDGER, *AT_DESK)
