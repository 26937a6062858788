"""Collections and their entries."""

import sqlalchemy
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Makes the tables of the journal."""
    op.create_table(
        "collection",
        sqlalchemy.Column("name", sqlalchemy.Text, nullable=False),
        sqlalchemy.Column("number", sqlalchemy.BigInteger, nullable=False),
        sqlalchemy.Column("digest", sqlalchemy.String(64), nullable=False),
        sqlalchemy.PrimaryKeyConstraint("name", name="pk_collection"),
    )
    identity = sqlalchemy.String(36).with_variant(
        sqlalchemy.String(36, collation="C"), "postgresql"
    )
    op.create_table(
        "entry",
        sqlalchemy.Column("collection", sqlalchemy.Text, nullable=False),
        sqlalchemy.Column("number", sqlalchemy.BigInteger, nullable=False),
        sqlalchemy.Column("id", identity, nullable=False),
        sqlalchemy.Column("text", sqlalchemy.Text, nullable=False),
        sqlalchemy.Column("digest", sqlalchemy.String(64), nullable=False),
        sqlalchemy.PrimaryKeyConstraint("collection", "number", name="pk_entry"),
        sqlalchemy.ForeignKeyConstraint(
            ["collection"], ["collection.name"], name="fk_entry_collection_collection"
        ),
        sqlalchemy.UniqueConstraint("collection", "id", name="uq_entry_collection_id"),
        sqlalchemy.CheckConstraint("number > 0", name="ck_entry_number"),
        sqlite_with_rowid=False,
    )
