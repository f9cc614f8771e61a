"""Face and Sheet in; SVG, PDF and PNG out. It walks and writes; it decides nothing."""
