"""The built-in layouts, installed as padspec.layouts; read through padspec.resources."""
