"""Prints how many date marks there are, by country, label and end, and how the dated examples fare.

python -m tests.outside.count_marks
"""

from collections import Counter

from identify.reference.mark_ends import ends_of
from identify.reference.marks import read_marks
from identify.reference.number_tables import all_series, yearly_table
from tests.outside.dated_examples import examples, verdict, wordings_met


def main() -> None:
    """Everything, a line each."""
    rows = read_marks()[0].rows
    print(f"{len(rows)} rows of wording, {sum(len(row.country) for row in rows)} by country")
    countries = Counter(code for row in rows for code in row.country)
    print("  " + ", ".join(f"{code} {count}" for code, count in countries.most_common()))
    ends = Counter[tuple[str, str, str]]()
    for row in rows:
        for side, end in zip(("earliest", "latest"), ends_of(row), strict=True):
            kind = "open" if end.open else "hard" if end.hard else "soft"
            ends[side, end.label or "no label", kind] += 1
    for (side, label, kind), count in sorted(ends.items()):
        print(f"  {side}, {label}, {kind}: {count}")
    print("numbers of series")
    for series in all_series():
        labels = Counter(row.label for row in yearly_table(series.id))
        print(f"  {series.id}: {sum(labels.values())}, published {labels['published']}")
    print("dated examples of numbers")
    found = Counter(
        (row["series"], verdict(row["series"], row["number"], row["years"], row["of"]))
        for row in examples("mark_numbers.csv")
    )
    for (series_id, word), count in sorted(found.items()):
        print(f"  {series_id}: {count} {word}")
    every, seen, right, wrong = wordings_met()
    print(f"dated examples of wordings: {right} right, {wrong} wrong")
    print(f"  {len(every)} wordings, {len(every - seen)} without a dated example")


if __name__ == "__main__":
    main()
