"""Plans for the tests of the command: one with nothing to mend, one with an error, one that does not read."""

SOUND = """\
plan "Block" in millimetres
stock board: actual 45 x 95 pine
part block: board, across, flat, 300 long, left at 0, front at 0, on floor
"""
FLAWED = SOUND + "part other: board, across, flat, 300 long, left at 0, front at 50, on floor\n"
UNREADABLE = SOUND + "prat other: board\n"
