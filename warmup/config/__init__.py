"""What people edit: family.toml, own.toml and routines/*.toml, read with care, checked by line, and saved."""
