"""Decides on what the shop knows: facts, lists, PINs. All ask for a supervisor, bar the first.

There is one act to set a fact, of whatever kind (`set_fact`). Where more than one fact changes
together, or pieces move, an act has a rule of its own in `rules_work`.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from station.floor.office.acts import (
    ApproveRevision,
    CancelOrder,
    CorrectCount,
    FoundShop,
    GivenFields,
    GivenList,
    ReceiveLot,
    ReceiveMailers,
    RenewFirstFacts,
    RestoreBackup,
    SetFact,
    SetList,
    SetLists,
    TakeInFile,
)
from station.floor.office.keeping import keep_orders, refuse_last_supervisor
from station.floor.office.lists import LISTS, say_one
from station.floor.office.pairing import pair_places
from station.floor.office.rules_work import (
    MOST,
    NEXT,
    approve_revision,
    cancel_batch,
    cancel_order,
    correct_count,
    receive_lot,
    receive_mailers,
    release_batch,
    take_in_file,
)
from station.floor.office.seating import seat_bits
from station.floor.office.sound import NONE_COMING, find_problems
from station.floor.shared.approval import ask_supervisor
from station.floor.shared.queue import CancelBatch, ReleaseBatch
from station.floor.shared.recounts import COUNT_READS
from station.queries.buying import note_bit_came
from station.queries.settings import has_pin
from station.shop.acts import (
    Act,
    Answer,
    SetPin,
    ask,
    attention,
    good,
    notice,
    refuse,
)
from station.shop.cards import REASON_USES
from station.shop.facts import (
    KINDS,
    Batch,
    Bed,
    Bit,
    Concern,
    CutFile,
    Fact,
    Lot,
    Mailer,
    Matching,
    Material,
    Numbers,
    Order,
    Pack,
    Part,
    Pile,
    Purchase,
    Reason,
    Revision,
    Router,
    Shop,
    Slip,
    Worker,
)
from station.shop.first_facts import ISSUE, later_reasons, renewed
from station.shop.moves import move
from station.shop.plain import build
from station.shop.views import Rule, Rules, View, by_kind
from station.shop.words import Say, say

USES = tuple(REASON_USES)
NOTHING_SET = say("Nothing was set.")
AFTER_NEW: dict[type[Fact], Say] = {  # what a new one still lacks
    CutFile: say("Now “Read its file”."),
    Lot: say("Now “Receive sheets”."),
}


def found_shop(act: Act[FoundShop], view: View) -> Answer:
    """Founds a shop: everything that it starts with, and what lies on its rack."""
    if view.get(Shop, "shop"):
        return refuse(say("This shop is set up already"), say("Change it in the office."))
    made = [build(given.kind, given.value) for given in act.args.facts]
    problems = [p for m in made if isinstance(m, list) for p in m]
    if problems:
        return refuse(
            problems[0],
            say("{count} {count|problem|problems}: nothing was set.", count=len(problems)),
        )
    moves = tuple(
        move(lying.part, lying.quantity, lying.frm, lying.to, lying.batch)
        for lying in act.args.stock
    )
    facts = tuple(m for m in made if isinstance(m, Fact))
    return good(say("The shop is set up"), say("Scan your badge."), moves=moves, sets=facts)


def renew_first_facts(_act: Act[RenewFirstFacts], view: View) -> Answer:
    """Brings a shop that exists up to what the first facts of this program say."""
    shop = view.get(Shop, "shop")
    if shop is None or shop.first >= ISSUE:
        return notice(say("The shop knows all that it starts with"), say("Go on."))
    known = (r for use in USES for r in view.shelf(Reason, use, MOST))
    changed = tuple(new for old in known if (new := renewed(old, shop.first)) != old)
    added = tuple(r for r in later_reasons() if view.get(Reason, r.id) is None)
    return good(
        say("{n} {n|reason says|reasons say} more now of what follows from them", n=len(changed)),
        say("New ones: {n}. Look at them in the office.", n=len(added)),
        sets=(replace(shop, first=ISSUE), *changed, *added),
    )


def set_fact(act: Act[SetFact], view: View) -> Answer:
    """Sets any fact anew from its fields, each checked against its type."""
    if asked := ask_supervisor(act):
        return asked
    made = build_sound(act.args.of, act.args.value, view)
    if isinstance(made, list):
        return refuse(made[0], say("Correct it and save again."))
    if problem := refuse_last_supervisor((made,), view):
        return problem
    kept = keep_orders(act, (made,), view)
    if not kept.facts:
        return _tell_kept(made, kept.wishes)
    seated = seat_bits(pair_places((made,), view), view, act.at)
    if seated.wrong:
        return seated.wrong
    new = view.get(type(made), made.id) is None
    one = next((o.one for o in LISTS if o.kind is type(made)), Say(act.args.of))
    said = (
        say("{what} is new", what=say_one(one, made.id))
        if new
        else say("{what} is changed", what=say_one(one, made.id))
    )
    came = note_bit_came(view, made.diameter_mm) if new and isinstance(made, Bit) else ()
    sets = (*seated.facts, *seated.beds, *came)
    if seated.told:
        return attention(said, seated.told, sets=sets)
    return good(said, AFTER_NEW.get(type(made), NEXT) if new else NEXT, sets=sets)


def _tell_kept(made: Fact, wishes: tuple[Concern, ...]) -> Answer:
    """Tells that an order stays as it is; what was wanted of it is kept."""
    if not wishes:
        known = say("What is wanted of it is known already: see Needs a look.")
        return notice(say("Order {order} stays as it is", order=made.id), known)
    return attention(
        say("Order {order} is begun or gone: it stays as it is", order=made.id),
        say("What is wanted stands under Needs a look."),
        sets=wishes,
    )


NOT_BY_HAND = (Bed, Batch, Pack, Numbers, Concern)


def build_sound(
    kind: str, value: GivenFields, view: View, coming: frozenset[str] = NONE_COMING
) -> Fact | list[Say]:
    """Builds the fact with these values, or tells every problem: types first, then the rest.

    `coming`: keys of what comes in with it.
    """
    made = build(kind, value)
    if isinstance(made, list):
        return made
    if isinstance(made, NOT_BY_HAND):
        return [say("{kind} follows from the work and is not set by hand", kind=kind)]
    return find_problems(made, view, coming) or made


def set_list(act: Act[SetList], view: View) -> Answer:
    """Takes a whole list in, in one act: all of it or nothing, and taken back as one."""
    args = act.args
    given = GivenList(of=args.of, values=args.values, file=args.file)
    known = Matching(id=args.of, columns=args.matched) if args.matched else None
    answer = _take_lists(act, (given,), view)
    if known is None or answer.refused or view.get(Matching, args.of) == known:
        return answer
    return replace(answer, sets=(*answer.sets, known))


def set_lists(act: Act[SetLists], view: View) -> Answer:
    """Takes several lists in, in one act; what one names another one may bring."""
    return _take_lists(act, act.args.lists, view)


def list_coming(lists: Iterable[GivenList]) -> frozenset[str]:
    """Lists the keys of all that these lists bring."""
    return frozenset(f"{one.of}/{value.get('id', '')}" for one in lists for value in one.values)


def _build_all(lists: tuple[GivenList, ...], view: View) -> dict[str, Fact] | Answer:
    """Builds every fact of the lists by its key, or refuses the first row that can't be."""
    coming, facts = list_coming(lists), dict[str, Fact]()
    for one in lists:
        for number, value in enumerate(one.values, 1):
            made = build_sound(one.of, value, view, coming)
            if isinstance(made, list):
                where = say("Row {n}", n=number)
                if len(lists) > 1:
                    where = say("{file}, row {n}", file=one.file, n=number)
                return refuse(say("{row}: {what}", row=where, what=made[0]), NOTHING_SET)
            facts[made.key] = made
    return facts


def _take_lists(act: Act[Any], lists: tuple[GivenList, ...], view: View) -> Answer:
    """Takes lists in: all of them or nothing."""
    if asked := ask_supervisor(act):
        return asked
    facts = _build_all(lists, view)
    if isinstance(facts, Answer):
        return facts
    if problem := refuse_last_supervisor(facts.values(), view):
        return problem
    kept = keep_orders(act, facts.values(), view)
    seated = seat_bits(pair_places(kept.facts, view), view, act.at)
    if seated.wrong:
        return seated.wrong
    before = {f.key: view.get(type(f), f.id) for f in seated.facts}
    sets = (*(f for f in seated.facts if f != before[f.key]), *seated.beds)
    given = [fact for fact in sets if fact.key in facts]  # not what follows, as a part's place
    new = sum(before[fact.key] is None for fact in given)
    if not sets and not kept.wishes:
        return notice(say("Nothing in it differs from what is known"), NOTHING_SET)
    said = say("Taken in: {new} new, {changed} changed", new=new, changed=len(given) - new)
    if wishes := kept.wishes:
        do = say(
            "{n} {n|order is|orders are} begun or gone and {n|stays|stay}: see Needs a look.",
            n=len(wishes),
        )
        return attention(said, do, sets=(*sets, *wishes))
    if n := _count_in_drawer(facts.values(), seated.facts):
        do = say("{n} {n|bit lies|bits lie} in the drawer: no place in the router is free for "
                 "{n|it|them} yet.", n=n)  # fmt: skip
        return attention(said, do, sets=sets)
    return good(said, say("What is not in the file stays as it was."), sets=sets)


def _count_in_drawer(said: Iterable[Fact], seated: Iterable[Fact]) -> int:
    """Counts the bits that were said to be in a router and found no place there."""
    wanted = {fact.id for fact in said if isinstance(fact, Bit) and fact.router}
    return sum(isinstance(b, Bit) and b.id in wanted and not b.router for b in seated)


def set_pin(act: Act[SetPin], view: View) -> Answer:
    """Sets a supervisor's new PIN, hashed before it comes here (argon2).

    The first one of a shop needs no approval: there is nobody yet who could give it.
    """
    worker = view.get(Worker, act.subject.partition("/")[2])
    if worker is None:
        return refuse(say("There is no such worker"), say("Open a worker first."))
    forgotten = act.args.forgotten and has_pin(view)
    if has_pin(view) and not forgotten and (asked := ask_supervisor(act)):
        return asked
    hashed = act.args.hash
    if not hashed:
        return ask(
            say("A new PIN for worker {id}", id=worker.id),
            say("Enter 4 to 8 digits that nobody guesses."),
            "new_pin",
        )
    if not hashed.startswith("$argon2"):
        return refuse(say("A PIN is kept only as its hash"), say("Set it in the office."))
    told = (_tell_forgotten(act, worker),) if forgotten else ()
    return good(
        say("Worker {id} has a new PIN", id=worker.id),
        NEXT,
        sets=(replace(worker, supervisor=True, pin=hashed), *told),
    )


def _tell_forgotten(act: Act[SetPin], worker: Worker) -> Concern:
    """Tells everybody of a PIN that was set without the old one: it may be nobody's friend."""
    return Concern(
        id=f"pin-{act.id}",
        what="pin",
        since=act.at,
        about=worker.key,
        text=say("The PIN of worker {id} was set anew at station {station} without the old one",
                 id=worker.id, station=act.station),
        choices=("it was forgotten", "nobody here did it"),
        station=act.station,
        worker=worker.id,
    )  # fmt: skip


def restore_backup(act: Act[RestoreBackup], _view: View) -> Answer:
    """Notes which backup is to be gone back to: the next start does it, before all else."""
    if asked := ask_supervisor(act):
        return asked
    if not act.args.sure:
        return ask(
            say("All that was done since that backup will be set aside"),
            say("Go on where that is meant. A mistake: leave it."),
            "sure",
        )
    return good(
        say("The next start goes back to {file}", file=act.args.file),
        say("Close the station now, and open it again."),
    )


_ANY = frozenset(
    {Shop, Worker, Reason, Material, Lot, CutFile, Revision, Router, Bed, Batch, Order}
)
_EVERY_KIND = frozenset(KINDS.values())

RULES: Rules = by_kind(
    Rule(args=FoundShop, reads=frozenset({Shop}), decide=found_shop),
    Rule(args=RestoreBackup, reads=frozenset(), decide=restore_backup),
    Rule(args=RenewFirstFacts, reads=frozenset({Shop, Reason}), decide=renew_first_facts),
    Rule(args=SetFact, reads=_EVERY_KIND, decide=set_fact),
    Rule(args=SetList, reads=_EVERY_KIND, decide=set_list),
    Rule(args=SetLists, reads=_EVERY_KIND, decide=set_lists),
    Rule(args=SetPin, reads=_ANY | {Concern}, decide=set_pin),
    Rule(args=TakeInFile, reads=_ANY | {Part}, decide=take_in_file),
    Rule(args=ApproveRevision, reads=_ANY, decide=approve_revision),
    Rule(args=ReleaseBatch, reads=_ANY, decide=release_batch),
    Rule(args=CancelBatch, reads=_ANY | {Slip, Pile, Concern}, decide=cancel_batch),
    Rule(args=CancelOrder, reads=_ANY, decide=cancel_order),
    Rule(args=ReceiveLot, reads=_ANY | {Purchase}, decide=receive_lot),
    Rule(args=ReceiveMailers, reads=_ANY | {Mailer, Purchase}, decide=receive_mailers),
    Rule(args=CorrectCount, reads=_ANY | COUNT_READS, decide=correct_count),
)
