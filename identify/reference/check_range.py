"""Checks range.toml, features.toml, the sources and the drawings."""

from identify.reference.check_names import Checker, cycle
from identify.reference.completeness import COMPLETE, in_words
from identify.reference.csv_files import FILES
from identify.reference.fields import fields
from identify.reference.mistakes import Mistake, instead
from identify.reference.records import Feature, Item, Source, Variant
from identify.reference.toml_files import FEATURES, RANGE
from identify.reference.windows import NONE
from identify.reference.years import YearsError, read_years

KIND = "kind"


def check_range(check: Checker) -> None:
    """Years, duplicates and kinds in range.toml."""
    pack = check.pack
    if RANGE in pack.unread:
        return
    check.unique(RANGE, "kinds", [(kind.id, kind) for kind in pack.kinds])
    check.unique(RANGE, "parts", [(part.id, part) for part in pack.parts])
    for each in pack.kinds:
        if each.complete and each.complete not in COMPLETE:
            text = f"say how complete the range is in these words: {in_words(COMPLETE)}."
            check.wrong(RANGE, each, "complete", text)
    for caution in pack.cautions:
        for kind in caution.kinds or []:
            check.known(RANGE, caution, "kinds", kind, check.kind_names)
    if pack.range.years and check.life is None:
        text = 'the life of the range must be two plain years such as "1950/1972".'
        try:
            read_years(pack.range.years)
        except YearsError as error:
            text = str(error)
        check.wrong(RANGE, pack.range, "years", text)


def check_sources(check: Checker) -> None:
    """Duplicates and years of the sources (which may be later than the range)."""
    file = FILES[Source]
    check.unique(file, "id", [(source.id, source) for source in check.pack.sources])
    for source in check.pack.sources:
        if source.year:
            try:
                read_years(source.year)
            except YearsError as error:
                check.wrong(file, source, "year", str(error))


def check_features(check: Checker) -> None:
    """Names, states and conditions in features.toml."""
    features = check.pack.features
    check.unique(FEATURES, "id", [(feature.id, feature) for feature in features])
    for feature in features:
        if feature.id == KIND or feature.id in {**fields(Item), **fields(Variant)}:
            text = f'"{feature.id}" has another meaning in a pack. Choose another id.'
            check.wrong(FEATURES, feature, "id", text)
        check_feature(check, feature)
    circle = cycle({feature.id: feature.when for feature in features})
    if circle:
        text = f"these depend on one another in a circle: {' -> '.join(circle)}."
        check.wrong(FEATURES, check.features[circle[0]], "when", text)


def check_feature(check: Checker, feature: Feature) -> None:
    """States, part, kinds and pairs of one feature."""
    for state in feature.states:
        first = next(each for each in feature.states if each.id == state.id)
        if state.id and first is not state:
            text = f'the state "{state.id}" stands twice. Change one of them.'
            check.wrong(FEATURES, state, "states", text)
    if feature.states and len(set(check.states(feature).words)) < 2:
        text = "there is only one state, so nothing can be told. Give at least two."
        check.wrong(FEATURES, feature, "states", text)
    if feature.part:
        check.known(FEATURES, feature, "part", feature.part, check.part_names)
    if feature.kinds == []:
        text = "name at least one kind, or leave kinds out to mean all of them."
        check.wrong(FEATURES, feature, "kinds", text)
    for kind in feature.kinds or []:
        check.known(FEATURES, feature, "kinds", kind, check.kind_names)
    for parent, states in feature.when.items():
        if check.known(FEATURES, feature, "when", parent, check.feature_names):
            known = check.states(check.features[parent])
            for word in states:
                check.known(FEATURES, feature, "when", word, known)
    for pair in feature.mistaken:
        for word in pair:
            check.known(FEATURES, feature, "mistaken", word, check.states(feature))
        if pair[0] == pair[1]:
            text = f'"{pair[0]}" cannot be mistaken for itself.'
            check.wrong(FEATURES, feature, "mistaken", text)


OF_THE_RANGE = ("range-gauge", "range-material")  # for asking which of several ranges it is


def check_drawings(check: Checker) -> None:
    """A drawing for each state and kind, and no other."""
    pack = check.pack
    wanted = {
        f"{KIND}-{kind.id}": (RANGE, kind.line, f'the kind "{kind.id}"')
        for kind in pack.kinds
        if kind.id
    }
    for feature in pack.features:
        for state in feature.states:
            if feature.id and state.id:
                what = f'the state "{state.id}" of "{feature.id}"'
                wanted[f"{feature.id}-{state.id}"] = FEATURES, state.line, what
    for name, (file, line, what) in wanted.items():
        if name not in pack.drawings:
            text = f"{what} has no drawing. Add drawings/{name}.svg."
            check.mistakes.append(Mistake(file, line, "", text))
    declared = [{state.id for state in feature.states} for feature in pack.features]
    added = [NONE in check.states(each).words for each in pack.features]
    if NONE not in pack.drawings and any(
        has and NONE not in states for has, states in zip(added, declared, strict=True)
    ):
        text = "this drawing is missing. It stands for what a piece does not have."
        check.mistakes.append(Mistake(f"drawings/{NONE}.svg", 0, "", text))
    if pack.unread & {RANGE, FEATURES}:
        return
    missing = [name for name in wanted if name not in pack.drawings]
    for name in pack.drawings:
        if name not in wanted and name not in (NONE, *OF_THE_RANGE):
            near = instead(name, missing) if missing else "rename or remove it."
            text = f"there is no such state or kind: {near}"
            check.mistakes.append(Mistake(f"drawings/{name}.svg", 0, "", text))


def check_used(check: Checker) -> None:
    """Every feature must be recorded somewhere."""
    pack = check.pack
    if pack.unread:
        return
    used = {change.feature for change in pack.changes}
    for cells in [*(item.cells for item in pack.items), *(each.cells for each in pack.variants)]:
        used.update(cells)
    for feature in pack.features:
        if feature.id and feature.id not in used:
            text = (
                f'nothing records "{feature.id}". Give it a column in variants.csv or items.csv, '
                "or a row in changes.csv."
            )
            check.wrong(FEATURES, feature, "id", text)
