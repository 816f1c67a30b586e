"""Gets this PC ready to read cut files: once, beside the screen, before anybody asks for one."""

from station.cutting.prepare import prepare_reader
from station.jobs.messages import GetReady, GotReady, Report


def run(_request: GetReady, report: Report) -> GotReady:
    """Compiles what reads cut files, unless it is kept already."""
    prepare_reader(lambda share: report("ready", share))
    return GotReady()
