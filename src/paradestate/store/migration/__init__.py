"""How tables of earlier versions become those of this one: forward only, run by Alembic."""
