#!/usr/bin/env python3
"""Checks who includes whom, and that DEVELOPERS.md names every folder of the map.

Reads each C++ source and header below server/ and client/ and compares its
includes with the table below. Prints each breach and exits 1 if there is one.
"""
import pathlib
import re
import sys

GRPC = r"grpc(pp)?/|suppertide/v1/\w+\.grpc\.pb\.h|suppertide/v1/\w+_service\.pb\.h"
PROTO = r"suppertide/v1/|google/protobuf/"
SQLITE = r"sqlite3"
QT = r"Q[A-Z]\w*|Qt\w+/"
CADICAL = r"cadical"

# folder -> (own folders it may include, outside headers it must not see)
RULES = {
    "server/base": ([], [GRPC, PROTO, SQLITE, QT, CADICAL]),
    "server/bread": (["server/base"], [GRPC, PROTO, SQLITE, QT, CADICAL]),
    "server/kitchen": (["server/base"], [GRPC, PROTO, SQLITE, QT, CADICAL]),
    "server/planning": (["server/base"], [GRPC, PROTO, SQLITE, QT]),
    "server/compose": (["server/base", "server/bread", "server/kitchen", "server/planning"], [GRPC, SQLITE, QT, CADICAL]),
    "server/storage": (["server/base"], [GRPC, PROTO, QT, CADICAL]),
    "server/sync": (["server/base", "server/storage"], [GRPC, PROTO, SQLITE, QT, CADICAL]),
    "server/service": (["server"], [SQLITE, QT, CADICAL]),
    "client/link": ([], [r"QtQml|QtQuick|QQml|QQuick"]),
    "client/terminal": (["client/link", "client/paper", "server/embedded.h"], [QT, SQLITE, CADICAL]),
    "client/shell": (["client", "server/embedded.h"], [GRPC, SQLITE, CADICAL]),
    "client/words": (["client/link", "client/ui"], [GRPC, SQLITE, CADICAL]),
    "client/session": (["client/link", "client/ui", "client/words"], [GRPC, SQLITE, CADICAL]),
    "client/planning": (["client/link", "client/session", "client/ui", "client/words"], [GRPC, SQLITE, CADICAL]),
    "client/printing": (["client/link", "client/paper", "client/session", "client/ui", "client/words"], [GRPC, SQLITE, CADICAL]),
    "client": (["client/link", "client/planning", "client/session", "client/ui", "client/words"], [GRPC, SQLITE, CADICAL]),
    "server": (["server"], [QT, CADICAL]),
}
# Files that alone may use a library their folder keeps inside.
ONLY_IN_SOURCES = {"server/storage": SQLITE, "server/planning": CADICAL}


def rule_for(folder):
    while folder and folder not in RULES:
        folder = folder.rpartition("/")[0]
    return folder, RULES.get(folder)


def breaches(root):
    for path in sorted(p for top in ("server", "client") for p in (root / top).rglob("*") if p.suffix in {".h", ".cpp"}):
        relative = path.relative_to(root).as_posix()
        home, rule = rule_for(relative.rpartition("/")[0])
        if rule is None:
            yield f"{relative}: its folder is not in the table"
            continue
        allowed, forbidden = rule
        own = relative.rpartition("/")[0]
        for line in path.read_text(encoding="utf-8").splitlines():
            match = re.match(r'\s*#\s*include\s*[<"]([^>"]+)[>"]', line)
            if not match:
                continue
            target = match.group(1)
            if re.match(r"(server|client|tests|demo)/", target):
                if target.startswith(home + "/") or target.startswith(own + "/"):
                    continue
                if not any(target == a or target.startswith(a + "/") for a in allowed):
                    yield f"{relative}: may not include {target}"
                continue
            for pattern in forbidden:
                if re.match(pattern, target):
                    yield f"{relative}: must not know {target}"
            private = ONLY_IN_SOURCES.get(home)
            if private and path.suffix == ".h" and re.match(private, target):
                yield f"{relative}: {target} belongs in a .cpp"


def mapped_folders(guide):
    """Folder paths that the map in DEVELOPERS.md draws, by indentation."""
    block = re.search(r"```\n(.*?)```", guide, re.S).group(1)
    parents, found = {}, set()
    for line in block.splitlines():
        depth = (len(line) - len(line.lstrip())) // 2
        for word in line.split():
            if not re.fullmatch(r"\w+/", word):
                break
            path = parents.get(depth - 1, "") + word
            parents[depth] = path
            found.add(path)
    return found


def unmapped(root):
    drawn = mapped_folders((root / "DEVELOPERS.md").read_text(encoding="utf-8"))
    real = {
        f"{top}/{folder.name}/"
        for top in ("server", "client", "tests")
        for folder in (root / top).iterdir()
        if folder.is_dir() and any(folder.iterdir())
    }
    for name in sorted(real - drawn):
        yield f"DEVELOPERS.md: the map does not name {name}"
    for name in sorted(drawn):
        if not (root / name).is_dir():
            yield f"DEVELOPERS.md: the map names {name}, which is not there"


def main():
    root = pathlib.Path(sys.argv[1])
    found = list(breaches(root)) + list(unmapped(root))
    print("\n".join(found) or "every include keeps to the table")
    sys.exit(1 if found else 0)


if __name__ == "__main__":
    main()
