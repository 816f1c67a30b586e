"""Lines of what to cut next broken on purpose."""

from tests.plants import Plant

HERE = "station/planning"
ROOM = "station/floor/plan"
FOREMAN = ("tests/planning/test_foreman.py",)
SHORT = ("tests/queries/test_shortage.py",)
SCREEN = ("tests/floor/test_plan.py",)
SHEETS = ("tests/planning/test_sheets.py",)
CHANCES = ("tests/planning/test_chances.py",)
DEMAND = ("tests/planning/test_demand.py",)
TURNS = ("tests/planning/test_turns.py",)
GATHER = ("tests/planning/test_gather.py",)

PLANNING = (
    Plant(f"{HERE}/chances.py", "return wanted + lost\n", "return wanted + lost - 1\n",
          "one piece too few for the certainty", CHANCES),
    Plant(f"{HERE}/chances.py", "    if seen < LEAST:\n        return None\n", "",
          "a loss told from nothing", CHANCES),
    Plant(f"{HERE}/demand.py", "return (1 - alpha / 2) * level / gap", "return level / gap",
          "Croston without its correction", DEMAND),
    Plant(f"{HERE}/demand.py", "since = 0\n    return (1", "since = 1\n    return (1",
          "gaps of use a day too long", DEMAND),
    Plant(f"{HERE}/demand.py", "lambda _served, minutes: minutes <= most).less",
          "lambda _served, minutes: minutes <= most).more",
          "marks that hold more than those they are found from", DEMAND),
    Plant(f"{HERE}/lots.py", "lots[-1].sheets * each < SHORT_MIN", "lots[-1].sheets",
          "all sheets of a file in one batch, whenever orders want them", FOREMAN),
    Plant(f"{HERE}/lots.py", "made[open_.part] = max(0, -lacking)", "made[open_.part] = 0",
          "pieces that are left of an order's sheet forgotten", FOREMAN),
    Plant(f"{HERE}/tending.py", "busy = min(standing + 1, people)", "busy = people",
          "two people at one router", ("tests/outside/test_planning.py",)),
    Plant(f"{HERE}/sheets.py", "    for stock, sheets in limited.items():",
          "    for stock, sheets in ():", "sheets planned that are not in the store", SHEETS),
    Plant(f"{HERE}/search.py", "            spare -= times * made\n", "",
          "sheets left out that are missed", ("tests/planning/test_search.py",)),
    Plant(f"{HERE}/learnt.py", "            if wish.pieces > left:",
          "            if wish.pieces > 0:",
          "every order blocked by a part that lies there", FOREMAN),
    Plant(f"{HERE}/learnt.py",
          "level = should if self.now.mark < TOO_LOW * should else self.now.mark",
          "level = self.now.mark", "the rack filled to a mark that is too low",
          ("tests/planning/test_think.py", *FOREMAN)),
    Plant(f"{HERE}/learnt.py", "lost = self.now.on_own * (1 - self.mean)", "lost = 0.0",
          "what an order's own sheets lose seen only once it lacks", FOREMAN),
    Plant(f"{HERE}/learnt.py", "return level + self.now.besides", "return level",
          "packs ahead and own pushes not cut for", FOREMAN),
    Plant(f"{HERE}/order.py", "there = supply.there + supply.coming", "there = supply.there",
          "what is on its way ordered again", FOREMAN),
    Plant(f"{HERE}/order.py", "if not ends and low <= 0:", "if not ends:",
          "bits and mailers below their mark not ordered", FOREMAN),
    Plant(f"{HERE}/hours.py", "and day.date().isoformat() not in self.closed", "",
          "worked on closed days", ("tests/planning/test_gather.py", *FOREMAN)),
    Plant(f"{HERE}/waiting.py", "batch.begun or batch.held or batch.order",
          "batch.begun or batch.held", "a batch for one order taken back", FOREMAN),
    Plant(f"{HERE}/waiting.py", "            gone = after\n", "",
          "two batches taken back of which one is needed", FOREMAN),
    Plant(f"{HERE}/waiting.py", "and p.should is not None and _is_off", "and p.should and _is_off",
          "a mark that was raised once never told to be nought", FOREMAN),
    Plant(f"{HERE}/routers.py", "SHEET_MIN = 1000.0", "SHEET_MIN = 200.0",
          "sheets spent to spare minutes", FOREMAN),
    Plant(f"{HERE}/routers.py", "and not router.stopped", "",
          "a batch for a router that stands still", FOREMAN),
    Plant(f"{HERE}/routers.py", "if b.begun or (b.due or LAST) <= due", "if True",
          "an order's batch behind what is due later", FOREMAN),
    Plant(f"{HERE}/think.py", "        return self._count(self.fresh)\n",
          "        return self._count({p: k.lacking for p, k in self.parts.items()})\n",
          "no sheet for what is lost", FOREMAN),
    Plant(f"{HERE}/turns.py", "if left > 0 and n not in ranks:", "if False:",
          "an order that is long overdue put off for ever", TURNS),
    Plant(f"{HERE}/turns.py", "for other, others in take[1:]:", "for other, others in ():",
          "what is planned left where it would end last", TURNS),
    Plant(f"{HERE}/turns.py", "        if then[:2] < course[:2]:", "        if False:",
          "a hopeless order before those that can be in time", TURNS),
    Plant(f"{HERE}/flow.py", 'pieces * self.each.get("trimming", 0.0)', "pieces * 0.0",
          "trimming that takes no time", TURNS),
    Plant(f"{HERE}/past.py", "    for back in range(DAYS, 0, -1):",
          "    for back in range(DAYS, -1, -1):", "today counted as a whole day of use", GATHER),
    Plant("station/queries/shortage.py", "        if held:", "        if False:",
          "held pieces counted as under way", SHORT),
    Plant("station/queries/shortage.py", "    free = sum(h.qty for h in lying) - held\n",
          "    free = sum(h.qty for h in lying)\n", "held pieces on the rack counted as free",
          SHORT),
    Plant(f"{ROOM}/dialogue.py", "if release.file in list_released_since(plan, view):",
          "if False:", "a double touch releases twice", SCREEN),
    Plant(f"{ROOM}/lines.py", "        if b.part in blocking\n", "",
          "what is under way is offered again", SCREEN),
)  # fmt: skip
