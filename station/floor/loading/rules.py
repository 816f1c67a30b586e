"""Lists every act at the cutting bed with its rule."""

from station.floor.loading.acts import (
    BreakBit,
    ChangeBit,
    EndSheet,
    EndStop,
    EnterBit,
    ReadNotice,
    Rehome,
    ReportStop,
    Resurface,
    SetZero,
    SpoilSheet,
    StartDay,
    StartSheet,
    TakeBatch,
)
from station.floor.loading.rules_first import MEASURE_AGAIN, check_first_off, measure_first_off
from station.floor.loading.rules_new_bit import enter_bit
from station.floor.loading.rules_off import end_sheet, spoil_sheet
from station.floor.loading.rules_start import start_sheet
from station.floor.loading.rules_stop import (
    break_bit,
    change_bit,
    end_stop,
    rehome,
    report_stop,
    resurface,
    set_zero,
    start_day,
)
from station.floor.loading.rules_take import add_sheet, read_notice, take_batch
from station.floor.shared.first_offs import CheckFirstOff, MeasureFirstOff
from station.floor.shared.queue import AddSheet
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    BitSize,
    Concern,
    CutFile,
    Fact,
    Lot,
    Material,
    Notice,
    Pace,
    Part,
    Purchase,
    Reason,
    Revision,
    Router,
    Shop,
    Slip,
)
from station.shop.views import Rule, Rules, by_kind
from station.shop.words import say

READS: frozenset[type[Fact]] = frozenset(
    {
        Shop,
        Reason,
        Material,
        Lot,
        CutFile,
        Revision,
        Router,
        Bed,
        Bit,
        Notice,
        Pace,
        Part,
        Concern,
        Batch,
        Slip,
    }
)

RULES: Rules = by_kind(
    Rule(args=TakeBatch, reads=READS, decide=take_batch),
    Rule(args=StartSheet, reads=READS, decide=start_sheet),
    Rule(args=EndSheet, reads=READS, decide=end_sheet),
    Rule(args=SpoilSheet, reads=READS, decide=spoil_sheet),
    Rule(args=AddSheet, reads=READS, decide=add_sheet),
    Rule(
        args=ReportStop,
        reads=READS,
        decide=report_stop,
        stays=say("A stop ends by its checks: tick them, then “The stop is over”."),
    ),
    Rule(args=EndStop, reads=READS, decide=end_stop),
    Rule(args=ChangeBit, reads=READS, decide=change_bit),
    Rule(args=EnterBit, reads=READS | {BitSize, Purchase}, decide=enter_bit),
    Rule(
        args=BreakBit,
        reads=READS,
        decide=break_bit,
        stays=say("Put a fit bit in. Not broken after all? The office sets it right."),
    ),
    Rule(args=CheckFirstOff, reads=READS, decide=check_first_off, stays=MEASURE_AGAIN),
    Rule(args=MeasureFirstOff, reads=READS, decide=measure_first_off, stays=MEASURE_AGAIN),
    Rule(args=SetZero, reads=READS, decide=set_zero),
    Rule(args=StartDay, reads=READS, decide=start_day),
    Rule(args=Resurface, reads=READS, decide=resurface),
    Rule(args=Rehome, reads=READS, decide=rehome),
    Rule(args=ReadNotice, reads=READS, decide=read_notice),
)
