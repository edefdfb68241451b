"""The screens: one a file, its style sheet beside it."""
