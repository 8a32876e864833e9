"""How judgements are put into words that several topics share."""
