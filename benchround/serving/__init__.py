"""The screens in a browser, served by this computer."""
