"""What is computed about a case and an archive: spine arcs, linings, hours, materials used."""
