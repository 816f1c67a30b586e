"""Nothing in the program works on one operating system only.

What a system has alone may be used where the line asks which system it is, so that the others
have their own way. Read from the source: it is found on whatever system the tests run.
"""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
FILES = [*(ROOT / "station").rglob("*.py"), *(ROOT / "demo_db").rglob("*.py")]
MODULES = {
    *("fcntl", "termios", "tty", "pty", "pwd", "grp", "resource", "posix", "syslog", "crypt"),
    *("msvcrt", "winreg", "winsound", "_winapi", "nt", "win32api", "pywintypes"),
}
CALLS = {  # by the module that has them
    "os": {
        *("fork", "geteuid", "getuid", "getgid", "chown", "lchown", "mkfifo", "uname", "setsid"),
        *(
            "getpgid",
            "killpg",
            "kill",
            "sync",
            "statvfs",
            "nice",
            "startfile",
            "getlogin",
            "chroot",
        ),
        *(
            "sched_getaffinity",
            "getloadavg",
            "posix_fadvise",
            "sendfile",
            "openpty",
            "wait",
            "waitpid",
        ),
        *("rename", "replace"),  # Windows refuses what another program holds: `replace_file`
    },
    "signal": {
        "SIGKILL",
        "SIGHUP",
        "SIGALRM",
        "SIGUSR1",
        "SIGUSR2",
        "alarm",
        "setitimer",
        "pause",
    },
    "socket": {"AF_UNIX"},
    "time": {"tzset", "clock_gettime"},
    "asyncio": {"add_signal_handler"},
}
ARGUMENTS = {"preexec_fn", "start_new_session", "pass_fds", "umask", "creationflags"}
PLACES = ("/tmp/", "/dev/", "/proc/", "/usr/", "/etc/", "/var/", "/home/", "C:\\")
ASKS = ("sys.platform", "os.name", "hasattr(os", "platform.system")  # which system it is
RENAMES = {
    "station/ledger/renaming.py",
    "station/files/logs.py",
}  # the log grows on where it is held
TEXTS = {"read_text", "write_text"}


def find_lonely(source: str, name: str = "") -> list[str]:
    """Finds what one system alone has, where the line does not ask which one it is."""
    found = list[str]()
    tree = ast.parse(source)
    for node, asked in _walk(tree, asked=False):
        words = "" if asked else _tell(node)
        words = words or _tell_everywhere(node, name)
        if words:
            found.append(f"{name}:{getattr(node, 'lineno', 0)}: {words}")
    return found


def _walk(node: ast.AST, *, asked: bool) -> Iterator[tuple[ast.AST, bool]]:
    """Gives each node, and whether a condition around it asks which system it is."""
    yield node, asked
    below = asked or (isinstance(node, ast.If | ast.IfExp | ast.BoolOp | ast.FunctionDef)
                      and any(words in ast.unparse(node) for words in ASKS))  # fmt: skip
    for child in ast.iter_child_nodes(node):
        yield from _walk(child, asked=below)


def _tell(node: ast.AST) -> str:
    """Tells what of one system a node is; nothing where it is none."""
    if isinstance(node, ast.Import):
        return next((a.name for a in node.names if a.name.split(".")[0] in MODULES), "")
    if isinstance(node, ast.ImportFrom):
        return node.module if node.module and node.module.split(".")[0] in MODULES else ""
    if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
        alone = node.attr in CALLS.get(node.value.id, ())
        return f"{node.value.id}.{node.attr}" if alone else ""
    if isinstance(node, ast.Call):
        return next((str(k.arg) for k in node.keywords if k.arg in ARGUMENTS), "")
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return node.value if node.value.startswith(PLACES) else ""
    return ""


def _tell_everywhere(node: ast.AST, name: str) -> str:
    """Tells what goes wrong on one system whoever asks: a renaming, a text of its own signs."""
    if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Attribute):
        return ""
    attr, named = node.func.attr, {k.arg for k in node.keywords}
    if attr in TEXTS and "encoding" not in named and len(node.args) < _place_of_encoding(attr):
        return f"{attr} without an encoding"
    renames = attr == "rename" or (attr == "replace" and len(node.args) == 1 and not node.keywords)
    return f"{attr}: say replace_file" if renames and name not in RENAMES else ""


def _place_of_encoding(attr: str) -> int:
    """At which place a plain argument is the encoding."""
    return {"read_text": 1, "write_text": 2}[attr]


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.relative_to(ROOT).as_posix())
def test_it_works_on_every_system(file):
    source = file.read_text(encoding="utf-8")
    assert find_lonely(source, file.relative_to(ROOT).as_posix()) == []


LONELY = [
    "import fcntl",
    "from msvcrt import locking",
    "import os\nos.kill(7, 9)",
    "import os\nos.fork()",
    "import signal\nsignal.signal(signal.SIGHUP, print)",
    "import socket\nsocket.socket(socket.AF_UNIX)",
    "import subprocess\nsubprocess.Popen(['a'], preexec_fn=print)",
    "log = '/tmp/station.log'",
    "from pathlib import Path\nPath('a').replace(Path('b'))",
    "import os\nos.replace('a', 'b')",
    "from pathlib import Path\nPath('a').read_text()",
    "if 1 > 2:\n    import winsound",
]


@pytest.mark.parametrize("source", LONELY)
def test_what_one_system_has_alone_is_found(source):
    assert len(find_lonely(source)) == 1


BOTH = [
    "import sys\nif sys.platform == 'win32':\n    import winsound\nelse:\n    import fcntl",
    "import os\nif hasattr(os, 'geteuid') and os.geteuid():\n    pass",
    "'a b'.replace(' ', '')",
    "from pathlib import Path\nPath('a').read_text(encoding='utf-8')",
    "from dataclasses import replace\nreplace(1, a=2)",
]


@pytest.mark.parametrize("source", BOTH)
def test_what_has_a_way_on_each_system_is_left_alone(source):
    assert find_lonely(source) == []
