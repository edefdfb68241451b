from warmup.engine.targets import NUMBER_WORK, SHARES
from warmup.model import Strand


def test_the_shares_of_each_quarter_are_whole_and_mostly_number_work() -> None:
    assert set(SHARES) == {strand.value for strand in Strand}
    for quarter in range(4):
        assert sum(shares[quarter] for shares in SHARES.values()) == 100
        assert sum(SHARES[strand][quarter] for strand in NUMBER_WORK) >= 60
    adding = SHARES[Strand.ADDING.value]
    assert list(adding) == sorted(adding), "adding rises through the year"
