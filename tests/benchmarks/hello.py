"""The floor of the app: one line in a terminal, and a key that saves a row and repaints it.

python hello.py DATABASE
"""

from __future__ import annotations

import sqlite3
import sys

from textual.app import App, ComposeResult
from textual.events import Key
from textual.widgets import Static


class Hello(App[None]):
    """Each space is one row on disk, as safely as the record's own, and one number drawn."""

    def compose(self) -> ComposeResult:
        yield Static("READY 0", id="number")

    def on_mount(self) -> None:
        self.saved = 0
        self.db = sqlite3.connect(sys.argv[1], isolation_level=None)
        self.db.execute("PRAGMA journal_mode = TRUNCATE")
        self.db.execute("PRAGMA synchronous = FULL")
        self.db.execute("PRAGMA fullfsync = 1")
        self.db.execute("CREATE TABLE IF NOT EXISTS line (body TEXT)")

    def on_key(self, event: Key) -> None:
        if event.key == "space":
            self.db.execute("BEGIN IMMEDIATE")
            self.db.execute("INSERT INTO line VALUES (?)", ("x" * 120,))
            self.db.execute("COMMIT")
            self.saved += 1
            self.query_one("#number", Static).update(f"READY {self.saved}")


if __name__ == "__main__":
    Hello().run()
