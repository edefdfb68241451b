"""Reports to hand on: what was done, counted from the journal, as text, a page, a table or JSON; and letters.

``facts`` are counted first; ``summary``, ``letter`` and ``summer`` lay them out as a ``document``, which the
forms (text, HTML, CSV, JSON) write. What would give somebody away never gets into the facts: no path, no
other child, no reason for a day off, nothing a family wrote itself but the notes it ticked as shared.
"""
