"""Seed: when it comes up, when it is late, how it germinated, how many to sow, how old it is."""
