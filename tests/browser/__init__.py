"""Checks in a real browser, apart from the suite: it is large, and few machines have it."""
