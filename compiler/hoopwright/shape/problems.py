"""What can be impossible about a wished shape, as findings at the keys that say so."""

from __future__ import annotations

from collections.abc import Sequence

from hoopwright.source.diagnostic import Finding, Path, error, note, warning
from hoopwright.source.quantity import Units, length_text
from hoopwright.spec.nearest import listed

HEM: Path = ("shape", "hem")
GROUND: Path = ("shape", "ground_plan")
HOOPS: Path = ("shape", "hoops")
TIES: Path = ("build", "ties", "lengths")
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


def tie_too_long(hoop: str, free: float, own: Sequence[float], units: Units) -> Finding:
    """A stated tie no shorter than its hoop is wide when nothing ties it."""
    across = length_text(free, units)
    mend = f"write {_lengths(own, units)} for this oval" if own else "make it shorter"
    return error(
        "tie-too-long",
        (*TIES, hoop),
        f"`{hoop}` is {across} across when nothing ties it, so a tie as long as that draws nothing in",
        f"{mend}, or leave it out: the plan gives the length of every tie",
    )


def tie_disagrees(hoop: str, own: Sequence[float], units: Units) -> Finding:
    """A stated tie of another length than the oval asks for."""
    return error(
        "tie-disagrees",
        (*TIES, hoop),
        f"the oval of `{hoop}` asks for a tie of {_lengths(own, units)}",
        "write that, leave it out, or change `width_over_depth` until they agree",
        related=((GROUND, "the oval"),),
    )


def tie_unwanted(hoop: str) -> Finding:
    """A tie is stated for a hoop that needs none."""
    return error(
        "tie-disagrees",
        (*TIES, hoop),
        f"`{hoop}` is round and takes no tie",
        "leave it out; a tied hoop wants a `ground_plan` of `kind: oval` or `thrown back`",
    )


def tie_of_no_hoop(hoop: str, known: Sequence[str]) -> Finding:
    """A tie is stated for a hoop that is not there."""
    return error(
        "tie-disagrees", (*TIES, hoop), f"no hoop is called `{hoop[:60]}`", f"there are {listed(known, 'and')}",
        at_key=True,
    )


def _lengths(own: Sequence[float], units: Units) -> str:
    return " or ".join(f"`{length_text(length, units)}`" for length in own)


def chord_too_long() -> Finding:
    """A chord as long as the spring that should bow over it."""
    return error(
        "chord-too-long",
        (*GROUND, "chord"),
        "the chord is as long as the steel or longer, so the half hoop has no bow",
        "give a shorter chord, or a longer steel",
    )


def half_without_reach() -> Finding:
    """A half hoop that stands off its chord by nothing, or has none."""
    return error(
        "chord-too-long",
        (*GROUND, "chord"),
        "a half hoop wants a chord and a reach above nothing",
        "give each a length above 0 at the top and at the hem",
    )


def gap_too_wide(gap: float, girth: float, units: Units) -> Finding:
    """An opening as wide as half its hoop or wider."""
    return error(
        "opening-too-wide",
        ("shape", "opening", "gap"),
        f"an opening of {length_text(gap, units)} leaves less than half of a hoop that is"
        f" {length_text(girth, units)} round",
        f"write at most {length_text(girth * 0.45, units)}, or leave `gap` out: the hoops then end at the first and"
        " the last tape",
    )


def ends_loose(hoops: tuple[str, ...]) -> Finding:
    """Ends of open hoops that stand out beyond their tapes."""
    return warning(
        "ends-loose",
        ("shape", "opening"),
        f"the ends of {', '.join(hoops)} stand out beyond their tapes",
        "let the first and the last tape start nearer to the opening, or leave `gap` out",
    )


def shelf(tapes: tuple[str, ...], lean: str) -> Finding:
    """Stretches of tape that lean more than 45 degrees; ``lean`` is the greatest."""
    return note(
        "shelf",
        ("shape", "top_hoop"),
        f"the tapes make a shelf: {', '.join(tapes)}, up to {lean} degrees from the vertical",
        "period work has shelves; a lower top hoop or a smaller one makes the tape steeper",
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


def flounces_too_long(slant: float, units: Units) -> Finding:
    """Flounces that reach above the waistband."""
    return error(
        "flounce-too-long", ("build", "flounce"),
        "the flounces are longer than the petticoat they are sewn to",
        f"down its side the petticoat measures {length_text(slant, units)}: take a smaller `depth`, or fewer rows",
    )


def casing_narrow(width: str, channel: str) -> Finding:
    """A tape that is too narrow to be a hoop's channel."""
    return error(
        "casing-too-narrow", ("build", "channels", "material"),
        "this tape is too narrow to be sewn on as a channel for these hoops",
        f"the channel must be {channel} wide, and the tape is {width}: take a wider tape, or cloth",
    )


def rim_below_hem() -> Finding:
    """A wheel so steep that its rim lies at or below the skirt's hem."""
    return error(
        "rim-below-hem",
        ("build", "wheel", "tilt"),
        "the tilt brings the rim down to the hem of the skirt",
        "tilt the wheel less, or make it narrower; 5 to 15 degrees are usual",
        related=((("build", "wheel"), "the wheel"),),
    )


def wheel_off_body() -> Finding:
    """A wheel set back so far that the waist does not lie inside its rim."""
    return error(
        "wheel-off-body",
        ("build", "wheel", "set_back"),
        "set back so far, the rim meets the waist in front",
        "set the wheel back less, or make it wider",
    )


def slit_too_long() -> Finding:
    """A slit that cuts the rim."""
    return error("slit-too-long", ("build", "wheel", "cover", "slit"), "the slit reaches the rim in front",
                 "make it shorter than the wheel's reach in front")


def no_way_in() -> Finding:
    """A wheel without a way in: no ring inside the rim passes over the hips."""
    return error("wheel-without-way-in", ("build", "wheel"),
                 "no slit that stops at a ring short of the rim lets the hips through",
                 "make the wheel wider, take more rings, or state the cover's slit")


def pocket_too_long(room: str) -> Finding:
    """A pocket slit that would cut through a channel."""
    return error("pocket-too-long", ("build", "side_hoops", "pocket_slit"),
                 "the pocket slit runs into the first channel and would cut its steel's way",
                 f"there is room for {room} above that channel; or set the first hoop lower")


def breadths_too_few(count: int, wide: str, cloth: str, room: str, enough: int, stated: bool) -> Finding:
    """Breadths wider than the cloth they are cut from."""
    path: Path = ("build", "panels", "breadths") if stated else ("shape", "hem", "girth")
    mend = f"take at least {enough} breadths" if enough else "take a wider cloth"
    return error(
        "breadths-too-few",
        path,
        f"{count} breadth{'' if count == 1 else 's'} must be cut {wide} wide, and `{cloth}` is {room} wide when washed",
        f"{mend}, or a wider cloth, or a narrower hem" if enough else f"{mend}, or narrower seams",
        related=((("materials", cloth, "width"), "the cloth"),),
    )


def cords_too_high(group: int, fit: int, below: int, count: int, length: str) -> Finding:
    """Rows of cord that reach the waist: so many of the group still fit, ``below`` of all."""
    whole = f"only {below} of {count} cords fit on it"
    mend = f"take at most {fit} cords in this group" if fit else "leave this group out"
    return error(
        "cords-too-high",
        ("build", "cords", "groups", group - 1),
        f"the rows of cord are higher than the petticoat, which is {length} long below its waistband: {whole}",
        f"{mend}, or narrow `spacing` and `gap`",
        related=((("shape",), "its length"),),
    )
