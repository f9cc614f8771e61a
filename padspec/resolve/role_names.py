"""The names of the palette that have a fitting colour even where nobody sets one."""

ROLE_NAMES = ("paper", "ground", "pattern", "rule", "lettering")
#: Names that follow from the roles: what stands on the ground itself, without a panel, and must show there.
ON_GROUND_NAMES = ("rule-on-ground", "lettering-on-ground")
