"""Whether the join of a hoop is as good as the hoop: its heat, its stiff length, what it carries.

In a lap of length l the two ends share the hoop's moment M.

- A bonded lap bends as one bar twice as thick. Half of M's axial force, 3M/(4t), passes through half of the
  lap's face from either end, F = 3M/4t over b l/2. Under a lasting moment solder creeps; the two ends then
  bend side by side, each with its own share.
- Either way M is handed from one end to the other by a pull across the lap: over the smooth change
  M(1 - 3x^2 + 2x^3), x = s/l, half of the lap is pulled apart with 1.5 M/l and half pressed together.
- Besides, somebody treads on the hem: a pull along the hoop.

The formulas are derived; what joins bear is conservative and our judgement, from quick tests remembered.
"""

from __future__ import annotations

from hoopwright.library.model import Join, JoinStrength, Stock
from hoopwright.shape.judge import judged
from hoopwright.spec.check import Check
from hoopwright.strength.forms.section import properties
from hoopwright.strength.handling import handlings, radius_of
from hoopwright.strength.material import modulus
from hoopwright.strength.method import Problem

TREAD = 100.0
"""Pull along a hoop when somebody treads on the hem, N: our judgement."""
_BEARS = "what the join bears is conservative and our judgement"


def join_checks(problem: Problem) -> tuple[Check, ...]:
    """The checks of the join; none for a cage whose hoops are all open."""
    closed = [hoop for hoop in problem.shape.hoops if hoop.closed]
    if not closed:
        return ()
    least = min(closed, key=radius_of)
    return (*_heat(problem), _stiff(problem, least.id, radius_of(least)), *_carries(problem, least.id))


def _heat(problem: Problem) -> tuple[Check, ...]:
    """Heat of the join against the heat at which the grade was tempered; both known, else nothing to say."""
    join, grade = problem.spec.build.hoops.join, problem.stock.grade
    if not join.temperature or grade.temper is None:
        return ()
    return (judged(
        "join-heat", "", join.temperature, grade.temper, "temperature", "at most",
        says="making the join leaves the temper in the stock",
        source="soft solder melts at 183-227 C, silver brazing needs over 600 C (AWS A5.8, from memory);"
               " blue-tempered strip was drawn at about 330-430 C (ASTM A684 data sheet)",
        remedy=f"take a lap soldered with an iron (227 C against {grade.temper:.0f} C) or a bound one: a"
               " torch leaves a soft place that kinks"),)


def stiff_length(join: Join, lap: float) -> tuple[float, float]:
    """(length that hardly bends, how many times stiffer it is than the hoop) of a join."""
    if join.sleeve:
        return join.sleeve, 100.0
    return lap, 8.0 if join.strength is not None and join.strength.bonded else 2.0


def _stiff(problem: Problem, part: str, radius: float) -> Check:
    """How flat the join makes its place: (l^2/8R)(1 - 1/k) over the diameter, k times as stiff."""
    hoops = problem.spec.build.hoops
    length, times = stiff_length(hoops.join, hoops.lap)
    flat = length**2 / (8 * radius) * (1 - 1 / times) / (2 * radius)
    return judged(
        "join-stiff", part, flat, problem.spec.limits.out_of_round, "share", "at most",
        says="the stiff length of the join does not flatten the hoop",
        source="rise of an arc as long as the lap, l^2/8R, less what the lap bends (derived); the limit is"
               " that of going out of round",
        remedy="make the lap shorter, or bend it to the curve before it is joined")


def _carries(problem: Problem, least: str) -> tuple[Check, ...]:
    join, stock = problem.spec.build.hoops.join, problem.stock
    if join.strength is None:
        return ()
    lap = problem.spec.build.hoops.lap or join.sleeve
    joined = [hoop for hoop in problem.shape.hoops if hoop.closed]
    worn = problem.worn.ei_weak / min(map(radius_of, joined))
    e, weak = modulus(stock, problem.material), properties(stock.section).weak_fibre
    bends = handlings(problem, (hoop.id for hoop in joined))
    stress = max((found.stress for found in bends), default=0.0)
    part = max(bends, key=lambda found: found.stress).part if bends else least
    short = min(stress, problem.material.elastic_limit) / (e * weak) * problem.material.ei_weak
    shear = _shear(join.strength, stock, lap, short, part)
    if lap <= 0.0:  # ends that do not overlap bear nothing, whatever peels them
        return (shear,)
    return (shear, _peel(join.strength, stock, lap, worn, short, least, part))


def _shear(bears: JoinStrength, stock: Stock, lap: float, moment: float, part: str) -> Check:
    """Along the lap: half of the face from either end."""
    area = stock.section.height * lap / 2
    wanted = 3 * moment / (4 * stock.section.depth) + TREAD / 2 if bears.bonded else TREAD
    borne = bears.shear * area if bears.bonded else bears.shear if lap > 0.0 else 0.0
    return judged(
        "join-shear", part, wanted, borne, "force", "at most",
        says="the join bears the pull along it when the hoop is bent or trodden on",
        source=f"3M/4t over half the lap, and a tread of 100 N (derived); {_BEARS}",
        remedy="make the lap longer, or prove the join (2 kg over night) before going on")


def _peel(bears: JoinStrength, stock: Stock, lap: float, worn: float, short: float, least: str,
          part: str) -> Check:
    """Across the lap: whichever of the lasting and the passing moment uses more of what the join bears."""
    face = stock.section.height * lap / 4 if bears.bonded else 1.0
    lasting, passing = (1.5 * worn / lap, bears.lasting * face), (1.5 * short / lap, bears.tension * face)
    name, (wanted, borne) = max(((least, lasting), (part, passing)), key=lambda case: case[1][0] / case[1][1])
    return judged(
        "join-peel", name, wanted, borne, "force", "at most",
        says="the join bears the pull that peels its ends apart",
        source=f"1.5 M/l over the half of the lap that is pulled, greatest at its end (derived); {_BEARS}",
        remedy="make the lap longer, or bind it over with thread")
