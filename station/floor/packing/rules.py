"""Lists every act at packing with its rule."""

from station.floor.packing.acts import (
    AskForSheet,
    BeginWalk,
    ClaimOrder,
    ClosePack,
    CorrectPick,
    CountSupplies,
    LeaveWalk,
    MakeShelfPack,
    PickForWalk,
    PickPart,
    PickSet,
    PrintLabel,
    PutOrderDown,
    PutPartsBack,
    SendShort,
    SpoilPacked,
    TakeFromOrder,
    TakeShelfPack,
    WaitForPart,
)
from station.floor.packing.rules_order import claim_order, put_order_down
from station.floor.packing.rules_pack import close_pack, open_pack, print_label
from station.floor.packing.rules_shelf import make_shelf_pack, take_shelf_pack
from station.floor.packing.rules_short import (
    ask_for_sheet,
    send_short,
    take_from_order,
    wait_for_part,
)
from station.floor.packing.rules_supplies import count_supplies
from station.floor.packing.rules_take import (
    correct_pick,
    pick_part,
    pick_set,
    put_parts_back,
    spoil_packed,
)
from station.floor.packing.rules_walk import begin_walk, leave_walk, pick_for_walk
from station.floor.shared.opening import OpenPack
from station.shop.facts import (
    Batch,
    Bed,
    Concern,
    CutFile,
    Fact,
    Habit,
    Mailer,
    Material,
    Order,
    Pack,
    Part,
    Product,
    Purchase,
    RackPlace,
    Reason,
    Revision,
    Router,
    Shop,
    Slip,
)
from station.shop.views import Rule, Rules, by_kind

READS: frozenset[type[Fact]] = frozenset(
    {
        Batch,
        Bed,
        Concern,
        CutFile,
        Habit,
        Mailer,
        Material,
        Order,
        Pack,
        Part,
        Product,
        RackPlace,
        Reason,
        Revision,
        Router,
        Shop,
        Slip,
    }
)

RULES: Rules = by_kind(
    Rule(args=ClaimOrder, reads=READS, decide=claim_order),
    Rule(args=PutOrderDown, reads=READS, decide=put_order_down),
    Rule(args=WaitForPart, reads=READS, decide=wait_for_part),
    Rule(args=PickPart, reads=READS, decide=pick_part),
    Rule(args=PickSet, reads=READS, decide=pick_set),
    Rule(args=CorrectPick, reads=READS, decide=correct_pick),
    Rule(args=PutPartsBack, reads=READS, decide=put_parts_back),
    Rule(args=CountSupplies, reads=READS | {Purchase}, decide=count_supplies),
    Rule(args=TakeFromOrder, reads=READS, decide=take_from_order),
    Rule(args=AskForSheet, reads=READS, decide=ask_for_sheet),
    Rule(args=SendShort, reads=READS, decide=send_short),
    Rule(args=ClosePack, reads=READS, decide=close_pack),
    Rule(args=OpenPack, reads=READS, decide=open_pack),
    Rule(args=SpoilPacked, reads=READS, decide=spoil_packed),
    Rule(args=PrintLabel, reads=READS, decide=print_label),
    Rule(args=BeginWalk, reads=READS, decide=begin_walk),
    Rule(args=PickForWalk, reads=READS, decide=pick_for_walk),
    Rule(args=LeaveWalk, reads=READS, decide=leave_walk),
    Rule(args=MakeShelfPack, reads=READS, decide=make_shelf_pack),
    Rule(args=TakeShelfPack, reads=READS, decide=take_shelf_pack),
)
