"""Body proportions against the 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II).

Source: C. C. Gordon et al., NATICK/TR-15/007, Methods and Summary Statistics, December 2014; the
survey's public data, 1,986 women, barefoot and uncorseted. Heights over stature and girth ratios are
person by person, so that their percentiles are not ratios of the report's percentiles. Figures to
three decimals.
"""

from __future__ import annotations

import pytest

from hoopwright.library import body
from hoopwright.source.read import read
from hoopwright.spec.resolve import resolve

PERCENTILES = [  # 5th, median, 95th
    (body.WAIST_HEIGHT, 0.612, 0.630, 0.649),
    (body.HIP_HEIGHT, 0.488, 0.511, 0.538),
    (body.WAIST_OVER_HIP, 0.749, 0.837, 0.946),
    (body.WAIST_OVAL, 1.24, 1.42, 1.60),
    (body.WAIST_TO_HIP, 0.162, 0.192, 0.224),
]
FEMALE_MEAN_STATURE = 1.6285
"""Mean stature of the women of the survey, m: 162.85 cm (quoted from memory)."""


@pytest.mark.parametrize(("ratio", "p5", "median", "p95"), PERCENTILES,
                         ids=[row[0].name for row in PERCENTILES])
def test_percentiles_are_those_of_the_survey(ratio: body.Proportion, p5: float, median: float,
                                             p95: float) -> None:
    assert (ratio.p5, ratio.median, ratio.p95) == (p5, median, p95)


def test_the_middle_ninety_per_cent_raise_no_warning() -> None:
    """Women at the 5th, 50th and 95th percentile of each ratio pass without a word."""
    for waist_height in (0.612, 0.630, 0.649):
        for hip_height in (0.488, 0.511, 0.538):
            for girths in (0.749, 0.837, 0.946):
                assert codes(waist_height, hip_height, girths) == []


def test_the_warning_bounds() -> None:
    assert codes(0.604, 0.511, 0.837) == ["waist-height-unlikely"]
    assert codes(0.630, 0.476, 0.837) == ["hip-height-unlikely"]


def test_heels_are_allowed_for() -> None:
    heels = 0.10 / FEMALE_MEAN_STATURE
    assert codes(0.656 + heels, 0.511 + heels, 0.837) == []
    assert codes(0.660 + heels, 0.511 + heels, 0.837) == ["waist-height-unlikely"]


def test_waist_to_hip_agrees_with_the_two_heights() -> None:
    """Difference of the two median heights at mean stature against the median drop: within 3 mm."""
    drop = (body.WAIST_HEIGHT.median - body.HIP_HEIGHT.median) * FEMALE_MEAN_STATURE
    assert drop == pytest.approx(body.WAIST_TO_HIP.median, abs=0.003)


def codes(waist_height: float, hip_height: float, waist_over_hip: float) -> list[str]:
    """What is said of a woman of mean stature with these proportions."""
    side = waist_height * FEMALE_MEAN_STATURE
    drop = (waist_height - hip_height) * FEMALE_MEAN_STATURE
    text = (f"spec: 1\nunits: centimetres\nwearer: {{stature: {FEMALE_MEAN_STATURE} m, waist: 0.8 m,"
            f" hip: {0.8 / waist_over_hip} m, waist_height: {side} m, waist_to_hip: {drop} m}}\n"
            "shape: {hem: {girth: 2.6 m}}\n")
    document, said = read(text.encode(), "body.yaml")
    assert document is not None, said
    return [finding.code for finding in resolve(document)[1]]
