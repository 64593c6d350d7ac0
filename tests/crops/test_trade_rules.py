"""Crops against the rules of the trade: pinching, deadheading, succession, hardening, hazards."""

import pytest

from benchround.core.crop.crop import Hardiness, Light, Raising
from tests.crops.published import KEYS, crop


@pytest.mark.parametrize(
    ("key", "pairs"),
    [
        pytest.param("snapdragon", (2, 3), id="4-6 leaves: Miller Library answer line (read)"),
        pytest.param("zinnia", (3, 3), id="3 sets: National Gardening Association 2000 (read)"),
        pytest.param("cornflower", (3, 3), id="3 sets: National Gardening Association 2000 (read)"),
        pytest.param("cosmos", (3, 4), id="3-4 sets: popular page (read)"),
        pytest.param("dahlia", (3, 4), id="3-4 pairs: common practice, no source"),
        pytest.param("nicotiana", (3, 4), id="nicotiana 3-4 pairs: common practice, no source"),
        pytest.param("rudbeckia", (3, 4), id="rudbeckia 3-4 pairs: common practice, no source"),
    ],
)
def test_pinching_by_pairs_of_leaves(key: str, pairs: tuple[int, int]) -> None:
    found = crop(key).growing.pinch_pairs
    assert found is not None and pairs[0] <= found <= pairs[1]


def test_sweet_peas_are_pinched_at_ten_centimetres() -> None:
    """PIN-03: The Telegraph, Irish Times, Garden Advice (read)."""
    assert crop("sweet-pea").growing.pinch_height_cm == 10


@pytest.mark.parametrize("key", ["foxglove", "larkspur", "celosia", "sunflower", "china-aster"])
def test_single_spikes_are_not_pinched(key: str) -> None:
    """PIN-06: National Gardening Association 2000 on celosia (read); others from memory."""
    growing = crop(key).growing
    assert growing.pinch_pairs is None and growing.pinch_height_cm is None


@pytest.mark.parametrize(
    ("key", "style", "every"),
    [
        pytest.param("sweet-pea", "pick", (2, 3), id="2-3 days: popular pages (read)"),
        pytest.param("viola", "heads", (1, 3), id="viola daily (read), 3 days our proposal"),
        pytest.param("pansy", "heads", (1, 3), id="pansy daily (read), 3 days our proposal"),
        pytest.param("nasturtium", "heads", (1, 3), id="nasturtium daily (read), 3 our proposal"),
        pytest.param("french-marigold", "heads", (1, 3), id="marigold daily (read), 3 ours"),
        pytest.param("cosmos", "heads", (3, 7), id="cosmos 3-7: method read, days from memory"),
        pytest.param("zinnia", "heads", (3, 7), id="zinnia 3-7: method read, days from memory"),
        pytest.param("rudbeckia", "heads", (3, 7), id="rudbeckia 3-7: days from memory"),
        pytest.param("cornflower", "heads", (3, 7), id="cornflower 3-7: days from memory"),
        pytest.param("scabious", "heads", (3, 7), id="scabious 3-7: days from memory"),
        pytest.param("dahlia", "heads", (3, 7), id="dahlia 3-7: days from memory"),
        pytest.param("petunia", "heads", (7, 7), id="petunia 7: Arizona Daily Sun 2020 (read)"),
        pytest.param("geranium", "heads", (7, 7), id="pelargonium 7: Arizona Daily Sun (read)"),
        pytest.param("garden-verbena", "heads", (7, 7), id="verbena 7: Arizona Daily Sun (read)"),
    ],
)
def test_deadheading(key: str, style: str, every: tuple[int, int]) -> None:
    flowering = crop(key).flowering
    assert flowering is not None and flowering.deadhead == style
    assert flowering.deadhead_every_days is not None
    assert every[0] <= flowering.deadhead_every_days <= every[1]


@pytest.mark.parametrize("key", ["snapdragon", "foxglove", "larkspur", "sweet-william"])
def test_spikes_are_cut_when_two_thirds_are_faded(key: str) -> None:
    """DEAD-04: common practice, no source."""
    flowering = crop(key).flowering
    assert flowering is not None and flowering.deadhead == "spikes"
    assert flowering.deadhead_first_days


@pytest.mark.parametrize(
    "key", ["wax-begonia", "busy-lizzie", "new-guinea-impatiens", "vinca", "lobelia"]
)
def test_what_cleans_itself_is_not_deadheaded(key: str) -> None:
    """DEAD-06: a broadcaster's page (read) on begonia, vinca, impatiens; lobelia from memory."""
    flowering = crop(key).flowering
    assert flowering is not None and flowering.deadhead == "none"


@pytest.mark.parametrize(
    ("key", "days"),
    [
        pytest.param("radish", (7, 14), id="SUC-02 radish: two charts (read)"),
        pytest.param("spinach", (7, 14), id="SUC-03 spinach: 7 read, 14 from memory"),
        pytest.param("coriander", (7, 14), id="SUC-04 coriander: 7 read, 14 from memory"),
        pytest.param("lettuce", (10, 14), id="SUC-05 head lettuce: chart, Univ. of Florida (read)"),
        pytest.param("pak-choi", (10, 14), id="SUC-06 pak choi: 10 read, 14 from memory"),
        pytest.param("dill", (14, 21), id="SUC-07 dill: 14 read, 21 from memory"),
        pytest.param("basil", (14, 21), id="SUC-07 basil: 14 read, 21 from memory"),
        pytest.param("parsley", (14, 21), id="SUC-07 parsley: 14 read, 21 from memory"),
        pytest.param("beetroot", (21, 21), id="SUC-08 beetroot: garden firm 2014 (read)"),
        pytest.param("french-bean", (14, 21), id="SUC-09 dwarf beans: 14 read, 21 from memory"),
        pytest.param("calabrese", (14, 21), id="SUC-10 calabrese: greenhouse firm (read)"),
        pytest.param("carrot", (21, 28), id="SUC-11 carrot: common practice, no source"),
        pytest.param("spring-onion", (21, 28), id="SUC-12 spring onion: common practice"),
        pytest.param("pea", (14, 28), id="SUC-13 pea: common practice, no source"),
        pytest.param("cornflower", (21, 28), id="SUC-14 cornflower: common practice, no source"),
        pytest.param("ammi", (21, 28), id="SUC-14 ammi: common practice, no source"),
        pytest.param("larkspur", (21, 28), id="SUC-14 larkspur: common practice, no source"),
        pytest.param("zinnia", (14, 28), id="SUC-15 zinnia: common practice, no source"),
        pytest.param("cosmos", (14, 28), id="SUC-15 cosmos: common practice, no source"),
        pytest.param("sunflower", (14, 28), id="SUC-15 sunflower: common practice, no source"),
    ],
)
def test_succession(key: str, days: tuple[int, int]) -> None:
    assert crop(key).succession_days == days


@pytest.mark.parametrize("key", KEYS)
def test_hardening_takes_three_to_twenty_one_days(key: str) -> None:
    """HAR-03: UC Santa Cruz, Teaching Organic Farming & Gardening, Unit 1.4 (read)."""
    hardening = crop(key).hardening
    if hardening is None:
        assert crop(key).raising in (Raising.DRILL, Raising.BULB) or key == "leek"
        return
    assert 3 <= hardening.least_days <= hardening.days <= 21
    if crop(key).hardiness is Hardiness.HARDY:
        assert hardening.days <= 7  # HAR-04: 3 to 7 days, common practice, no source


@pytest.mark.parametrize(
    ("key", "clump"),
    [("beetroot", 4), ("onion", 6), ("spring-onion", 8)],
)
def test_clumps_are_sown_and_kept_whole(key: str, clump: int) -> None:
    """Three to ten a clump: C. Dowding on multi-sowing (read); each crop's from memory."""
    growing = crop(key).growing
    assert crop(key).raising is Raising.CLUMPS
    assert growing.per_cell == growing.keep_per_cell == clump
    assert 3 <= clump <= 10


DARK = ("celosia", "sunflower", "nasturtium", "geranium", "viola", "garden-verbena", "nigella")
"""Iowa State University Extension and Chong et al., Table 2 (read)."""


@pytest.mark.parametrize("key", [*DARK, "calendula", "larkspur"])
def test_seed_that_wants_the_dark(key: str) -> None:
    """Calendula and larkspur from memory."""
    germination = crop(key).germination
    assert germination is not None
    assert germination.light is Light.DARK and germination.depth_mm > 0


@pytest.mark.parametrize("key", KEYS)
def test_seed_that_wants_light_is_not_buried(key: str) -> None:
    """COV-02: pressed in, no cover or the thinnest veil (read)."""
    germination = crop(key).germination
    if germination is not None and germination.light is Light.LIGHT:
        assert germination.depth_mm <= 2


POISON_LISTS = (
    "foxglove",
    "monkshood",
    "delphinium",
    "larkspur",
    "cushion-spurge",
    "hellebore",
    "castor-bean",
    "lupin",
    "sweet-pea",
    "morning-glory",
    "nicotiana",
    "corncockle",
    "aquilegia",
    "opium-poppy",
    "daffodil",
    "tulip",
    "hyacinth",
    "lobelia",
    "vinca",
)
"""Lists of harmful garden plants: GardenForum, Amateur Gardening, ASPCA as given by EMSA, a list
of plants toxic to cats (read); nicotiana, opium poppy, lobelia and vinca from memory."""


@pytest.mark.parametrize("key", POISON_LISTS)
def test_what_poison_lists_name_carries_the_word(key: str) -> None:
    assert "poison" in crop(key).hazards
    assert "pets" in crop(key).hazards


@pytest.mark.parametrize("key", ["castor-bean", "monkshood"])
def test_what_kills_in_small_amounts_carries_the_word(key: str) -> None:
    """NC State University, Poisonous Plants of North Carolina (read); monkshood from memory."""
    assert "deadly" in crop(key).hazards


@pytest.mark.parametrize(
    "key", ["sweet-pea", "lupin", "castor-bean", "delphinium", "daffodil", "tulip", "hyacinth"]
)
def test_seed_or_bulb_that_could_be_eaten_by_mistake(key: str) -> None:
    """Public Health England 2015 on daffodils (read); RHS list by way of a column (read)."""
    assert "food-like seed" in crop(key).hazards


@pytest.mark.parametrize("key", ["rue", "ammi", "ammi-visnaga", "parsnip", "celery"])
def test_sap_that_burns_in_sun(key: str) -> None:
    """RHS, potentially harmful garden plants (read) on rue and parsnip; ammi from memory."""
    assert "phototoxic" in crop(key).hazards


@pytest.mark.parametrize("key", ["courgette", "squash", "pumpkin", "cucumber", "melon"])
def test_cucumber_kin_carries_the_warning_about_saved_seed(key: str) -> None:
    """Common practice, no source."""
    assert "cucurbit" in crop(key).hazards
    assert not crop(key).seed.worth
