"""A message as the rules of attachment see it: its items in a row, their groups, what may claim a figure."""
