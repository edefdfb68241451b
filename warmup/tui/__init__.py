"""The Textual app, the one table of actions, and its screens. Loaded only on the way to opening one."""
