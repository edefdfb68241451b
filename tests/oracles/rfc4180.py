"""A reader of CSV by the grammar of RFC 4180, section 2, and nothing else.

The grammar, from the RFC: file = [header CRLF] record *(CRLF record) [CRLF]; field = escaped / non-escaped;
escaped = DQUOTE *(TEXTDATA / COMMA / CR / LF / 2DQUOTE) DQUOTE. TEXTDATA is printable ASCII there; letters
beyond ASCII are taken here as well, since the file is UTF-8 (RFC 7111 registers that for text/csv).
"""

import re

_FIELD = re.compile(r'"((?:[^"]|"")*)"|([^",\r\n]*)')


def read(text: str) -> list[list[str]]:
    """The records. ValueError where the text is not by the grammar, or its records differ in length."""
    records: list[list[str]] = [[]]
    at = 0
    while True:
        found = _FIELD.match(text, at)
        assert found is not None
        quoted, plain = found.groups()
        records[-1].append(plain if quoted is None else quoted.replace('""', '"'))
        at = found.end()
        if at == len(text):
            raise ValueError("the last record does not end with CRLF")
        if text[at] == ",":
            at += 1
        elif text.startswith("\r\n", at):
            at += 2
            if at == len(text):
                break
            records.append([])
        else:
            raise ValueError(f"unexpected {text[at]!r} at {at}")
    if len({len(record) for record in records}) != 1:
        raise ValueError("records of different lengths")
    return records
