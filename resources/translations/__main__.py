"""``python -m resources.translations``: brings the translation files up to date.

Every template in the program is put into each ``station_*.ts`` beside this file; what was
translated stays, what is gone goes, what is new waits as unfinished (Qt Linguist shows
it). Then Qt's lrelease makes the ``.qm`` files that the program loads. A new language is
one more name: ``python -m resources.translations fr``.
"""

import subprocess
import sys
from pathlib import Path

import PySide6

from resources.translations.templates import templates
from resources.translations.ts_file import read, write

HERE = Path(__file__).resolve().parent


def main(languages: list[str]) -> None:
    """Updates every file, and those of new languages; prints what is done in each."""
    wanted = templates(HERE.parent.parent)
    names = {f.stem.removeprefix("station_") for f in HERE.glob("station_*.ts")} | {*languages}
    for language in sorted(names):
        file = HERE / f"station_{language}.ts"
        kept = read(file) if file.exists() else {}
        done = {template: kept.get(template, "") for template in wanted}
        write(file, language, done)
        release(file)
        count = sum(map(bool, done.values()))
        print(f"{language}: {count} of {len(done)} translated")  # noqa: T201 - a command


def release(file: Path) -> None:
    """Compiles a file with the lrelease that comes with PySide6."""
    tool = "lrelease.exe" if sys.platform == "win32" else "lrelease"
    command = [str(Path(PySide6.__file__).with_name(tool)), "-silent", str(file)]
    subprocess.run(command, check=True)  # noqa: S603 - Qt's own tool on our own file


if __name__ == "__main__":
    main(sys.argv[1:])
