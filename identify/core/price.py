"""What was paid before for the same thing. No valuations: only what the collector wrote down."""

from .types.holdings import Near
from .types.verdict import Paid
from .wants import is_money


def day_number(when: str) -> int:
    """A number to sort EDTF dates by: the first year, month and day in the text as YYYYMMDD, with 0
    for what is not said (195X is 1950, ../1959 is 1959); 0 where there is no year.
    """
    out = 0
    figures = 0
    for c in when:
        if figures < 8 and "0" <= c <= "9":
            out = 10 * out + int(c)
            figures = figures + 1
        elif figures < 8 and c == "X":
            out = 10 * out
            figures = figures + 1
        elif figures > 0 and c != "-":
            break
    if figures < 4:
        return 0
    while figures < 8:
        out = 10 * out
        figures = figures + 1
    return out


def paid_before(entries: list[Near]) -> list[Paid]:
    """What was paid for the same variant or item, newest first; pieces without a date come last."""
    out: list[Paid] = []
    for entry in entries:
        record = entry["record"]
        paid = record.get("paid")
        if is_money(paid):
            out.append(
                {
                    "piece": record["id"],
                    "money": paid,
                    "when": record.get("when", ""),
                    "same": entry["same"],
                    "item": entry["item"],
                }
            )
    return sorted(out, key=lambda entry: -day_number(entry["when"]))
