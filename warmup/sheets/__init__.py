"""Paper to cut and to lay on the table, true to size: a kind of sheet a file, one page of HTML for all.

Lengths are in millimeters. ``kinds`` holds the kinds, which are found by themselves; ``paper`` knows the
sheets of paper, ``lines`` what a page is drawn of, ``html`` writes it.
"""
