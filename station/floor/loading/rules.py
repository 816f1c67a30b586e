"""Lists every act at the cutting bed with its rule. Kinds are kept in the history for ever."""

from station.floor.loading.rules_off import end_sheet, spoil_sheet
from station.floor.loading.rules_start import start_sheet
from station.floor.loading.rules_stop import (
    break_bit,
    change_bit,
    end_stop,
    rehome,
    report_stop,
    resurface,
    start_day,
)
from station.floor.loading.rules_take import add_sheet, check_first_off, read_notice, take_batch
from station.shop.facts import (
    Batch,
    Bed,
    Bit,
    CutFile,
    Fact,
    Lot,
    Material,
    Notice,
    Pace,
    Reason,
    Revision,
    Router,
    Shop,
    Slip,
)
from station.shop.views import Rule, Rules

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
        Batch,
        Slip,
    }
)

RULES: Rules = {
    "take_batch": Rule(READS, take_batch),
    "start_sheet": Rule(READS, start_sheet),
    "off_bed": Rule(READS, end_sheet),
    "spoil_sheet": Rule(READS, spoil_sheet),
    "add_sheet": Rule(READS, add_sheet),
    "report_stop": Rule(READS, report_stop),
    "end_stop": Rule(READS, end_stop),
    "change_bit": Rule(READS, change_bit),
    "bit_broken": Rule(READS, break_bit),
    "check_first_off": Rule(READS, check_first_off),
    "start_day": Rule(READS, start_day),
    "resurface": Rule(READS, resurface),
    "rehome": Rule(READS, rehome),
    "read_notice": Rule(READS, read_notice),
}
