"""Cautions, each printed with the steps it belongs to, with its source as text.

They repeat published advice; they are no engineering approval and no safety certificate.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from hoopwright.library.model import Caution

PRACTICE = "common practice, no source"

_CAUTIONS = (
    Caution("coil-lash", "A coil of spring strip lashes out when its ties are cut: wear goggles and gloves,"
                         " stand out of its line, hold both ends, cut with long shears, let it out turn by"
                         " turn.",
            "state safety bulletins on opening banded coils"),
    Caution("grinding", "Wear eye protection at the grinder or cut-off wheel; keep the rest within 1/8 in (3"
                        " mm) of the wheel; nobody stands in the line of the sparks, and no cloth lies"
                        " there.",
            "29 CFR 1910.133 (eye protection); 29 CFR 1910.215(a)(4) (work rest)"),
    Caution("flying-ends", "However thin the steel is, wear goggles whenever you cut, file or bend it: ends and"
                           " splinters fly. Under cutters or snips lay a cloth over the piece that comes off.",
            PRACTICE),
    Caution("cutting-hard-strip", "Hardened strip thicker than about 0.025 in (0.6 mm) ruins tin snips: use bolt"
                                  " cutters, a cut-off wheel, or score it and snap it in a vice.",
            PRACTICE),
    Caution("recoil", "What is bent round springs straight when an end slips: goggles on, keep hold of both ends,"
                      " let them back slowly, and lean no face over it.", PRACTICE),
    Caution("clamped-hoop", "A hoop held only by clamps, pins or sticky tape springs open when one of them slips:"
                            " wind sticky tape firmly round every lap beside its clamp, pad the clamps, turn every"
                            " point outward and put no pin where she sits. Whoever bends near wears goggles, and"
                            " somebody stays within call.", PRACTICE),
    Caution("cut-ends", "Tip or tape every cut end at once: a bare end cuts skin and works through"
                        " cloth.", PRACTICE),
    Caution("bending-strip", "Hardened strip breaks in too tight a bend, and the end flies: wear goggles, bend it"
                             " slowly round a rod of 3/8 in (1 cm) or more, and try an offcut first.", PRACTICE),
    Caution("flux-fume", "Rosin flux fume can cause asthma: open a window or draw the fume off, and keep your"
                         " head out of it (the limit at a place of work is 0.05 mg/m3).",
            "HSE leaflet INDG248, solder fume and you"),
    Caution("acid-flux", "Acid flux rusts steel and rots cotton: wash the join in water with washing soda,"
                         " rinse, dry and oil it before it goes near cloth.", PRACTICE),
    Caution("no-torch", "Solder spring steel with an iron, never with a torch: soft solder melts at 183-227"
                        " C, blue temper was drawn at about 330-430 C, and silver brazing needs over 600 C"
                        " and leaves the join soft.",
            "ASTM A684 data sheets; AWS A5.8 (quoted from memory)"),
    Caution("torch", "Torch: clear the bench of cloth and paper, work on brick, goggles on, water at hand,"
                     " and look again for smouldering half an hour later.", PRACTICE),
    Caution("zinc", "Never heat or grind zinc-coated (galvanised) steel without extraction: its fume causes"
                    " fever. Take bare steel, or join it cold.", "published guidance on metal fume fever"),
    Caution("hot-iron", "The iron and the join stay hot: put a heat shield of metal or wet felt between them"
                        " and any cloth, and let the join cool before the casing slides over it.", PRACTICE),
    Caution("pressing", "The flat iron is hot and goes on being hot: stand it on its heel, keep its flex out of the"
                        " way, and unplug it before you leave the room.", PRACTICE),
    Caution("hot-starch", "Boiling starch sticks to the skin and goes on scalding: stir it away from you, let it cool"
                          " until a hand bears it before the cloth goes in, and keep children out of the"
                          " kitchen.", PRACTICE),
    Caution("drilling", "Clamp the strip before drilling or punching; hardened strip grabs the bit and spins."
                        " Goggles on, gloves off at the drill.", PRACTICE),
    Caution("holes-weaken", "Holes weaken a strip: keep them at least three widths apart and one width from"
                            " the end.",
            PRACTICE),
    Caution("crimp", "A sleeve must fit the strip before it is crimped: pull on it by hand after each crimp.",
            PRACTICE),
    Caution("glue", "Read the glue's label for fumes and curing time; do not load the join before it is"
                    " hard.",
            PRACTICE),
    Caution("fire", "Keep the hem's radius and 3 ft (1 m) more away from candles, hearths and stoves: wide"
                    " skirts near open fire have killed - at least 630 women in 1863-64.",
            "F. Nightingale's count of deaths by burning, 1863-64"),
    Caution("flammability", "Ask the venue's fire officer before you buy cloth, and again before it goes on"
                            " stage. By the flammability rule 16 CFR 1610 (USA) smooth cloth of less than 2.6"
                            " oz/yd2 (88 g/m2) has to be tested, unless it is wholly of certain fibres: ask the"
                            " shop for the proof.",
            "16 CFR 1610 (quoted from memory)"),
    Caution("escape", "Practise taking it off alone, in the dark and in a hurry: one pull must free the"
                      " wearer.",
            PRACTICE),
    Caution("vehicles", "Escalators, car doors, wheels and crowds catch hoops: gather the skirt in, and"
                        " have a helper at hand.", PRACTICE),
    Caution("stairs", "On stairs lift the hem by hand: a usual riser is 7 1/2 in (19 cm) high.", PRACTICE),
    Caution("doors", "A public door gives 32 in (81 cm) clear in the USA, a dwelling's 750-800 mm in the UK:"
                     " measure the doors of the place itself.",
            "2010 ADA Standards 404.2.3; Approved Document M (England)"),
    Caution("no-approval", "This plan is no engineering approval. Local codes, the venue's fire officer and"
                           " licensed practice come first.", "our statement"),
)

CAUTIONS: Mapping[str, Caution] = MappingProxyType({caution.key: caution for caution in _CAUTIONS})
"""Every caution by key."""
