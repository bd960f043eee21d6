"""Values that a record is written in: quantities, dates, colours, each kept as printed."""
