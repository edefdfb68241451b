"""The command line: one module a command, loaded when it is asked for. The clock is read here, once."""
