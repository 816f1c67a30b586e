"""``python -m tests.habits [WORD]``: reads all files, or those with a word in their name."""

import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.habits.clean import make_clean
from tests.habits.comparing import compare, read_job
from tests.habits.faulty import make_faulty


def main(word: str = "") -> int:
    """Prints what is read wrong, and counts."""
    counts = {"clean": [0, 0], "faulty": [0, 0]}
    with TemporaryDirectory() as folder:
        for kind, jobs in (("clean", make_clean()), ("faulty", make_faulty())):
            for job in jobs:
                if word not in job.name:
                    continue
                said = compare(job, read_job(job, Path(folder)))
                counts[kind][0] += not said
                counts[kind][1] += 1
                for sentence in said:
                    print(f"{job.name}: {sentence}")
    for kind, (right, files) in counts.items():
        print(f"{kind}: {right} of {files} files as they should be read")
    return int(any(right < files for right, files in counts.values()))


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
