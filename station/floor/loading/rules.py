"""Every act of the loading room with its rule."""

from station.floor.loading.common import READS
from station.floor.loading.rules_off import off_bed, spoil_sheet
from station.floor.loading.rules_sheet import start_sheet
from station.floor.loading.rules_stop import (
    bit_broken,
    change_bit,
    end_stop,
    rehome,
    report_stop,
    resurface,
    start_day,
)
from station.floor.loading.rules_take import add_sheet, check_first_off, read_notice, take_batch
from station.shop.views import Rule, Rules

RULES: Rules = {
    decide.__name__: Rule(READS, decide)
    for decide in (
        take_batch,
        start_sheet,
        off_bed,
        spoil_sheet,
        add_sheet,
        report_stop,
        end_stop,
        change_bit,
        bit_broken,
        check_first_off,
        start_day,
        resurface,
        rehome,
        read_notice,
    )
}
