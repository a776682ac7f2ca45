"""Cloth: strips, panels and gores on the usable width.

The only entries are `lay_out(parts, cloth, remnants) -> ClothPlan | ClothFailure` and
`choose_cloth(parts, cloths, remnants) -> tuple of both, cheapest first`, pure functions of their arguments.
"""
