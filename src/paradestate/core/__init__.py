"""What things are, and the sums that need no library.

Everything here is a frozen value or a pure function over such values: whole numbers and
fractions only, standard library only, no files, no clock, no chance.
"""
