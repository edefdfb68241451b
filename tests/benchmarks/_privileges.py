"""Root without its way past the permissions of files, so that a file can be closed to a campaign too."""

import ctypes
import os
import sys

_VERSION = 0x20080522
"""The third form of the two calls (``man capget``): two words of 32 bits a set."""
_PAST_PERMISSIONS = 1 << 1 | 1 << 2
"""CAP_DAC_OVERRIDE and CAP_DAC_READ_SEARCH."""


def obey_permissions() -> None:
    """Let no file be opened whose permissions say no; nothing happens for any other account than root."""
    if sys.platform != "linux" or os.geteuid() != 0:
        return
    libc = ctypes.CDLL(None, use_errno=True)
    head, sets = (ctypes.c_uint32 * 2)(_VERSION, 0), (ctypes.c_uint32 * 6)()
    if libc.capget(head, sets) == 0:
        sets[0] &= ~_PAST_PERMISSIONS
        sets[1] &= ~_PAST_PERMISSIONS
        if libc.capset(head, sets) == 0:
            return
    raise OSError(ctypes.get_errno(), "root goes past permissions still")
