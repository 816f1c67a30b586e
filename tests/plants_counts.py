"""Lines that keep what was counted, and what is shown true, broken on purpose."""

from tests.plants import Plant

FLOOR = "station/floor"
ASIDE = "station/desk/aside.py"
RECOUNTS = f"{FLOOR}/shared/recounts.py"
ASKED = "station/desk/questions.py"
KEEPING = f"{FLOOR}/office/keeping.py"
COUNTING = f"{FLOOR}/shared/counting.py"
UNDO = "station/ledger/undo.py"
TAKE = f"{FLOOR}/loading/rules_take.py"
AGAIN = "station/ledger/rebase.py"
LOOKS = "station/queries/looks.py"
NEW_BIT = f"{FLOOR}/loading/rules_new_bit.py"
HELD = "station/ledger/cache.py"
TODAY = f"{FLOOR}/today/rules.py"
RETURNS = f"{FLOOR}/anywhere/returns.py"

DAY_COUNTS = ("replay:32_counts",)
DAY_HEAP = ("replay:33_one_number",)
DAY_ORDERS = ("replay:34_begun",)
DAY_BACK = ("replay:35_something",)
BACK = ("tests/floor/test_returns.py",)
DAY_OFFICE = ("replay:36_the_office",)
DAY_UNMADE = ("replay:37_a_sheet",)
COUNTED = ("tests/floor/shared/test_counting.py", "replay:32_counts")
OFFICE = ("tests/floor/test_office.py", "replay:34_begun")
UNMADE = ("tests/floor/test_unmade.py",)
BITS = ("tests/floor/test_new_bit.py",)
SPOILT = ("tests/floor/test_loading_dialogue.py",)
SHEETS = ("tests/floor/test_loading_rules.py",)
CONFLICTS = ("tests/floor/test_conflicts.py",)
LOOKED = ("tests/queries/test_looks.py",)
TOGETHER = ("tests/floor/test_settling_together.py",)
UNDONE = ("tests/ledger/test_undo.py",)
READ = ("tests/ledger/test_cache.py",)

COUNTS = (
    # what is counted is kept
    Plant(ASIDE, "if not tell_counted(draft.hand, view):", "if True:",
          "another area drops what was counted", DAY_COUNTS),
    Plant(ASIDE, "by=draft.counted_by, comes_back", "by=(), comes_back",
          "nobody is told who has counted so far", DAY_COUNTS),
    Plant(ASIDE, "if a.hand.area == area and a.comes_back), None)", "if False), None)",
          "what was counted does not come back with its area", DAY_COUNTS),
    Plant(COUNTING, "if not 0 <= wanted <= most:", "if wanted < 0:",
          "more is counted than lies here", COUNTED),
    Plant(COUNTING, 'armed = hand.work.counter if hand.work.counter == counter else ""',
          "armed = hand.work.counter", "a refusal leaves the old counter armed", COUNTED),
    Plant(COUNTING, "return set_marks(after, get_marks(after)[:count])", "return after",
          "marks stay where pieces are no more counted", COUNTED),
    Plant(COUNTING, "lying[spot] = lying[spot]._replace(qty=lying[spot].qty - taken.qty)", "pass",
          "pieces are drawn twice from one spot", COUNTED),
    # counts that can hardly be so
    Plant(RECOUNTS, "if is_far(book, counted) and not known.sure:", "if False:",
          "a count far off is not asked about", DAY_HEAP),
    Plant(ASKED, 'again = again and name != "enter"', "again = bool(again)",
          "another number by its cards is a yes to the first", DAY_HEAP),
    Plant(ASKED, "same = (do.subject, do.args) == (waiting.do.subject, waiting.do.args)",
          "same = False", "a number that is entered again is asked about for ever", DAY_HEAP),
    Plant(RECOUNTS, "> max(FAR, FAR_SHARE * book)", "> FAR_SHARE * book",
          "every piece is far off", ("tests/floor/test_recounts.py",)),
    Plant(RECOUNTS, "if by == 0 or act.again:", "if by <= 0 or act.again:",
          "pieces go with no question", DAY_HEAP),
    Plant(RECOUNTS, "if abs(by) > find_shop(view).recount_limit and not known.approved:",
          "if False:", "a heap is written off with no supervisor", DAY_OFFICE),
    Plant(RECOUNTS, 'if find_reason(view, known.reason, "correct") is None:', "if False:",
          "a count is corrected for no reason", DAY_HEAP),
    Plant(RECOUNTS, 'if head(place) != "rack":', "if False:",
          "orders are named that lack nothing", ("tests/floor/test_recounts.py",)),
    Plant(RECOUNTS, 'return move_in_order((*keep_free(view, lying), *held), -by, "recount")',
          'return move_in_order((*held, *keep_free(view, lying)[::-1]), -by, "recount")',
          "the book takes from the newest batch", ("tests/floor/test_recounts.py",)),
    Plant(RECOUNTS, "or act.again or not find_hold(view, batch):",
          "or True:", "held pieces are counted off by anybody", ("tests/floor/test_office.py",)),
    Plant("station/queries/orders.py", "        if there < 0:\n            break\n", "",
          "orders are named that lacked it before", ("tests/floor/test_recounts.py",)),
    Plant(f"{FLOOR}/office/count.py", "if not spot.batch:", "if False:",
          "the office counts a rack place by batch", DAY_OFFICE),
    Plant(f"{FLOOR}/office/rules_work.py", "sets=() if agreed else", "sets=() if True else",
          "a correction is seen by no supervisor", ("tests/floor/test_office.py",)),
    # undo
    Plant(UNDO, "if why := _gone_on(history, body) or _set_since(history, body):",
          "if why := _set_since(history, body):", "pieces come back that have gone on", UNDONE),
    Plant(UNDO, "if why := _gone_on(history, body) or _set_since(history, body):",
          "if why := _gone_on(history, body):", "an undo sets over what was done since", UNDONE),
    Plant(UNDO, "if history.reader.undone(id):", "if False:", "an act is taken back twice",
          UNDONE),
    Plant(UNDO, "if rule and rule.stays:", "if False:", "an undo ends a stop",
          ("replay:44_undo",)),
    Plant("station/desk/desk.py", "if past and past.act.args.approved and not opened:",
          "if False:", "anybody takes back what a supervisor approved", ("replay:52_undo",)),
    Plant("station/desk/desk.py", "opened = self.unlocked and self.hand.area in SUPERVISED",
          "opened = self.unlocked", "an office left open approves elsewhere", ("replay:52_undo",)),
    Plant(f"{FLOOR}/anywhere/returning.py",
          'if code.kind == "part" and head(hand.aside.subject) not in ("", "part"):', "if False:",
          "a wrong part is taken back by itself", BACK),
    # orders that are begun or gone
    Plant(KEEPING, "if order.state in STATES:", "if False:", "an order that left is rewritten",
          OFFICE),
    Plant(KEEPING, 'begun = order.state == "packing" or', "begun =",
          "an order being packed is rewritten", OFFICE),
    Plant(KEEPING, "_wants(fact) != _wants(before):", "False:", "a wish for it is forgotten",
          OFFICE),
    # somebody can still approve
    Plant(KEEPING, "if not able or any(_may_approve(w) for w in after.values()):", "if True:",
          "the last supervisor is switched off", OFFICE),
    Plant(KEEPING, "worker.active and worker.supervisor and worker.pin",
          "worker.supervisor and worker.pin", "one who is gone counts as a supervisor", OFFICE),
    # conflicts
    Plant("station/shop/conflicts.py", "qty = m.qty if balances(m.frm.place) else min(m.qty,",
          "qty = m.qty if balances(m.frm.place) else max(m.qty,",
          "more is booked than lies there", CONFLICTS),
    Plant(TODAY, "if not act.args.approved:", "if False:", "anybody settles", CONFLICTS),
    Plant(TODAY, "if done.settled in ALONE:", "if False:", "pieces are said to be booked and stay",
          TOGETHER),
    Plant(TODAY, "(other := view.get(Concern, one)) and not other.settled",
          "(other := view.get(Concern, one))", "what somebody settled is settled anew", TOGETHER),
    Plant(LOOKS, "and str(other.now) == str(concern.now)", "",
          "what has another reason is settled with it", TOGETHER),
    Plant(f"{FLOOR}/today/dialogue.py", "page = min(pages - 1, max(0, page))",
          "page = max(0, page)", "pages lie beyond the last", TOGETHER),
    Plant(AGAIN, "same = (_is_done(answer) and not was.moves) or _changes_nothing(answer)",
          "same = _is_done(answer) and not was.moves", "equal counts are a conflict", CONFLICTS),
    Plant(AGAIN, "meant = answer.moves", "pass", "a second count is added to the first",
          CONFLICTS),
    Plant(AGAIN, "return refuse(root, say(", "return refuse(answer.said, say(",
          "what followed tells another story", CONFLICTS),
    Plant(AGAIN, "if not stands_on.isdisjoint(f.marks)), None)", "), None)",
          "what stands by itself tells another's story", CONFLICTS),
    # what was not made, what comes back
    Plant(f"{FLOOR}/loading/rules_off.py", 'if batch.state != "cancelled":', "if False:",
          "a spoiled sheet is forgotten", SHEETS),
    Plant(TAKE, 'unmade = list_unmade(view, batch) if batch.state == "cut" else ()', "unmade = ()",
          "the traveller of a sheet that lacks is sent away", SHEETS),
    Plant(TAKE, "return replace(taken, sets=(here, *taken.sets, *made),",
          "return replace(taken, sets=(here, *taken.sets),", "a sheet made anew stays on the list",
          SHEETS),
    Plant("station/floor/loading/rules_take.py", "(c for c in unmade if c.id == act.args.look)",
          "()", "another sheet is cut again than was chosen", UNMADE),
    Plant("station/queries/unmade.py", "return refuse_unapproved(view, want_one_more(batch))",
          "return None", "a sheet of an old revision is cut again", UNMADE),
    Plant("station/queries/unmade.py", "return (*spoiled, *stuck)", "return tuple(spoiled)",
          "sheets that nobody may cut are on no list", UNMADE),
    Plant(f"{FLOOR}/office/unmade.py", "page = min(last, max(0, hand.work.page + by))", "page = 0",
          "sheets of the second page are out of reach", UNMADE),
    Plant(TODAY, "if how == AGAIN:", "if False:", "a sheet is settled and not cut again",
          ("tests/floor/test_unmade.py",)),
    Plant(RETURNS, "if not 0 < quantity <= gone:", "if quantity < 1:",
          "more comes back than left", DAY_BACK),
    Plant(RETURNS, 'find_reason(view, act.args.reason, "returned")',
          "view.get(Reason, act.args.reason)", "something comes back for any reason", BACK),
    Plant(RETURNS, "back[part.id] = back.get(part.id, 0) + quantity", "pass",
          "one pack comes back twice", BACK),
    Plant("station/queries/returns.py", "(h for h in gone if not own.get(h.batch))", "gone",
          "a piece comes back twice at once", BACK),
    Plant("station/queries/returns.py", "if own.get(h.batch)]", "if False]",
          "what came back is of another batch than left", BACK),
    Plant("station/queries/returns.py",
          "if n != origin.id and view.get(Batch, n)", "if False",
          "held pieces that come back are free", BACK),
    Plant(f"{FLOOR}/anywhere/returning.py", 'rest = replace(hand.aside, part="") if more else',
          "rest =", "a pack is closed with parts still on the table", BACK),
    # a bit that nobody has entered yet
    Plant(NEW_BIT, "if not SMALLEST <= size <= LARGEST:", "if size <= 0:",
          "a wild number is a bit", BITS),
    Plant(NEW_BIT, "sets=(*done.sets, concern, *came)", "sets=(*done.sets, *came)",
          "nobody looks at a bit that a worker entered", BITS),
    Plant(NEW_BIT, "if refused := refuse_unfit(view, bed, bit):", "if False:",
          "a bit goes into a spindle that turns", ("tests/floor/test_new_bit.py",)),
    Plant(f"{FLOOR}/loading/new_bit.py", "any(use.diameter_mm == diameter_mm for use in wanted)",
          "wanted", "a bit for later goes in before its time", BITS),
    Plant(TODAY, 'replace(bit, state="worn"),', "bit,", "a bit that is not approved cuts on",
          BITS),
    # survivors of a sheet
    Plant(f"{FLOOR}/loading/work.py", 'if self.mode != "spoil":', "if True:",
          "what survived of a sheet is dropped by looking elsewhere", ("replay:50_survivors",)),
    Plant(f"{FLOOR}/loading/preparing.py", 'hand.work.spoils not in ("", name_sheet(bed)):',
          "False:", "what survived of one sheet counts for another", SPOILT),
    # what is shown
    Plant(LOOKS, "takewhile(lambda o: is_late(o, now),", "takewhile(lambda o: False,",
          "late orders raise nothing", LOOKED),
    Plant(LOOKS, "if b.why_held and b.key not in told", "if b.why_held",
          "a held batch stands there twice", LOOKED),
    Plant(HELD, "        if stamp != self._stamp or", "        if",
          "screens show what was so before", READ),
    Plant(HELD, "for answer in self._resting.pop(name, ()):", "for answer in ():",
          "what was worked out stays though what it read has changed", READ),
    Plant(HELD, "tuple(fact if f.id == fact.id else f for f in found)", "found",
          "an order stands on its shelf as it was", READ),
    Plant(HELD, '((spot.batch, spot.place), (spot.batch, ""), ("", spot.place))',
          '((spot.batch, spot.place), (spot.batch, ""))',
          "a rack place shows what lay there before", READ),
)  # fmt: skip
