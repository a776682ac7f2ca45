"""The vocabulary of the stops: every key of a condition that must be true there, with its meaning.

Nothing here is prose for the maker; the renderer holds one text for each.
"""

from __future__ import annotations

from hoopwright.source.record import record


@record(frozen=True, slots=True)
class ConditionKey:
    """One thing that must be true at a stop.

    ``part`` is what :attr:`Condition.part` holds. ``value`` says what the expected value is; it is empty
    when the maker looks and measures nothing.
    """

    key: str
    meaning: str
    part: str
    value: str = ""


_CONDITIONS = (
    ConditionKey("waist-closed", "the waistband closes, girth measured as closed", "waistband",
                 "the waist's girth with its ease"),
    ConditionKey("waist-tied", "girth of the waist as the tape or drawstring is tied round it", "waistband",
                 "the waist's girth with its ease"),
    ConditionKey("hem-height-front", "lower edge of the hem hoop above the floor at centre front", "hem hoop",
                 "hem off floor"),
    ConditionKey("hem-height-side", "the same at the left and at the right side", "hem hoop",
                 "hem off floor"),
    ConditionKey("hem-height-back", "the same at centre back", "hem hoop", "hem off floor"),
    ConditionKey("hoop-level", "height of a hoop's centre above the floor, measured at front, sides, back",
                 "one hoop", "the hoop's height"),
    ConditionKey("half-level", "height of a half hoop's centre line above the floor, at both ends and behind",
                 "one hoop", "the hoop's height"),
    ConditionKey("skirt-off-floor", "the skirt's hem above the floor all round", "skirt",
                 "skirt off floor"),
    ConditionKey("waistband-at-waist", "the waistband sits on the waistline, and does not ride or tip",
                 "waistband"),
    ConditionKey("no-contact", "no hoop rests on the body, standing and taking a long step", "the cage"),
    ConditionKey("hangs-upright", "the cage hangs upright and does not swing on to the legs", "the cage"),
    ConditionKey("oval-width", "width of a tied hoop, side to side", "one hoop", "the hoop's width"),
    ConditionKey("oval-depth", "depth of the same hoop, front to back", "one hoop", "the hoop's depth"),
    ConditionKey("chord-set", "straight distance between the ends of the lowest half hoop", "one hoop",
                 "the chord"),
    ConditionKey("stands-out", "from the chord to the middle of the lowest half hoop", "one hoop",
                 "the reach"),
    ConditionKey("sitting", "sits down, skirt on: the half hoops fold up and come back", "the cage"),
    ConditionKey("rim-front", "rim of the bare wheel above the floor at centre front", "rim", "the rim's"
                                                                                              " height"),
    ConditionKey("rim-sides", "the same at the left and at the right", "rim", "the rim's height"),
    ConditionKey("rim-back", "the same at centre back", "rim", "the rim's height"),
    ConditionKey("rim-front-again", "rim above the floor at centre front after door and stool", "rim",
                 "the rim's height"),
    ConditionKey("rim-back-again", "the same at centre back", "rim", "the rim's height"),
    ConditionKey("rim-loaded", "under the skirt's weight the rim goes down as the fitting sheet says", "rim"),
    ConditionKey("wheel-on-roll", "the wheel lies on the roll all round and does not turn about the"
                                  " waist", "roll"),
    ConditionKey("side-out", "from the hip to the outside of the lowest hoop", "one hoop",
                 "the reach as it hangs without the skirt"),
    ConditionKey("side-drop", "lowest hoop straight below the waistline", "one hoop",
                 "the hoop's drop as it hangs without the skirt"),
    ConditionKey("half-door", "from the body's middle to the outside: half of the doorway's clear width",
                 "one side",
                 "half the doorway"),
    ConditionKey("side-sits", "sits on a chair: the side hoop folds up or lies on the seat, and comes back",
                 "one side"),
    ConditionKey("pocket", "a hand passes the slit and comes out again", "one side"),
    ConditionKey("across-both", "across both side hoops without the skirt", "the cage", "the width over both as they"
                                                                                       " hang"),
    ConditionKey("across-worn", "the same with the skirt on", "the cage", "the width over both under their load"),
    ConditionKey("steps-in", "steps into the open hoops and hooks every strap alone", "the cage"),
    ConditionKey("clamps-hold", "no clip has slipped from its mark, no lap from its line", "the cage"),
    ConditionKey("edge-front", "the petticoat's edge above the floor at centre front", "hem", "hem off floor"),
    ConditionKey("edge-side", "the same at the left and at the right side", "hem", "hem off floor"),
    ConditionKey("edge-back", "the same at centre back", "hem", "hem off floor"),
    ConditionKey("edge-again", "the petticoat's edge above the floor after door and chair", "hem", "hem off floor"),
    ConditionKey("hem-across", "width across the hem as it stands out, skirt on, side to side and front to back", "hem",
                 "the hem's girth over pi"),
    ConditionKey("band-stands", "the corded band stands out round, and neither rolls over nor falls into folds",
                 "hem"),
    ConditionKey("line-even", "the skirt's line is smooth, no group of cords shows", "skirt"),
    ConditionKey("chair-corded", "sits down and rises; the band folds up and comes out again", "the petticoat"),
    ConditionKey("line-smooth", "the skirt's line is smooth, no hoop shows", "skirt"),
    ConditionKey("door", "walks through a doorway of this clear width without anything catching", "the cage",
                 "the doorway's clear width; no tolerance below it"),
    ConditionKey("round-again", "width of the hem hoop, side to side and front to back, after door and chair",
                 "hem hoop", "the hem hoop's width"),
    ConditionKey("width-again", "width of an oval hem hoop, side to side, after door and chair", "hem hoop",
                 "the hem hoop's width"),
    ConditionKey("depth-again", "depth of the same hoop, front to back", "hem hoop", "the hem hoop's depth"),
    ConditionKey("chord-again", "straight distance between the ends of the lowest half hoop after door and chair",
                 "hem hoop", "the chord"),
    ConditionKey("out-again", "from the chord to the middle of the same half hoop", "hem hoop", "the reach"),
    ConditionKey("hem-height-again", "lower edge of the hem hoop above the floor after door and chair",
                 "hem hoop", "hem off floor"),
    ConditionKey("chair", "sits down and rises unaided; hoops fold up and come back", "the cage"),
    ConditionKey("stool", "sits down on a stool and rises unaided; no spoke bends, no binding slips", "the cage"),
    ConditionKey("stairs", "goes up and down a step with the hem lifted by hand", "the cage"),
    ConditionKey("off-alone", "the wearer takes it off alone and quickly, by one pull, three times over",
                 "waistband"),
)

CONDITIONS: dict[str, ConditionKey] = {condition.key: condition for condition in _CONDITIONS}
"""Every condition key of a stop, by key."""
