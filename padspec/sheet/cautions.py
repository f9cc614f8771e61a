"""What to mind at the cutter: the usual cautions for each kind of tool.

Common practice; guarding of hand cutters at the point of operation follows US OSHA letters of 1976 on
29 CFR 1910.212. Local rules and the tool's own manual come first.
"""

_LAST = "The tool's manual and local rules come first."
CAUTIONS: dict[str, str] = {
    "knife": f"Cutting: metal safety rule, fresh blade, several light passes, away from the hand. {_LAST}",
    "lever": f"Cutting: finger guard in place, blade latched down when idle, fingers behind the rail. {_LAST}",
    "guillotine": f"Cutting: clamp down, guard closed, both hands on the controls, nobody reaching in. {_LAST}",
}
