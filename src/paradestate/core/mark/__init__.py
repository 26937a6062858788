"""Marks: how companies, platoons and stands are told apart."""
