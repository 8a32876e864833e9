"""The words of the trade: loaded from the tables, mended where they are slips, found in a text."""
