"""One morning being worked through: what it needs, where it stands, what each key does to it.

Nothing here knows a screen.
"""
