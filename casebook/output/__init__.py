"""What is published: contexts, pages, search index, site. Takes only what is redacted."""
