"""The JSON Schemas, installed as padspec.schemas; read through padspec.resources."""
