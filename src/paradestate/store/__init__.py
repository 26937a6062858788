"""The journal, kept in SQLite or PostgreSQL. Knows numbers, ids, texts and digests, no meaning.

May import core and the database library. `error` and `address` import nothing heavy.
"""
