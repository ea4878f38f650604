"""Checks the range, its features, its sources and its drawings."""

from ..native.values import is_true
from ..types.rows import Checked, FeatureRow
from .check_names import (
    at_field,
    drawn_name,
    feature_named,
    first_circle,
    ids_of,
    known_word,
    states_known,
    unique_names,
    wrong_field,
)
from .splitting import adds_none, place_of_text
from .words import COMPLETE, JPEG, KIND, NONE, OF_THE_RANGE, OF_VARIANT
from .year_bounds import years_of_edtf

# What a column of items or variants is called besides: no feature can be.
TAKEN = [
    KIND, "number", "name", "years", "source", "other_years", "formation", "contains", "carried",
    "note", "id", "item", "common",
]  # fmt: skip
PREFIX = "mark_"


def check_about(check: Checked) -> None:
    """Years, duplicates and kinds of the range itself."""
    rows = check["rows"]
    if "range" in check["unread"]:
        return
    unique_names(check, "kinds", "kinds", ids_of(check, "kinds"))
    unique_names(check, "parts", "parts", ids_of(check, "parts"))
    for n in range(len(rows["kinds"])):
        said = rows["kinds"][n]["complete"]
        if said != "" and said not in COMPLETE:
            wrong_field(check, at_field("kinds", n, "complete"), "complete")["known"] = COMPLETE
    for n in range(len(rows["cautions"])):
        for kind in rows["cautions"][n]["kinds"]:
            known_word(
                check, at_field("cautions", n, "kinds"), kind, "kinds", ids_of(check, "kinds")
            )
    life = rows["range"]["years"]
    if life != "" and not is_true(check["known_life"]):
        mistake = wrong_field(check, at_field("range", 0, "years"), "life")
        problem = years_of_edtf(life)["problem"]
        if problem != "":
            mistake["why"] = problem
        mistake["said"] = [life]


def check_sources(check: Checked) -> None:
    """Duplicates and years of the sources (which may be later than the range)."""
    unique_names(check, "sources", "id", ids_of(check, "sources"))
    for n in range(len(check["rows"]["sources"])):
        year = check["rows"]["sources"][n]["year"]
        problem = years_of_edtf(year)["problem"] if year != "" else ""
        if problem != "":
            mistake = wrong_field(check, at_field("sources", n, "year"), "unread")
            mistake["why"] = problem
            mistake["said"] = [year]


def check_features(check: Checked) -> None:
    """Names, states and conditions of the features."""
    features = check["rows"]["features"]
    unique_names(check, "features", "id", ids_of(check, "features"))
    for n in range(len(features)):
        if features[n]["id"] in TAKEN:
            wrong_field(check, at_field("features", n, "id"), "meaning")["said"] = [
                features[n]["id"]
            ]
        check_states(check, n, features[n])
        check_feature(check, n, features[n])
    leads = [[pair[0] for pair in feature["when"]] for feature in features]
    circle = first_circle(ids_of(check, "features"), leads)
    if len(circle) > 0:
        place = feature_named(check, circle[0])
        wrong_field(check, at_field("features", place, "when"), "circle")["said"] = circle


def check_states(check: Checked, n: int, feature: FeatureRow) -> None:
    """The states of a feature."""
    ids = [state["id"] for state in feature["states"]]
    for s in range(len(ids)):
        if ids[s] != "" and place_of_text(ids, ids[s]) < s:
            mistake = wrong_field(check, at_field("features", n, "states"), "state twice")
            mistake["state"] = s
            mistake["said"] = [ids[s]]
    different: list[str] = []
    for ident in states_known(check, feature):
        if ident not in different:
            different.append(ident)
    if len(ids) > 0 and len(different) < 2:
        wrong_field(check, at_field("features", n, "states"), "one state")


def check_feature(check: Checked, n: int, feature: FeatureRow) -> None:
    """What a feature points to."""
    kinds = ids_of(check, "kinds")
    if feature["part"] != "":
        parts = ids_of(check, "parts")
        known_word(check, at_field("features", n, "part"), feature["part"], "parts", parts)
    if not is_true(feature["every"]) and len(feature["kinds"]) == 0:
        wrong_field(check, at_field("features", n, "kinds"), "no kind")
    for kind in feature["kinds"]:
        known_word(check, at_field("features", n, "kinds"), kind, "kinds", kinds)
    for pair in feature["when"]:
        names = ids_of(check, "features")
        if len(pair[1]) == 0:
            wrong_field(check, at_field("features", n, "when"), "no states")["said"] = [pair[0]]
        if known_word(check, at_field("features", n, "when"), pair[0], "features", names):
            known = states_known(check, check["rows"]["features"][feature_named(check, pair[0])])
            for word in pair[1]:
                known_word(check, at_field("features", n, "when"), word, "states", known)
    for two in feature["mistaken"]:
        known = states_known(check, feature)
        for word in two:
            known_word(check, at_field("features", n, "mistaken"), word, "states", known)
        if two[0] == two[1]:
            wrong_field(check, at_field("features", n, "mistaken"), "itself")["said"] = [two[0]]


def check_kept_ids(check: Checked) -> None:
    """Ids that are kept for the date marks."""
    for n in range(len(check["rows"]["features"])):
        if check["rows"]["features"][n]["id"][0 : len(PREFIX)] == PREFIX:
            wrong_field(check, at_field("features", n, "id"), "kept id")["said"] = [PREFIX]
    for n in range(len(check["rows"]["sources"])):
        if check["rows"]["sources"][n]["id"][0 : len(PREFIX)] == PREFIX:
            wrong_field(check, at_field("sources", n, "id"), "kept id")["said"] = [PREFIX]


def check_drawings(check: Checked) -> None:
    """A drawing for each state and kind, and no other."""
    rows = check["rows"]
    wanted: list[str] = []
    for n in range(len(rows["kinds"])):
        name = KIND + "-" + rows["kinds"][n]["id"]
        if name != KIND + "-":
            wanted.append(name)
            if not drawn_name(check, name):
                mistake = wrong_field(check, at_field("kinds", n, ""), "no drawing")
                mistake["said"] = [name, rows["kinds"][n]["id"]]
    for n in range(len(rows["features"])):
        feature = rows["features"][n]
        for s in range(len(feature["states"])):
            state = feature["states"][s]["id"]
            name = feature["id"] + "-" + state
            if feature["id"] != "" and state != "":
                wanted.append(name)
                if not drawn_name(check, name):
                    mistake = wrong_field(check, at_field("features", n, ""), "no drawing")
                    mistake["state"] = s
                    mistake["said"] = [name, state, feature["id"]]
    adding = [1 for each in rows["features"] if adds_none(each, rows["kinds"])]
    if len(adding) > 0 and not drawn_name(check, NONE):
        wrong_field(check, at_field("drawings", -1, NONE), "none undrawn")
    check_spare_drawings(check, wanted)


def check_spare_drawings(check: Checked, wanted: list[str]) -> None:
    """Drawings of what is not there."""
    if "range" in check["unread"] or "features" in check["unread"]:
        return
    missing = [each for each in wanted if not drawn_name(check, each)]
    photographed = [OF_VARIANT + variant["id"] for variant in check["rows"]["variants"]]
    for drawing in check["rows"]["drawings"]:
        name = drawing["id"]
        photo = name in photographed and drawing["text"][: len(JPEG)] == JPEG
        if name not in wanted and name != NONE and name not in OF_THE_RANGE and not photo:
            mistake = wrong_field(check, at_field("drawings", -1, name), "no such drawing")
            mistake["known"] = missing


def check_used(check: Checked) -> None:
    """Every feature must be recorded somewhere."""
    rows = check["rows"]
    if len(check["unread"]) > 0:
        return
    used: dict[str, int] = {}
    for change in rows["changes"]:
        used["i" + change["feature"]] = 1
    for item in rows["items"]:
        for cell in item["cells"]:
            used["i" + cell[0]] = 1
    for variant in rows["variants"]:
        for cell in variant["cells"]:
            used["i" + cell[0]] = 1
    for n in range(len(rows["features"])):
        name = rows["features"][n]["id"]
        if name != "" and used.get("i" + name, 0) == 0:
            wrong_field(check, at_field("features", n, "id"), "unused")["said"] = [name]
