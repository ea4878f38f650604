"""How far clocks may go, so that there is always room after what came from elsewhere."""

EXACT = 9007199254740991  # the greatest whole number that the phone holds exactly
LAST_WALL = 253402300799999  # the last millisecond of the year 9999
LAST_COUNT = 2147483647
