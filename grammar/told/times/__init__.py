"""Days of the year, times of the day, pauses, shares of an hour."""
