"""What cannot be bought or cut ends in a finding that says how to mend it."""

from __future__ import annotations

from collections.abc import Callable
from types import SimpleNamespace

from hoopwright.source.diagnostic import Finding, Severity
from hoopwright.supply.provide import provide

Drawn = Callable[[str], SimpleNamespace]
COILS = "[{length: 50 ft, price: 19.00 USD}, {length: 100 ft, price: 33.00 USD}]"
BY_YARD = "[{per: 1 yd, step: 1/4 yd, price: 4.20 USD}]"


def errors(drawn: Drawn, text: str) -> tuple[Finding, ...]:
    cage = drawn(text)
    supply, said = provide(cage.spec, cage.shape)
    assert supply is None
    return tuple(found for found in said if found.severity is Severity.ERROR)


def test_a_pack_shorter_than_the_hem_names_the_hoops_the_longer_pack_and_the_splice(
    drawn: Drawn, harbour_text: str
) -> None:
    text = harbour_text.replace(COILS, "[{length: 8 ft, price: 4.00 USD}]").replace(
        "on_hand: [14 ft]", "on_hand: []"
    )
    (found,) = errors(drawn, text)
    assert found.code == "pack-too-short"
    assert found.path == ("materials", "strip", "sold")
    assert found.message.startswith(
        "`H5`, `H6`, `H7` of `strip` cannot be cut in one piece: 9 ft 3 in is needed"
    )
    assert "the longest length to be had is 8 ft" in found.message
    assert "at least 9 ft 3 in" in found.help
    assert "2 lengths, with 1 more `lap soldered` join as a splice" in found.help
    assert "1 in more strip" in found.help


def test_short_packs_are_named_when_one_offcut_is_long_enough_for_a_hoop(
    drawn: Drawn, harbour_text: str
) -> None:
    """The 14 ft on hand hold one of the hoops that 8 ft packs do not give, and not all three."""
    text = harbour_text.replace(COILS, "[{length: 8 ft, price: 4.00 USD}]")
    (found,) = errors(drawn, text)
    assert found.code == "pack-too-short"
    assert found.message == (
        "`H5`, `H6`, `H7` of `strip` cannot be cut in one piece: 9 ft 3 in is needed and the packs sold give "
        "8 ft; what is longer does not hold them all"
    )
    assert found.help.startswith("a pack of at least 9 ft 3 in mends it; or the hoop is made of 2 lengths")


def test_a_roll_shorter_than_a_tape_can_be_pieced_by_hand(drawn: Drawn, harbour_text: str) -> None:
    text = harbour_text.replace("{length: 10 yd, price: 6.50 USD}", "{length: 1 yd, price: 0.90 USD}")
    (found,) = errors(drawn, text)
    assert found.message.startswith("`T1`, `T2`, `T3`, `T4`, `T5`, `T6` of `twill`")
    assert found.help.endswith("or sew two lengths end to end and write what that gives under `on_hand`")


def test_limited_packs_that_do_not_suffice(drawn: Drawn, harbour_text: str) -> None:
    text = harbour_text.replace(COILS, "[{length: 10 ft, price: 5.00 USD, at_most: 2}]")
    (found,) = errors(drawn, text)
    assert found.code == "stock-short"
    assert "at_most" in found.help


def test_a_cloth_narrower_than_a_strip_along_its_grain(drawn: Drawn, harbour_text: str) -> None:
    text = harbour_text.replace("width: 45 in", "width: 18 in").replace(
        "hem_band: {depth: 9 in, material: calico}", "hem_band: {depth: 9 in, material: calico, grain: along}"
    )
    (found,) = errors(drawn, text)
    assert found.code == "cloth-too-narrow"
    assert "20 1/4 in across" in found.message


def test_one_short_piece_of_cloth_says_what_is_needed_at_the_usual_widths(
    drawn: Drawn, harbour_text: str
) -> None:
    (found,) = errors(drawn, harbour_text.replace(BY_YARD, "[{length: 1 yd, price: 4.20 USD, at_most: 1}]"))
    assert found.code == "cloth-short"
    assert "2 ft 10 7/8 in once washed is to be had" in found.message  # 36 in less 3 % are 34.92 in
    assert "at 45 in wide" in found.help
    assert "at 60 in wide" in found.help


def test_several_errors_are_told_in_one_run(drawn: Drawn, harbour_text: str) -> None:
    text = harbour_text.replace(COILS, "[{length: 8 ft, price: 4.00 USD}]").replace(
        "on_hand: [14 ft]", "on_hand: []"
    )
    text = text.replace("{length: 10 yd, price: 6.50 USD}", "{length: 1 yd, price: 0.90 USD}")
    assert [found.path for found in errors(drawn, text)] == [
        ("materials", "strip", "sold"),
        ("materials", "twill", "sold"),
    ]


def test_goods_by_the_piece_where_lengths_are_used_are_warned_about(drawn: Drawn, harbour_text: str) -> None:
    cage = drawn(harbour_text.replace("[{per: 1 yd, price: 0.60 USD}]", "[{count: 1, price: 0.60 USD}]"))
    supply, said = provide(cage.spec, cage.shape)
    assert supply is not None
    assert (said[0].code, said[0].severity) == ("sold-by-piece", Severity.WARNING)
    assert "braid" in supply.cost.missing


def spliced(harbour_text: str, pack: str, most: int) -> str:
    return harbour_text.replace(COILS, f"[{{length: {pack}, price: 4.00 USD}}]").replace(
        "on_hand: [14 ft]", "on_hand: []").replace("join: lap soldered", f"join: lap soldered, splices: {most}")


def test_the_splices_advised_do_mend_packs_shorter_than_half_a_hoop(drawn: Drawn, harbour_text: str) -> None:
    cage = drawn(spliced(harbour_text, "4 ft", 2))
    supply, _ = provide(cage.spec, cage.shape)
    assert supply is not None
    cut = [piece for pack in supply.cutting.packs if pack.material == "strip" for piece in pack.pieces]
    assert {piece.part for piece in cut} == {f"H{k}" for k in range(1, 8)}
    assert max(piece.length for piece in cut) <= 4 * 0.3048


def test_splices_that_are_allowed_already_are_not_advised_again(drawn: Drawn, harbour_text: str) -> None:
    """Packs of 28 in ask for up to four splices in every hoop, more than the search lays out."""
    (found,) = errors(drawn, spliced(harbour_text, "28 in", 4))
    assert found.code == "pack-too-short"
    assert "write `splices" not in found.help
    assert found.help.endswith("no plan with so many of them was found in the search: longer packs need fewer")
