"""The crop library: TOML tables with a source for every figure."""
