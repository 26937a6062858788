"""What Alembic runs: the steps that are lacking, on the connection and in the transaction given."""

from alembic import context

context.configure(connection=context.config.attributes["connection"])
with context.begin_transaction():
    context.run_migrations()
