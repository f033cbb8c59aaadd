"""On which line of a TOML text each of its keys stands.

`tomllib` gives values without their places. This walks the same text statement by statement; it
reads keys and steps over values, so it need not understand them. It expects text that `tomllib`
has accepted, and says nothing sensible of any other.
"""

from __future__ import annotations

import re
import tomllib

Path = tuple[str | int, ...]
"""Where a value is: keys, and for tables of an array the index, from 0: `("border", 1, "cut")`."""

# No group is repeated possessively: Pythons before 3.11.5 match those wrongly. Each alternative
# begins with a sign no other one does and takes one at a time, so nothing is ever tried twice.
_BLANK = re.compile(r"(?:[ \t\n]|#[^\n]*)*")
_KEY_PART = re.compile(r"""[A-Za-z0-9_-]++|"(?:[^"\\\n]|\\.)*"|'[^'\n]*+'""")
_SPACES = re.compile(r"[ \t]*+")
_END_OF_HEADING = re.compile(r"[ \t\]]*+")
_BETWEEN_PARTS = re.compile(r"[ \t]*+\.[ \t]*+")
_VALUE_TOKEN = re.compile(
    r'''
      """(?:[^"\\]|\\.|"(?!""))*"""(?:"{0,2})     # text over several lines, two quotes may end it
    | \'\'\'(?:[^']|'(?!\'\'))*\'\'\'(?:'{0,2})
    | "(?:[^"\\\n]|\\.)*"
    | '[^'\n]*+'
    | \#[^\n]*+
    | (?P<open>[\[{])
    | (?P<close>[\]}])
    | (?P<newline>\n)
    | [^"'\#\[\]{}\n]++
    ''',
    re.VERBOSE | re.DOTALL,
)


class KeyLines:
    """The lines of the keys of one text, counted from 1."""

    def __init__(self, lines: dict[Path, int]) -> None:
        self._lines = lines

    def of(self, path: Path) -> int | None:
        """The line `path` begins on, or that of the nearest key it is written within.

        What stands inside an array or between braces has the line of the key before it. A table
        has the line of its heading, or of the first key that brought it in; a path that is not
        there has that of the table it would be in. None for a path that hangs on no key.
        """
        while path and path not in self._lines:
            path = path[:-1]
        return self._lines.get(path)


def key_lines(text: str) -> KeyLines:
    """The lines of every key of `text`, which must be TOML that `tomllib` accepts."""
    return KeyLines(_Walk(text.replace("\r\n", "\n")).lines)


class _Walk:
    """One pass over the text. `table` is the table whose heading stood last."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.lines: dict[Path, int] = {}
        self.line = 1
        self.at = 0
        self.table: Path = ()
        self.tables_in_array: dict[Path, int] = {}
        self._step_over(_BLANK)
        while self.at < len(text):
            if text.startswith("[", self.at):
                self._heading()
            else:
                self._statement()
            self._step_over(_BLANK)

    def _heading(self) -> None:
        in_array = self.text.startswith("[[", self.at)
        self.at += 2 if in_array else 1
        keys = self._keys()
        table: Path = ()
        for key in keys[:-1]:
            table = self._last((*table, key))
            self.lines.setdefault(table, self.line)
        table += (keys[-1],)
        if in_array:
            self.lines.setdefault(table, self.line)
            index = self.tables_in_array.get(table, 0)
            self.tables_in_array[table] = index + 1
            table += (index,)
        self.lines[table] = self.line
        self.table = table
        self._step_over(_END_OF_HEADING)

    def _last(self, path: Path) -> Path:
        """`path`, or the last table so far where `path` is an array of tables."""
        count = self.tables_in_array.get(path)
        return path if count is None else (*path, count - 1)

    def _statement(self) -> None:
        path = self.table
        for key in self._keys():
            path += (key,)
            self.lines.setdefault(path, self.line)
        self.at = self.text.index("=", self.at) + 1
        self._value()

    def _value(self) -> None:
        """Step over a value, up to the end of the line it ends on."""
        depth = 0
        while self.at < len(self.text):
            token = self._step_over(_VALUE_TOKEN)
            if token.lastgroup == "open":
                depth += 1
            elif token.lastgroup == "close":
                depth -= 1
            elif token.lastgroup == "newline" and depth == 0:
                return

    def _keys(self) -> list[str]:
        """The parts of a dotted key, each without its quotes."""
        keys: list[str] = []
        self._step_over(_SPACES)
        while True:
            part = self._step_over(_KEY_PART)[0]
            quoted = part.startswith(('"', "'"))
            keys.append(str(tomllib.loads(f"key = {part}")["key"]) if quoted else part)
            if _BETWEEN_PARTS.match(self.text, self.at) is None:
                return keys
            self._step_over(_BETWEEN_PARTS)

    def _step_over(self, pattern: re.Pattern[str]) -> re.Match[str]:
        """Move behind what matches here, counting its lines.

        Raises ValueError where it does not match.
        """
        found = pattern.match(self.text, self.at)
        if found is None:
            raise ValueError(f"Line {self.line} is not TOML.")
        self.line += found[0].count("\n")
        self.at = found.end()
        return found
