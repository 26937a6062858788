"""The tables of a journal, as the latest migration leaves them. No table holds a time."""

from sqlalchemy import (
    BigInteger,
    CheckConstraint,
    Column,
    ForeignKey,
    MetaData,
    PrimaryKeyConstraint,
    String,
    Table,
    Text,
    UniqueConstraint,
)

# So that every constraint has a name by which a later migration can find it, in both databases.
METADATA = MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s_%(referred_table_name)s",
        "pk": "pk_%(table_name)s",
    }
)

# Ids are looked for by their beginning: compared byte by byte, whatever the language of the server.
ID = String(36).with_variant(String(36, collation="C"), "postgresql")
DIGEST = String(64)

COLLECTION = Table(
    "collection",
    METADATA,
    Column("name", Text, primary_key=True),
    Column("number", BigInteger, nullable=False),
    Column("digest", DIGEST, nullable=False),
)
"""Each journal, with the number of its lines and the digest of the last."""

ENTRY = Table(
    "entry",
    METADATA,
    Column("collection", ForeignKey(COLLECTION.c.name), nullable=False),
    Column("number", BigInteger, nullable=False),
    Column("id", ID, nullable=False),
    Column("text", Text, nullable=False),
    Column("digest", DIGEST, nullable=False),
    PrimaryKeyConstraint("collection", "number"),
    UniqueConstraint("collection", "id"),
    CheckConstraint("number > 0", name="number"),
    # lines lie on the disk in the order in which they are read
    sqlite_with_rowid=False,
)

CHECKPOINT = Table(
    "checkpoint",
    METADATA,
    Column("collection", ForeignKey(COLLECTION.c.name), primary_key=True),
    Column("number", BigInteger, nullable=False),
    Column("line_digest", DIGEST, nullable=False),
    Column("text", Text, nullable=False),
    Column("digest", DIGEST, nullable=False),
)
"""What the lines up to a number came to; one for each journal, and it can be made again."""
