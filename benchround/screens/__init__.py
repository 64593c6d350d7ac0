"""The full-screen program, on Textual."""
