#!/usr/bin/env python3
"""Checks that every string of the window has its translation, up to date with the sources.

Arguments: the project's root. Prints each string at fault and exits 1 if there is one.
"""
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

PLACES = re.compile(r"%(?:L?\d+|n)")


def faults(file):
    for context in ElementTree.parse(file).getroot().iter("context"):
        for message in context.iter("message"):
            source = message.findtext("source") or ""
            translation = message.find("translation")
            forms = [form.text or "" for form in translation.iter("numerusform")] or [translation.text or ""]
            where = f"{file.name}: {context.findtext('name')}: {source!r}"
            if translation.get("type") == "unfinished" or not all(form.strip() or not source.strip() for form in forms):
                yield f"{where} has no translation"
            elif any(sorted(set(PLACES.findall(form))) != sorted(set(PLACES.findall(source))) for form in forms):
                yield f"{where}: its places for values differ: {forms}"


def main():
    root = pathlib.Path(sys.argv[1])
    kept = root / "client" / "translations"
    with tempfile.TemporaryDirectory() as folder:
        for file in kept.glob("*.ts"):
            shutil.copy(file, folder)
        update = subprocess.run([kept / "update", folder], check=True, stderr=subprocess.PIPE, text=True)
        files = sorted(pathlib.Path(folder).glob("*.ts"))
        found = [fault for file in files for fault in faults(file)]
        # Such a string is looked up under another name than it is kept under, and stays untranslated.
        found += [line for line in update.stderr.splitlines() if "lacks Q_OBJECT" in line]
    print("\n".join(found) or f"every string is translated in {len(files)} files")
    sys.exit(1 if found or not files else 0)


if __name__ == "__main__":
    main()
