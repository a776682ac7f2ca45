"""The vocabulary of the work: every task's action, with its meaning.

A task names its action; the renderer holds one instruction text for each. ``parts`` says what stands in
:attr:`Task.parts`, ``measures`` which values of the plan the instruction has to print. Nothing here is
prose for the maker.
"""

from __future__ import annotations

from hoopwright.source.record import record
from hoopwright.work.model import TaskKind


@record(frozen=True, slots=True)
class Action:
    """One kind of task.

    ``setup`` is the place and set of tools it wants: ``water``, ``table`` (marking and shears), ``metal``
    (cutting bench), ``joining``, ``machine``, ``hand`` (hand sewing), ``body`` (fitting). ``parts`` is what
    a task of this action lists; ``measures`` are dotted places in the plan, ``hoop``, ``tape`` or ``band``
    standing for the part.
    """

    key: str
    kind: TaskKind
    setup: str
    meaning: str
    parts: str
    measures: tuple[str, ...] = ()


_ACTIONS = (
    Action("wash", "sew", "water",
           "wash tape, braid and cloth as the cage will be washed, and let them dry, so that nothing shrinks "
           "after marking", "the goods: tapes, waistband, casings, band"),
    Action("press", "sew", "table", "press what was washed, flat and without pulling it",
           "the goods: tapes, waistband, casings, band"),
    Action("cut-tapes", "cut", "table",
           "cut each tape roughly at its length over all, hem wrap and reserve in it, write its name on it",
           "every tape", ("tape.cut", "allowances.tape_hem", "allowances.tape_reserve")),
    Action("mark-tapes", "cut", "table",
           "hang 1 kg from each tape, set zero one top turning from its end, mark it at every hoop; what is over"
           " is trimmed when the hem is level", "every tape",
           ("tape.marks.at", "allowances.tape_top", "allowances.tape_tolerance")),
    Action("cut-ties", "cut", "table",
           "cut each tie at its length over all, write its name on it, mark its length under a 1 kg pull",
           "every tie", ("tie.length", "tie.cut")),
    Action("pin-ties", "fit", "table",
           "pin each tie of one hoop at its marks, so that the hoop is drawn into its shape", "one hoop",
           ("tie.at", "tie.to", "tie.length")),
    Action("sew-ties", "sew", "hand", "wrap the ends of the ties round the hoop and sew them", "one hoop",
           ("tie.at", "tie.to", "tie.length")),
    Action("cut-panels", "cut", "table", "cut the panels of the lacing, a mirrored pair", "lacing panel",
           ("panel.outline", "panel.grain")),
    Action("sew-panels", "sew", "machine",
           "turn in the inner edge over the eyelets, hem the upper and lower edge", "lacing panel",
           ("panel.seams", "panel.rules")),
    Action("lace-for-now", "fit", "table",
           "pin the panels to the ends of the half hoops and lace them through the folded edge with a"
           " bodkin, "
           "no eyelets yet", "lacing panel, half hoops", ("build.lacing.gap",)),
    Action("sew-panels-on", "sew", "hand", "sew the panels' outer edges to the ends of the half hoops",
           "lacing panel", ("panel.rules",)),
    Action("set-eyelets", "sew", "hand", "set the eyelets at the spacing and lace the panels to the gap"
                                         " found "
           "at the stop", "lacing panel", ("build.lacing.spacing", "build.lacing.gap")),
    Action("cut-casings", "cut", "table",
           "cut one casing for each cased hoop, tape its ends against fraying, label it", "every cased hoop",
           ("hoop.casing",)),
    Action("sew-casings", "sew", "machine",
           "fold each casing lengthwise round the stock's size and sew it into a tube (casings that are not "
           "woven as a tube)", "every cased hoop", ("hoop.casing", "build.hoops.material.section")),
    Action("open-coil", "cut", "metal",
           "open the coil safely: tied in three places, clamped down, ties cut one at a time, let out "
           "little by little", "the hoops cut from it"),
    Action("test-stock", "cut", "metal",
           "measure the section and do the droop and the wrap test (of cane a bend) on the free end before anything"
           " is cut; compare with the spec", "the stock", ("stock.section", "stock.bench")),
    Action("cut-hoop", "cut", "metal",
           "measure twice, cut one hoop, write its name on it, dress, round and tip both ends at once, draw "
           "the lap line on each end", "one hoop",
           ("hoop.cut", "build.hoops.lap", "allowances.hoop_tolerance")),
    Action("prove-join", "join", "joining",
           "join two offcuts as the hoops will be joined and hang 2 kg from them over night",
           "the stock", ("build.hoops.join", "build.hoops.lap")),
    Action("splice-hoop", "join", "joining",
           "join the lengths of one hoop end to end, each splice made and checked like the join of a"
           " hoop, and "
           "measure that the whole has the hoop's length to cut", "one hoop",
           ("hoop.cut", "build.hoops.join", "build.hoops.lap")),
    Action("case-hoop", "sew", "table",
           "thread the casing on the open hoop, push it back from both ends and clip it",
           "one hoop", ("hoop.casing", "allowances.casing_end")),
    Action("mark-hoop", "cut", "table",
           "mark on the casing (or channel) where each tape meets the hoop, by folding or by measure from "
           "the place of the join, front and left named", "one hoop",
           ("hoop.girth", "hoop.fixings.fraction")),
    Action("cut-waistband", "cut", "table", "cut the waistband", "waistband",
           ("waistband.cut", "allowances.waistband_turning")),
    Action("make-waistband", "sew", "machine",
           "turn and sew the ends of the waistband, mark centre front, centre back, the overlap and every "
           "tape's place on its lower edge", "waistband",
           ("waistband.girth", "waistband.overlap", "tape.waist_fraction")),
    Action("sew-fastening", "sew", "hand",
           "sew the fastening on so that the band closes at the waist's girth and opens with one hand",
           "waistband", ("waistband.girth", "waistband.overlap")),
    Action("sew-tapes", "sew", "machine",
           "turn in the top of each tape and sew it to the waistband at its mark, zero on the band's lower "
           "edge", "every tape, waistband", ("tape.waist_fraction", "allowances.tape_top")),
    Action("cut-band", "cut", "table", "cut the strips of the hem band from the cloth as laid out", "band",
           ("band.height", "band.length", "layout")),
    Action("join-band", "sew", "hand",
           "join the strips end to end: selvage to selvage with a flat whip stitch, or in a seam where there "
           "is no selvage; leave the last join open", "band", ("band.length", "layout.joins")),
    Action("sew-channels", "sew", "machine",
           "fold the band double, sew its long seam, stitch a channel along each edge, ends open", "band",
           ("band.height", "band.depth", "band.seam", "band.channel")),
    Action("thread-channel", "sew", "table",
           "push the open hoop through its channel of the band, ends coming out at the open join",
           "one hoop, band", ("hoop.girth",)),
    Action("cut-cloth", "cut", "table",
           "cut the gores or breadths of a petticoat as laid out, head to tail where the cloth allows",
           "the panel", ("panel.outline", "layout")),
    Action("mark-cloth", "cut", "table",
           "round off the lower edge, mark every channel's line on each panel, measured up from the hem",
           "the panel", ("panel.rules", "petticoat.round_off")),
    Action("sew-cloth", "sew", "machine",
           "sew all seams but the last, lines meeting; turn the hem up", "the panel", ("allowances.seam",)),
    Action("sew-tucks", "sew", "machine",
           "fold each tuck on its line and stitch it as wide as its channel; ends stay open at the last seam",
           "every hoop", ("petticoat.channels.width", "petticoat.takes")),
    Action("cut-strips", "cut", "table", "cut the strip of each applied casing, label it", "every hoop",
           ("petticoat.channels.strip", "petticoat.channels.height")),
    Action("apply-casings", "sew", "machine",
           "turn in the edges of each strip, lay its middle on the line, stitch both edges; ends stay"
           " open at "
           "the last seam", "every hoop", ("petticoat.channels.width",)),
    Action("thread-hoop", "sew", "table",
           "push the open hoop through its channel of the petticoat, clamp its ends at the lap line",
           "one hoop", ("hoop.girth", "build.hoops.lap")),
    Action("pin-waist", "fit", "table",
           "pin the last seam, gather the upper edge on to a tape of the waist's girth",
           "waistband or drawstring", ("waistband.girth", "petticoat.head")),
    Action("close-seam", "sew", "machine",
           "sew the last seam below the placket, finish the placket, leave each channel's feeding gap inside",
           "the panel", ("petticoat.placket", "petticoat.feed_gap")),
    Action("set-waistband", "sew", "machine",
           "sew the upper edge into the waistband on the line found at the stop", "waistband",
           ("waistband.girth",)),
    Action("set-drawstring", "sew", "machine",
           "turn the upper edge down on the line found at the stop, stitch it, draw the string in",
           "drawstring", ("petticoat.drawstring",)),
    Action("cut-flounces", "cut", "machine",
           "cut the strips of the flounces across the cloth and seam them to rings", "every flounce",
           ("petticoat.flounces.length", "petticoat.flounces.height")),
    Action("sew-flounces", "sew", "machine",
           "hem each ring, gather it to the petticoat's girth, sew it on", "every flounce",
           ("petticoat.flounces.up", "petticoat.flounces.girth")),
    Action("cut-spokes", "cut", "metal", "cut the spokes of a wheel, tip both ends, mark where the rings"
                                         " cross",
           "every spoke", ("wheel.spokes.cut", "wheel.spokes.marks")),
    Action("mark-rings", "cut", "table", "mark on every ring where each spoke crosses it", "every ring",
           ("hoop.girth", "hoop.fixings.fraction")),
    Action("cut-roll", "cut", "table", "cut the cloth of the roll under a wheel", "roll",
           ("wheel.roll_cut",)),
    Action("stuff-roll", "sew", "machine", "sew the roll to a tube, stuff it firmly, sew it to the waistband",
           "roll", ("wheel.roll", "wheel.roll_length", "wheel.stuffing")),
    Action("bind-wheel", "sew", "hand", "bind every spoke to every ring at the marks, ends turned over",
           "the wheel",
           ("wheel.spokes.marks",)),
    Action("set-wheel", "sew", "hand", "sew the ring round the hole to the waistband", "the wheel, waistband",
           ("wheel.slit",)),
    Action("cut-cover", "cut", "table", "cut the cover of a wheel with its hole and slit", "cover",
           ("wheel.cover", "wheel.slit", "wheel.hem")),
    Action("sew-cover", "sew", "hand", "lay the cover on, turn its edge round the rim and sew it, hole"
                                       " and slit "
           "turned in", "cover", ("wheel.hem",)),
    Action("cut-sides", "cut", "table", "cut outer and inner panels of both side hoops, mark channels and"
                                        " slit",
           "outer panel, inner panel", ("panel.outline", "panel.rules")),
    Action("tie-side", "sew", "hand", "tack a tie to each line of an inner panel, its ends where the seams catch them",
           "hoops of one side", ("tie.length", "tie.cut")),
    Action("sew-side", "sew", "machine", "sew the channels and the pocket slit of one side, join outer"
                                         " and inner "
           "panel, the ties' ends between them, channels open at one end", "one side",
           ("sides.channels.width", "sides.ease", "sides.gathers", "sides.pocket")),
    Action("thread-side", "sew", "table", "push the steels of one side into their channels, close the ends",
           "hoops of one side", ("sides.channels.steel",)),
    Action("pin-side", "fit", "table", "gather the upper edge of one side and pin it to its place on the"
                                       " waistband",
           "one side, waistband", ("sides.on_band", "sides.at")),
    Action("set-sides", "sew", "machine", "sew the upper edges of both sides to the waistband", "waistband",
           ("sides.on_band", "sides.at")),
    Action("clip-hoop", "fit", "table",
           "clip the hoop to every tape at its mark and clamp its ends at the lap line; nothing is joined "
           "yet", "one hoop", ("tape.marks.at", "build.hoops.lap")),
    Action("clamp-ends", "fit", "table",
           "clamp the ends of a hoop that hangs in the band's channel, no tape reaching it, at the lap line",
           "one hoop, band", ("build.hoops.lap",)),
    Action("try-on-body-alone", "fit", "body",
           "STOP on the body alone, skirt on: plumb line, a stick in the door frame at hem height, a picture "
           "taken from a chair", "the cage", ("conditions",)),
    Action("try-on-body-helped", "fit", "body",
           "STOP on the body with a helper, skirt on: a rule on the floor", "the cage", ("conditions",)),
    Action("join-hoop", "join", "joining",
           "push casing or channel back, join the hoop at its lap line beside a tape, wash off flux at once",
           "one hoop", ("hoop.girth", "build.hoops.lap", "build.hoops.join")),
    Action("join-hoop-shielded", "join", "joining",
           "the same with heat: cloth pushed back and wetted, a heat shield between join and cloth",
           "one hoop", ("hoop.girth", "build.hoops.lap", "build.hoops.join")),
    Action("wash-joins", "join", "water",
           "wash every soldered join with soda and water, dry it, pull it by hand, feel for burrs, cover "
           "it with a turn of tape", "every hoop"),
    Action("check-joins", "join", "joining",
           "pull every join by hand, feel for burrs, cover it with a turn of tape", "every hoop"),
    Action("sew-sample", "sew", "machine", "cord a sample of the same cloth, cord and stitching as the petticoat",
           "sample", ("build.cords.sample.cords", "build.cords.sample.length")),
    Action("starch-sample", "sew", "water", "wash the sample, starch it as stiffly as the petticoat, dry it flat",
           "sample"),
    Action("wash-sample", "sew", "water", "wash the sample and dry it flat", "sample"),
    Action("test-sample", "fit", "table", "measure what the sample has taken up and shrunk, and how it droops; write it"
           " into the spec and build the plan again", "sample",
           ("build.cords.sample.cords", "build.cords.sample.length")),
    Action("cut-breadths", "cut", "table", "cut the breadths, and those of the inner layer", "breadths",
           ("corded.wide", "corded.high", "corded.facing_high")),
    Action("cut-cords", "cut", "table", "cut a length of cord for every row", "every row", ("corded.rows.cut",)),
    Action("mark-rows", "cut", "table", "rule the lowest and the highest row of every group, up from the cut edge",
           "breadths", ("corded.rows.flat",)),
    Action("sew-breadths", "sew", "machine", "sew the breadths together but for the last seam, lay the inner layer in",
           "breadths", ("corded.count", "allowances.seam")),
    Action("sew-cords", "sew", "machine", "lay each cord in and stitch close along it, from the hem up, the cloth flat",
           "the rows of one group", ("corded.rows.up",)),
    Action("close-round", "sew", "machine", "sew the last seam and the placket, cord ends butted in it", "breadths",
           ("corded.placket",)),
    Action("pin-gathers", "fit", "table", "pin the upper edge, gathered, under a tape as long as the waist",
           "waistband or drawstring", ("corded.head",)),
    Action("starch", "sew", "water", "wash and starch the petticoat, dry it standing, iron it while damp",
           "the petticoat"),
    Action("sew-hem", "sew", "machine", "turn in the lower edges and stitch them", "breadths", ("corded.hem",)),
    Action("close-band", "sew", "hand",
           "draw the band over both joins and close its last join", "band", ("band.length",)),
    Action("sew-hoop", "sew", "hand",
           "close the casing over the join, then sew the hoop to each tape at its mark", "one hoop",
           ("tape.marks.at", "hoop.fixings.tape", "allowances.tape_tolerance")),
    Action("try-on-hem-alone", "fit", "body",
           "STOP alone, petticoats, skirt and show shoes on: the hem is levelled now, as the last thing",
           "the cage", ("conditions",)),
    Action("try-on-hem-helped", "fit", "body",
           "STOP with a helper, petticoats, skirt and show shoes on: the hem is levelled now",
           "the cage", ("conditions",)),
    Action("trim-tapes", "sew", "hand",
           "wrap each tape's end round its last hoop, cut off the reserve, sew the end down", "every tape",
           ("allowances.tape_hem",)),
    Action("try-on-use-alone", "fit", "body",
           "STOP alone: through the door, on the chair, on the stairs, off alone and quickly", "the cage",
           ("conditions",)),
    Action("try-on-use-helped", "fit", "body",
           "STOP with a helper at hand: door, chair, stairs, off alone and quickly", "the cage",
           ("conditions",)),
    Action("sew-label", "sew", "hand", "sew the label inside the waistband: wearer, waist range, date, spec",
           "waistband"),
    Action("hang-up", "fit", "table", "hang the cage by its waistband from two hooks, cover it, keep it dry",
           "the cage"),
)

ACTIONS: dict[str, Action] = {action.key: action for action in _ACTIONS}
"""Every action, by key."""
