from tests.progress.zz import X
def test_x() -> None:
    assert X
