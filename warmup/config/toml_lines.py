"""On which line each key of a TOML text is written, so that a complaint can say where."""

import contextlib
import re
import tomllib
from functools import lru_cache
from types import MappingProxyType

Keys = tuple[str | int, ...]
"""The way to a value: keys of tables and, from 0, places in lists."""

_DEEPEST = 8  # no file of ours nests deeper
_TOKEN = re.compile(
    r"""
    (?P<blank> [ \t\r]+ | \#[^\n]* )
  | (?P<newline> \n )
  | (?P<word>
        \"{3} (?: \\. | [^\\] )*? \"{3,5}
      | '{3} .*? '{3,5}
      | \" (?: \\. | [^"\\\n] )* \"
      | ' [^'\n]* '
      | [^\s\[\]{},=."'\#]+ )
  | (?P<mark> [\[\]{},=.] )
    """,
    re.VERBOSE | re.DOTALL,
)


@lru_cache(maxsize=4)
def lines(text: str) -> MappingProxyType[Keys, int]:
    """The line, from 1, of every key, table header and list element of a valid TOML text."""
    scan = _Scan(text)
    # Nested by the hundred, or not valid after all: what was found until then still helps.
    with contextlib.suppress(RecursionError, IndexError):
        scan.document()
    return MappingProxyType(scan.found)


class _Scan:
    """Walks the tokens of a text once and notes where keys stand."""

    def __init__(self, text: str) -> None:
        self.found: dict[Keys, int] = {}
        self.sizes: dict[Keys, int] = {}
        self.tokens: list[tuple[str, int]] = []
        self.at = 0
        line = 1
        for token in _TOKEN.finditer(text):
            if token.lastgroup != "blank":
                self.tokens.append((token[0], line))
            line += token[0].count("\n")

    def document(self) -> None:
        table: Keys = ()
        while self.at < len(self.tokens):
            match self._peek():
                case "\n":
                    self.at += 1
                case "[":
                    table = self._header()
                case _:
                    self._pair(table)

    def _peek(self) -> str:
        return self.tokens[self.at][0] if self.at < len(self.tokens) else "\n"

    def _next(self) -> str:
        self.at += 1
        return self.tokens[self.at - 1][0]

    def _note(self, keys: Keys, line: int) -> None:
        for n in range(1, min(len(keys), _DEEPEST) + 1):
            self.found.setdefault(keys[:n], line)

    def _header(self) -> Keys:
        line = self.tokens[self.at][1]
        opening = 0
        while self._peek() == "[":
            opening += len(self._next())
        parts = self._key("]")
        self.at += opening - 1
        keys: Keys = ()
        for part in parts[:-1]:
            keys = self._last((*keys, part))
        keys = (*keys, parts[-1])
        if opening == 2:
            self.sizes[keys] = self.sizes.get(keys, 0) + 1
            keys = self._last(keys)
        self._note(keys, line)
        return keys

    def _last(self, keys: Keys) -> Keys:
        return (*keys, self.sizes[keys] - 1) if keys in self.sizes else keys

    def _key(self, end: str) -> list[str]:
        parts = []
        while (token := self._next()) != end:
            if token != ".":
                quoted = token[0] in "\"'"
                parts.append(str(tomllib.loads(f"key = {token}")["key"]) if quoted else token)
        return parts

    def _pair(self, table: Keys) -> None:
        line = self.tokens[self.at][1]
        keys = (*table, *self._key("="))
        self._note(keys, line)
        self._value(keys)

    def _value(self, keys: Keys) -> None:
        match self._peek():
            case "[":
                self._list(keys)
            case "{":
                self._inline(keys)
            case _:
                while self._peek() not in ("\n", ",", "]", "}"):
                    self.at += 1

    def _list(self, keys: Keys) -> None:
        self.at += 1
        index = 0
        while (token := self.tokens[self.at][0]) != "]":
            if token in ("\n", ","):
                self.at += 1
                continue
            self._note((*keys, index), self.tokens[self.at][1])
            self._value((*keys, index))
            index += 1
        self.at += 1

    def _inline(self, keys: Keys) -> None:
        self.at += 1
        while (token := self.tokens[self.at][0]) != "}":
            if token in ("\n", ","):
                self.at += 1
                continue
            self._pair(keys)
        self.at += 1
