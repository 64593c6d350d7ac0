"""Pictures drawn as lines of text, for screens, shells, reports and screen readers.

Every picture is a pure function of its data, a width in terminal cells and a set of glyphs, and
has a twin that says the same in sentences. What a colour or shade tells, a word or letter tells
too; colours are given by whoever shows the lines, from the role of each span.
"""
