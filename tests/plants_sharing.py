"""Lines of sharing broken on purpose. The simulator alone must see those of `SIMULATED`."""

from tests.plants import Plant

SEEN = ("simulate:500",)  # so many seeds, or as far as the first that fails
TESTED = ("tests/ledger/test_sharing.py",)
CLOSING = ("tests/sharing/test_closing.py",)
LEDGER = "station/ledger"

SIMULATED = (
    Plant(f"{LEDGER}/absorb.py", "        for act in reversed(acts):\n            page.back",
          "        for act in acts:\n            page.back",
          "sharing: pending acts are undone oldest first", SEEN),
    Plant(f"{LEDGER}/absorb.py", "            page.back(act.body)\n", "            pass\n",
          "sharing: pending acts are not undone", SEEN),
    Plant(f"{LEDGER}/absorb.py", "[a for a in acts if a.id not in ids]", "list(acts)",
          "sharing: an act that came back is decided once more", SEEN),
    Plant(f"{LEDGER}/absorb.py",
          "(name for body in bodies for name in effects.writes(body)):", "(()):",
          "sharing: what others wrote is not held against what was read here", SEEN),
    Plant(f"{LEDGER}/absorb.py", "if (act.id, act.text) != (entry.id, entry.body):",
          "if act.text[:9] != entry.body[:9]:",
          "sharing: another's entry is taken for one's own", SEEN),
    Plant(f"{LEDGER}/absorb.py", "        history.store.run(statements.DROP_PENDING, (act.seq,))\n"
          "    acts, rest", "    acts, rest",
          "sharing: what is shared stays pending", SEEN),
    Plant(f"{LEDGER}/absorb.py",
          "    history.number, history.digest = entries[-1].number, entries[-1].digest\n", "",
          "sharing: the head does not move on", SEEN),
    Plant(f"{LEDGER}/again.py", "sets=(Change(concern.key, None, state_of(concern)),),", "",
          "sharing: a lost act is shown nowhere", SEEN),
    Plant(f"{LEDGER}/again.py", "    _carry_out(history, was)\n    return was", "    return was",
          "sharing: what needs a look is not shown where it was done", SEEN),
    Plant(f"{LEDGER}/page.py", 'self.set_fact(change.key, row_of(change.before, ""))',
          "self.set_fact(change.key, None)",
          "sharing: an undone fact is gone instead of as before", SEEN),
    Plant(f"{LEDGER}/page.py", "self.set_qty(key, self.qty(key) - more)",
          "self.set_qty(key, self.qty(key))",
          "sharing: an undone act leaves its pieces where it put them", SEEN),
    Plant(f"{LEDGER}/page.py", "((*row[:4], -row[4]) for row in tally_rows(body))",
          "((*row[:4], 0) for row in tally_rows(body))",
          "sharing: an undone act still counts in the day's flow", SEEN),
    Plant(f"{LEDGER}/page.py",
          "many(statements.EMPTY_SPOT, (spot[:3] for spot in spots if not spot[3]))", "pass",
          "sharing: an empty spot keeps what lay there", SEEN),
    Plant(f"{LEDGER}/talk.py",
          "common = next((m for m in offer.marks if _in_shop(link, m, head)), None)",
          "common = offer.head",
          "sharing: after an older day all here is taken for shared", SEEN),
    Plant(f"{LEDGER}/sharing.py", "for text, reads in (*back, *((act.text",
          "for text, reads in (*(), *((act.text",
          "sharing: what an older day lost is not shared again", SEEN),
    Plant(f"{LEDGER}/supply.py",
          "        rows = self._history.store.rows(statements.BODY_BY_ID, (id,))\n",
          "        rows = self._history.store.rows(statements.BODY_BY_ID, (id,)) or (\n"
          "            self._history.store.rows(statements.PENDING_BY_ID, (id,)))\n",
          "sharing: numbers of a block that others may have as well",
          SEEN),
    Plant(f"{LEDGER}/history.py", "        if again := self.repeated(act.id):\n"
          "            return again\n        decided", "        decided",
          "sharing: the same act again is recorded twice", SEEN),
    Plant(f"{LEDGER}/supply.py", "if k.startswith((OWN, SPARE, ASKED))", "if k.startswith(ASKED)",
          "sharing: an old disk hands its numbers out again",
          SEEN),
    Plant(f"{LEDGER}/again.py", "            was = _looked_at(was, decided.answer)\n",
          '            _carry_out(history, was)\n            run("RELEASE one")\n'
          "            return was, frozenset()\n",
          "sharing: what holds no longer is carried out all the same", SEEN),
    Plant(f"{LEDGER}/again.py",
          "    for change in body.sets:\n        history.reader.took(change.key, None, None)\n",
          "",
          "sharing: a fact stays at hand as it was before it was decided again", SEEN),
    Plant(f"{LEDGER}/absorb.py", "apart = trusted or _apart", "apart = True or _apart",
          "sharing: nothing that waits is ever decided again", SEEN),
    Plant(f"{LEDGER}/absorb.py",
          "    history.reader.forget(page.touched() if apart else None)\n", "",
          "sharing: facts that others changed stay at hand as they were", SEEN),
    Plant(f"{LEDGER}/page.py",
          "        many(statements.DROP_FACT, ((key,) for key, row in facts if not row))\n", "",
          "sharing: a fact that is gone stays in the table", SEEN),
    Plant(f"{LEDGER}/sharing.py",
          "            for act in acts:\n"
          "                self._store.run(statements.DROP_PENDING, (act.seq,))\n"
          "            back", "            back",
          "sharing: after an older day what waits is there twice", SEEN),
    Plant(f"{LEDGER}/sharing.py",
          "            self._store.put(EPOCH, str(epoch))\n"
          "        self._store.values[EPOCH] = str(epoch)\n", "",
          "sharing: that an older day was put back is forgotten", SEEN),
    Plant(f"{LEDGER}/sharing.py", "        self._history.reload()\n        log.warn",
          "        log.warn", "sharing: after an older day the head stays where it was", SEEN),
    Plant(f"{LEDGER}/supply.py", 'found |= {key: "", SPARE + kind: block}',
          "found |= {SPARE + kind: block}",
          "sharing: an asked block is taken for a new one again and again", SEEN),
    Plant(f"{LEDGER}/supply.py", '            self._handed[SPARE + used.kind] = ""\n',
          "            pass\n", "sharing: a spare block is used twice", SEEN),
    Plant(f"{LEDGER}/ledger.py", 'older = news.state == "put back" or self', "older = self",
          "sharing: numbers are kept that an older day may give to others", SEEN),
    Plant(f"{LEDGER}/ledger.py", " or self._sharing.foreign_of_mine(news, self.station)", "",
          "sharing: an old disk goes on with its numbers", SEEN),
    Plant(f"{LEDGER}/store.py", '                self.run("BEGIN IMMEDIATE")\n'
          '                yield self.connection\n                self.run("COMMIT")\n',
          "                yield self.connection\n",
          "sharing: an act is written word by word, not all at once", SEEN),
    Plant(f"{LEDGER}/view.py", "        self.reads.add(key)\n", "",
          "sharing: a fact that was read is not noted", SEEN),
    Plant(f"{LEDGER}/view.py",
          '            self.reads.add(f"stock/{batch}" if batch else f"place/{place}")\n',
          "            pass\n", "sharing: pieces that were counted are not noted as read", SEEN),
    Plant(f"{LEDGER}/effects.py", "        names.add(change.key)\n", "",
          "sharing: a fact that was set is not told as written", SEEN),
)  # fmt: skip

OTHERS = (
    Plant(f"{LEDGER}/again.py", "if body and _deed(body) == _deed(was):", "if body:",
          "sharing: other pieces than a person moved are booked in silence",
          TESTED),
    Plant(f"{LEDGER}/again.py", "    if not was.verdict:\n", "    if True:\n",
          "sharing: what needs a look is decided again",
          TESTED),
)  # fmt: skip

SHARING = (*SIMULATED, *OTHERS)

CLOSINGS = (
    Plant(f"{LEDGER}/absorb.py", "(newest or [begin_of(history.store)])[0][2]",
          'newest[0][2] if newest else ""',
          "closing: an entry without a time is judged otherwise behind a closing", CLOSING),
    Plant(f"{LEDGER}/sharing.py", "begin = Mark(*closing.begin_of(self._store)[:2])",
          'begin = Mark(0, b"")',
          "closing: a short history is shared again behind an older day", CLOSING),
    Plant(f"{LEDGER}/rebuild.py", "    books = closing.books_of(store)\n", "    books = Books()\n",
          "closing: a rebuild forgets what the history begins with", CLOSING),
    Plant(f"{LEDGER}/closing.py", "        sums[part] += qty\n", "",
          "closing: pieces out of nothing are believed", CLOSING),
    Plant("station/sharing/closings.py",
          "if not there or (there[0].number, there[0].digest) != closing[:2]:", "if not there:",
          "closing: one of another history is believed", CLOSING),
    Plant("station/sharing/closings.py", "            if (number, found) != (last, link):\n"
          "                raise ChainBroken(number)\n", "",
          "closing: one is made of a history that was altered", CLOSING),
    Plant("station/sharing/founding.py", "        if number < begins:", "        if False:",
          "closing: a shop is founded without its first years", CLOSING),
)  # fmt: skip
