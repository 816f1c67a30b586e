"""Qt's own translation files (TS, XML): one context, a message a template."""

from collections.abc import Mapping
from pathlib import Path
from xml.etree import ElementTree as ET

CONTEXT = "say"  # as in station.look.language


def read(file: Path) -> dict[str, str]:
    """Template to translation; an unfinished one is an empty text."""
    found = {}
    for message in ET.parse(file).iter("message"):  # noqa: S314 - our own file
        done = message.find("translation")
        text = (done.text or "") if done is not None and not done.get("type") else ""
        found[message.findtext("source", "")] = text
    return found


def write(file: Path, language: str, done: Mapping[str, str]) -> None:
    """Writes a file; what is not translated is marked as unfinished."""
    root = ET.Element("TS", version="2.1", language=language)
    context = ET.SubElement(root, "context")
    ET.SubElement(context, "name").text = CONTEXT
    for template, text in done.items():
        message = ET.SubElement(context, "message")
        ET.SubElement(message, "source").text = template
        translation = ET.SubElement(message, "translation")
        translation.text = text
        if not text:
            translation.set("type", "unfinished")
    ET.indent(root)
    body = ET.tostring(root, encoding="unicode")
    file.write_text(
        f'<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE TS>\n{body}\n', encoding="utf-8",
        newline="\n",
    )  # fmt: skip
