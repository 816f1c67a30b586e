"""Copies the whole history for somebody, beside the screen, and keeps a backup anew with it."""

from pathlib import Path

from station.jobs import keep_backup
from station.jobs.messages import CopyHistory, Failed, HistoryCopied, Report
from station.ledger.faults import NoBackup
from station.ledger.kept_backups import write_still
from station.shop.words import say

STAGES = {
    "copy": say("Copying the history"),
    "prove": say("Reading the copy again"),
    "keep": say("Keeping the backup on this PC"),
}
COPIED, PROVED = 0.2, 0.6  # of the whole, as it takes


def run(request: CopyHistory, report: Report) -> HistoryCopied | Failed:
    """Copies the file as it stands, and proves the copy. Raises OSError where it cannot be."""
    ends = (request.number, bytes.fromhex(request.digest))
    begins = {"copy": (0.0, COPIED), "prove": (COPIED, PROVED)}

    def report_whole(stage: str, share: float) -> None:
        start, end = begins[stage]
        report(stage, start + share * (end - start))

    try:
        write_still(Path(request.path), Path(request.to), *ends, report_whole)
    except NoBackup as fault:
        return Failed(file="", why=str(fault))
    report("keep", PROVED)
    return HistoryCopied(trouble=_keep(request, report) if request.keep else "")


def _keep(request: CopyHistory, report: Report) -> str:
    """Keeps the backup; tells why it could not: the copy is there all the same."""
    assert request.keep is not None

    def report_whole(_stage: str, share: float) -> None:
        report("keep", PROVED + share * (1 - PROVED))

    try:
        outcome = keep_backup.run(request.keep, report_whole)
    except OSError as fault:
        outcome = Failed(file=str(fault.filename or ""), why=fault.strerror or str(fault))
    return outcome.tell() if isinstance(outcome, Failed) else ""
