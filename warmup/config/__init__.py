"""config."""
