"""What happened, on disk: one SQLite file, believed value by value, merged, salvaged and never lost."""
