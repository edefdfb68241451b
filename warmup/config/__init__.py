"""What people write: family.toml, own.toml, routines, calendars; read with care, checked by line, saved."""
