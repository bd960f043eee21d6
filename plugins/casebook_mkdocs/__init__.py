"""The site builder: a MkDocs plugin that puts our pages into a site, and what calls MkDocs."""
