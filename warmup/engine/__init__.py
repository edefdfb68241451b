"""Chooses a morning: what a child knows, what may be asked, what is picked and why.

Pure: no disk, no clock, no screen.
"""
