"""A child taken out of journals for good, and known again by a digest alone.

What is kept of a forgotten child's name is a salt and a digest (PBKDF2-HMAC-SHA256, RFC 8018), slow to try
names against, so that a merge can leave that child out and no file holds the name.
"""

import hashlib
import hmac
import json
import os
import sqlite3
from collections.abc import Collection, Iterable
from contextlib import closing, suppress
from pathlib import Path
from typing import Any

from warmup.journal import schema
from warmup.journal.schema import Damaged
from warmup.journal.store import JournalProblem, reason, refuse_newer
from warmup.text import clean

_ROUNDS = 100_000
_SALT = 16


class Unreadable(JournalProblem):
    """A journal is damaged, so that nobody can be taken out of it: a sentence that says so."""


def digest(name: str, salt: bytes | None = None) -> str:
    """A name made unreadable: the salt, drawn unless one is given, and the digest, both as hex."""
    salt = os.urandom(_SALT) if salt is None else salt
    made = hashlib.pbkdf2_hmac("sha256", name.encode("utf-8", "surrogatepass"), salt, _ROUNDS, _SALT)
    return f"{salt.hex()}-{made.hex()}"


def of_name(digests: Iterable[str], name: str) -> tuple[str, ...]:
    """Those of the digests that this name has."""
    found = []
    for each in digests:
        with suppress(ValueError):
            if hmac.compare_digest(digest(name, bytes.fromhex(each.partition("-")[0])), each.lower()):
                found.append(each)
    return tuple(found)


def forgotten_in(journal: sqlite3.Connection, digests: Collection[str], known: Collection[str]) -> set[str]:
    """The names in a journal that were forgotten, and that no ``known`` child has again."""
    if not digests:
        return set()
    return {name for name in names_in(journal) if name not in known and of_name(digests, name)}


def names_in(journal: sqlite3.Connection) -> set[str]:
    """Every child's name in a journal."""
    found: set[str] = set()
    for table in schema.tables_in(journal):
        found |= {
            str(name)
            for (name,) in journal.execute(f"SELECT DISTINCT child FROM {table}")
            if isinstance(name, str)
        }
    return found


def remove(journal: sqlite3.Connection, names: Collection[str]) -> int:
    """Take every row of these children out, in a transaction; gives how many that were.

    What other children's actions and notes say of them goes as well.
    """
    gone, tables = 0, schema.tables_in(journal)
    for name in names:
        for table in tables:
            question = f"DELETE FROM {table} WHERE child = ? OR child = CAST(? AS BLOB)"
            gone += journal.execute(question, (name, name)).rowcount
        if "actions" in tables:
            gone += _scrub(journal, name)
        if "notes" in tables:
            # In a note of another child the name gives way to a sign.
            said = "UPDATE notes SET text = replace(text, ?, '…') WHERE instr(text, ?)"
            gone += journal.execute(said, (name, name)).rowcount
    return gone


def _scrub(journal: sqlite3.Connection, name: str) -> int:
    """Take a name out of the JSON of the actions that are left."""
    changed = 0
    # As JSON may write it: as it is, or with every letter beyond ASCII as an escape.
    spelled = {json.dumps(name)[1:-1], json.dumps(name, ensure_ascii=False)[1:-1]}
    for key, before, after in journal.execute("SELECT id, before, after FROM actions").fetchall():
        texts = [text if isinstance(text, str) else "" for text in (before, after)]
        if any(each in text for each in spelled for text in texts):
            kept = [_without(text, name) for text in texts]
            if kept != texts:
                journal.execute("UPDATE actions SET before = ?, after = ? WHERE id = ?", (*kept, key))
                changed += 1
    return changed


def _without(text: str, name: str) -> str:
    try:
        data = json.loads(text)
    except (ValueError, RecursionError):
        # No JSON of ours, so nobody could take anything back by it.
        return "null"
    return json.dumps(_pruned(data, name), ensure_ascii=False, separators=(",", ":"))


def _pruned(data: Any, name: str) -> Any:
    """A JSON value without the lists that begin with the name, its keys, and the name itself."""
    match data:
        case dict():
            return {key: _pruned(value, name) for key, value in data.items() if key != name}
        case list():
            return [
                _pruned(each, name) for each in data if not (isinstance(each, list) and each[:1] == [name])
            ]
        case str() if data == name:
            return ""
    return data


def forget_in(path: Path, name: str) -> bool:
    """Take a child out of the journal at ``path`` and out of the file's free pages; whether it was in there.

    A file with nothing of the child is left as it is. Raises Unreadable for a damaged file, and
    JournalProblem where it can't be done for another reason.
    """
    try:
        refuse_newer(path)
        with closing(schema.connect(path, schema.WAIT)) as db:
            if wrong := schema.faults(db):
                raise Damaged(wrong[0])
            if not _holds(path, name) and name not in names_in(db):
                return False
            # What is deleted is written over, and nothing of it goes into a file beside this one.
            db.execute("PRAGMA secure_delete = ON")
            db.execute("PRAGMA temp_store = MEMORY")
            schema.transact(db, lambda inside: remove(inside, [name]))
            db.execute("VACUUM")
        # The end of the file is cut off after all is synced; it comes back with the name if the power goes.
        with path.open("rb+") as file:
            os.fsync(file.fileno())
    except (OSError, sqlite3.Error, Damaged) as error:
        kind = Unreadable if schema.is_damage(error) else JournalProblem
        place = clean(path.name)
        raise kind(f"{place}: the child could not be taken out ({reason(error)}).") from error
    return True


def _holds(path: Path, name: str) -> bool:
    return name.encode("utf-8", "surrogatepass") in path.read_bytes()
