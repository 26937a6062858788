"""The checkpoint of each collection."""

import sqlalchemy
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    """Makes the table of checkpoints."""
    op.create_table(
        "checkpoint",
        sqlalchemy.Column("collection", sqlalchemy.Text, nullable=False),
        sqlalchemy.Column("number", sqlalchemy.BigInteger, nullable=False),
        sqlalchemy.Column("line_digest", sqlalchemy.String(64), nullable=False),
        sqlalchemy.Column("text", sqlalchemy.Text, nullable=False),
        sqlalchemy.Column("digest", sqlalchemy.String(64), nullable=False),
        sqlalchemy.PrimaryKeyConstraint("collection", name="pk_checkpoint"),
        sqlalchemy.ForeignKeyConstraint(
            ["collection"], ["collection.name"], name="fk_checkpoint_collection_collection"
        ),
    )
