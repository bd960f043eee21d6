"""The schema of the record: what a case, a lab and a vocabulary can say, and who may see it."""
