"""What single families cannot be, as findings at the keys that say so."""

from __future__ import annotations

from hoopwright.source.diagnostic import Finding, Path, error
from hoopwright.source.quantity import Units, length_text

GROUND: Path = ("shape", "ground_plan")


def chord_too_long(chord: float, steel: float, units: Units, end: str = "", off_floor: float = 0.0) -> Finding:
    """A chord as long as the spring that should bow over it, both in m: at an ``end``, ``top`` or ``hem``, or
    between them at a height."""
    held, long = length_text(chord, units), length_text(steel, units)
    where = {"top": "at the top", "hem": "at the hem"}.get(end, f"{length_text(off_floor, units)} off the floor")
    larger = {"top": "a larger `girth` under `top_hoop`", "hem": "a larger `girth` under `hem`"}.get(
        end, "another `line`, in which the steels lengthen sooner")
    shorter = "`chord: {top: ..., hem: ...}` with less than " + f"{long} {f'at the {end}' if end else 'there'}"
    path: Path = (*GROUND, "chord", end) if end else (*GROUND, "chord")
    return error(
        "chord-too-long",
        path,
        f"{where} the chord is {held} and the steel {long}: the half hoop has no bow",
        f"write {shorter}, or {larger}",
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
