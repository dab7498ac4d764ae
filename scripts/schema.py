"""Makes docs/exercise.schema.json from the records of the model; `--check` only says whether it is up to date."""

from __future__ import annotations

import json
import sys
from pathlib import Path

from conewright.store.interchange import schema

PAGE = Path(__file__).parent.parent / "docs" / "exercise.schema.json"


def schema_text() -> str:
    """Give the JSON Schema of an exercise as the file holds it."""
    return json.dumps(schema(), indent=2) + "\n"


def main(arguments: list[str]) -> int:
    """Write the schema, or with `--check` compare it; give 0 if it is up to date or written, else 1."""
    text = schema_text()
    if arguments == ["--check"]:
        return 0 if PAGE.is_file() and PAGE.read_text(encoding="utf-8") == text else 1
    PAGE.write_text(text, encoding="utf-8", newline="\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
