"""The steps. One that was ever released is never altered."""
