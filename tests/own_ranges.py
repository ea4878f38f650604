"""Ranges of one's own as records, as people come to write them: whole, half done and mistaken."""

from typing import Any

from hypothesis import strategies as st

from identify.core.shapes import new_fields

WORDS = st.sampled_from(["", "Tank engine", "Coach", "Ostwick", "Größe", "a;b|c", "?"])
NUMBERS = st.sampled_from(["", "101", "102", "K 47", "101"])
YEARS = st.sampled_from(
    ["", "", "1955", "1955~", "1953/1957", "../1956", "195X", "1957/..", "soon", "1899", "1957-13"]
)
TIME = "2026-01-01T00:00:00.000Z"
SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 4"><path d="M0 0H4"/></svg>'


def row(sort: str, ident: str, **fields: Any) -> dict[str, Any]:
    """A record of this sort."""
    about = {"id": ident, "type": sort, "made": TIME, "changed": TIME, "trashed": ""}
    return about | dict(new_fields(sort)) | fields


@st.composite
def own_ranges(draw: st.DrawFn, sound: bool = False) -> list[dict[str, Any]]:
    """The record of a range, and those of its rows. `sound`: everything is there and right."""
    years = st.sampled_from(["", "1955", "1953~/1957"]) if sound else YEARS
    gone = st.just("") if sound else st.sampled_from(["", "", "", "", TIME])
    life = "1950/1959" if sound else draw(st.sampled_from(["1950/1959", "", "about", "1955"]))
    whole = row(
        "range", "r0", key="ostwick", name="Ostwick", maker="Ostwick Toys", gauge=22.5,
        scale="1:64", country=draw(st.sampled_from(["GB", "", "DE"])), years=life, about="Invented",
        by=draw(st.sampled_from(["", "Anna"])),
    )  # fmt: skip
    count = draw(st.integers(1 if sound else 0, 3))
    kinds = [f"rkind{n}" for n in range(count)]
    parts = ["rpart0", "rpart1"][: draw(st.integers(0, 2))]
    features = [f"rfeature{n}" for n in range(draw(st.integers(1, 3)))]
    states = {one: [f"{one}s{n}" for n in range(draw(st.integers(2 if sound else 0, 3)))]
              for one in features}  # fmt: skip
    sources = ["rsource0", "rsource1"][: draw(st.integers(0, 2))]
    items = [f"ritem{n}" for n in range(draw(st.integers(1 if sound else 0, 4)))]
    one_of = lambda some: st.sampled_from([*some, ""])  # noqa: E731
    records = [
        row("range_kind", ident, range="r0", at=n, key=f"kind{n}", name=draw(WORDS) or "Kind",
            plural="Kinds", trashed=draw(gone), drawing=draw(st.sampled_from(["", SVG])))
        for n, ident in enumerate(kinds)
    ]  # fmt: skip
    records += [
        row("range_part", ident, range="r0", at=n, key=f"part{n}", name="Part",
            swap=draw(st.sampled_from([0.1, 0.05])))
        for n, ident in enumerate(parts)
    ]  # fmt: skip
    records += [
        row("range_source", ident, range="r0", at=n, key=f"source{n}", what="A book", trust=0.8,
            year=draw(years))
        for n, ident in enumerate(sources)
    ]  # fmt: skip
    for n, ident in enumerate(features):
        before = [state for one in features[:n] for state in states[one]]
        condition = draw(one_of(before))
        only_if = [[condition.split("s")[0], condition]] if condition else []
        records.append(
            row("range_feature", ident, range="r0", at=n, key=f"feature{n}",
                name=draw(WORDS) or "Feature", question="What is it?", where="There",
                seconds=draw(st.sampled_from([2, 3.5])), needs="nothing", part=draw(one_of(parts)),
                kinds=draw(st.lists(st.sampled_from(kinds), unique=True)) if kinds else [],
                only_if=only_if, trashed=draw(gone))
        )  # fmt: skip
        records += [
            row("range_state", state, range="r0", feature=ident, at=m, key=f"state{m}",
                name=draw(WORDS) or "State", drawing=draw(st.sampled_from(["", SVG])))
            for m, state in enumerate(states[ident])
        ]  # fmt: skip
    seen = st.dictionaries(st.sampled_from(features), st.integers(0, 9), max_size=3)

    def looked() -> dict[str, Any]:
        out: dict[str, Any] = {}
        for feature, pick in draw(seen).items():
            some = states[feature]
            out[f"seen_{feature}"] = ["?"] if pick == 0 else some[: pick % 3]
        return out

    for n, ident in enumerate(items):
        number = f"1{n:02d}" if sound else draw(NUMBERS)
        said = draw(years)
        records.append(
            row("range_item", ident, range="r0", at=n, number=number, name=draw(WORDS) or "Item",
                kind=draw(st.sampled_from(kinds)) if sound else draw(one_of(kinds)), years=said,
                source=draw(one_of(sources)) if said else "", trashed=draw(gone), note="A note",
                carried=["1"], **looked())
        )  # fmt: skip
        for m in range(draw(st.integers(1 if sound else 0, 2))):
            said = draw(years)
            others = [[draw(st.sampled_from(sources)), "1956"]] if sources and said else []
            records.append(
                row("range_variant", f"{ident}v{m}", range="r0", item=ident, at=m,
                    key=f"v{n}_{m}", name=draw(WORDS), years=said,
                    source=draw(one_of(sources)) if said else "", other_years=others,
                    common=draw(st.sampled_from([1, 0.2])), trashed=draw(gone), **looked())
            )  # fmt: skip
    for n in range(draw(st.integers(0, 3))):
        feature = draw(st.sampled_from(features))
        if states[feature]:
            records.append(
                row("range_change", f"rchange{n}", range="r0", at=n, feature=feature,
                    state=draw(st.sampled_from(states[feature])), since=draw(years),
                    source=draw(one_of(sources)), trashed=draw(gone))
            )  # fmt: skip
    return [whole, *records]
