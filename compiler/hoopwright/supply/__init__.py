"""Supply stage: a Shape in, cut lists, cloth layouts, shopping list and cost out. Stock and money only."""
