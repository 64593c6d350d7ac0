"""The crop library: TOML tables with a source for every figure."""

from benchround.crops.library import CropLibrary, CropNames, load_library

__all__ = ["CropLibrary", "CropNames", "load_library"]
