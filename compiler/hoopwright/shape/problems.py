"""What can be impossible about a wished shape, as findings at the keys that say so."""

from __future__ import annotations

from hoopwright.source.diagnostic import Finding, Path, error, note, warning

HEM: Path = ("shape", "hem")
GROUND: Path = ("shape", "ground_plan")
HOOPS: Path = ("shape", "hoops")
ROWS: Path = ("shape", "line", "rows")


def band_missing() -> Finding:
    """Tapes that should end at a band's upper hoop, without a band."""
    return error(
        "band-missing",
        ("build", "tapes", "to"),
        "tapes end at the hem band, but there is no hem band",
        "add `build.hem_band`, or let the tapes run `to: hem`",
        related=((("build",), "no `hem_band` here"),),
    )


def top_below_hem(with_band: bool) -> Finding:
    """The top hoop at or below the lowest hoop, or the band's upper one."""
    lowest = "the hem band's upper hoop" if with_band else "the hem hoop"
    return error(
        "top-hoop-below-hem",
        ("shape", "top_hoop"),
        f"the top hoop is not above {lowest}",
        "raise the top hoop (`shape.top_hoop`), or lower the hem",
        related=((HEM, "the hem"),),
    )


def top_above_band() -> Finding:
    """The top hoop above the waistband's lower edge."""
    return error(
        "top-hoop-above-waistband",
        ("shape", "top_hoop"),
        "the top hoop is not below the waistband's lower edge",
        "lower the top hoop (`shape.top_hoop`)",
    )


def hem_not_wider() -> Finding:
    """The hem's girth not above the anchor's, on a line that must widen."""
    return error(
        "hem-not-wider",
        ("shape", "hem", "girth"),
        "the hem is not wider than the line's upper end, so the line cannot widen downward",
        "give a larger hem girth, or a `table` line with the girths you want",
    )


def hoops_do_not_fit(count: int, fit: int) -> Finding:
    """More hoops than there is room for: neighbours closer than a hoop is high."""
    return error(
        "hoops-do-not-fit",
        (*HOOPS, "count"),
        f"{count} hoops do not fit one above the other between the top hoop and the hem",
        f"take {fit} hoops or fewer, a narrower strip, or raise the top hoop",
    )


def out_of_order(index: int) -> Finding:
    """A listed place that is not below the one before it."""
    return error(
        "hoop-places-out-of-order",
        (*HOOPS, "at", index),
        "this hoop is not below the one listed before it",
        "list the hoops from the top down",
    )


def listed_count(listed: int, wanted: int) -> Finding:
    """The number of listed places does not agree with the count."""
    return error(
        "hoop-places-miscounted",
        (*HOOPS, "at"),
        f"{listed} hoop places are listed where the count leaves {wanted}",
        "the count includes the hem hoop, and the hem band's upper hoop, which are not listed",
    )


def down_tape_too_far(path: Path) -> Finding:
    """A distance down the tape that passes the lowest hoop."""
    return error(
        "down-tape-too-far",
        path,
        "this distance down the tape lies below the lowest hoop",
        "give a smaller distance, measured from the waistband's lower edge",
    )


def band_wants_two() -> Finding:
    """A hem band with a single hoop."""
    return error(
        "hoops-do-not-fit",
        (*HOOPS, "count"),
        "a hem band joins the two lowest hoops, but there is one",
        "take two or more hoops, or leave the band out",
        related=((("build", "hem_band"), "the hem band"),),
    )


def table_not_falling(index: int) -> Finding:
    """A table row that is not below the row before it."""
    return error(
        "table-not-falling",
        (*ROWS, index),
        "this row is not below the row before it",
        "list the rows from the top down, each height once",
    )


def table_row_unused(index: int) -> Finding:
    """A row above a top hoop of stated girth."""
    return warning("table-row-unused", (*ROWS, index),
                   "this row is not below the top hoop, whose girth is stated, so it plays no part",
                   "leave the row out, or leave the top hoop's girth to the line")


def table_hem_differs(index: int) -> Finding:
    """The rows reach the hem hoop with another girth than the hem's."""
    return error(
        "table-hem-differs",
        (*ROWS, index),
        "the line's rows give the hem hoop another girth than stated",
        "let the last row and `shape.hem.girth` agree",
        related=(((*HEM, "girth"), "the hem's girth"),),
    )


def table_narrows(index: int) -> Finding:
    """A row with a smaller girth than the row above it."""
    return warning(
        "table-narrows",
        (*ROWS, index),
        "the line grows narrower downward at this row",
        "check the girth; a hoop below a wider one hangs free of the skirt",
    )


def reach_too_far() -> Finding:
    """Reaches in front and behind that no hoop of the hem's girth has."""
    return error(
        "reach-too-far",
        (*GROUND, "reach"),
        "front and back reach together are half the hem's girth or more, so no oval has them",
        "give a smaller reach, or a larger hem girth",
        related=(((*HEM, "girth"), "the hem's girth"),),
    )


def reach_disagrees(oval: float) -> Finding:
    """A width over depth beside reaches that give another."""
    return error(
        "reach-disagrees",
        (*GROUND, "width_over_depth"),
        f"girth and reaches make the hem {oval:.2f} times as wide as deep",
        f"leave `width_over_depth` out, or write {oval:.2f} for the hem",
        related=(((*GROUND, "reach"), "the reaches"), ((*HEM, "girth"), "the hem's girth")),
    )


def ends_loose(hoops: tuple[str, ...]) -> Finding:
    """Ends of open hoops that stand out beyond their tapes."""
    return warning(
        "ends-loose",
        ("shape", "opening"),
        f"the ends of {', '.join(hoops)} stand out beyond their tapes",
        "let the first and the last tape start nearer to the opening, or leave `gap` out",
    )


def shelf(decided: Path, tapes: tuple[str, ...], lean: str, steeper: str) -> Finding:
    """Stretches of tape that lean more than 45 degrees; ``decided`` is the key that makes the worst, ``lean`` the
    greatest lean and where, ``steeper`` what mends that stretch."""
    return note(
        "shelf",
        decided,
        f"the tapes make a shelf: {', '.join(tapes)}, {lean}",
        f"period work has shelves; {steeper} makes that stretch steeper",
    )


def hem_wide() -> Finding:
    """A hem more than twice the stature round."""
    return note(
        "hem-wide",
        (*HEM, "girth"),
        "the hem is more than twice the stature round, wider than surviving cages are",
        "check doors, chairs and neighbours before you build it",
    )


def steps_past_waist(wanted: int, fit: int) -> Finding:
    """Hoops counted up from the hem pass the waistband."""
    return error(
        "hoops-do-not-fit", (*HOOPS, "count"),
        f"{wanted} hoops so far apart from the hem up do not stay below the waistband",
        f"at most {fit} fit; take fewer, or a smaller `every`",
    )
