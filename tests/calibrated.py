"""The check that stated chances come true, with its table printed."""

from identify.lab.calibration import EDGES, Stated, calibration, error_of


def as_text(table: list[list[float]]) -> str:
    """The table for the test run's output."""
    lines = ["    stated         pieces   mean   true"]
    for low, high, count, mean, true in table:
        lines.append(f"    {low:.2f} to {high:.2f}  {count:7d}  {mean:.3f}  {true:.3f}")
    return "\n".join(lines)


def assert_come_true(what: str, stated: Stated, capsys) -> None:
    """Expected calibration error at most 0.03, and no bin further off than chance allows."""
    table = calibration(stated, EDGES)
    with capsys.disabled():
        print(f"\n{what}: calibration error {error_of(table):.3f}\n{as_text(table)}")
    assert error_of(table) <= 0.03
    for _, _, count, mean, true in table:
        if count >= 50:
            spread = 3 * (mean * (1 - mean) / count) ** 0.5
            assert abs(mean - true) <= 0.06 + spread
