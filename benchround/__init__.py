"""The morning round for plants raised from seed on a bench and in cold frames."""

__version__ = "0.1.0"
