"""Small packs with drawn years, states and running changes."""

from hypothesis import strategies as st

from tests.reference.small_pack import changed, small_files

YEARS = ["1950/1953", "1952~/1955", "1954?", "195X", "../1956", "1955/..", "1953-04/1957-10", ""]
CAME = ["", "1951", "1953~", "1954-06", "1955/1957", "195X", "1956?"]
ENDED = ["", "", "1958", "1959-02"]
STATES = {
    "coupling": ["bar", "loop"],
    "horns": ["metal", "plastic", "none"],
    "horn_colour": ["black", "brass"],
    "livery": ["green", "red"],
}
COLUMNS = "id,item,name,years,source,other_years,common,note,coupling,horns,horn_colour,livery"


@st.composite
def changes(draw: st.DrawFn) -> str:
    """One row of changes.csv."""
    feature = draw(st.sampled_from(list(STATES)))
    state = draw(st.sampled_from(STATES[feature]))
    came, ended = draw(st.sampled_from(CAME)), draw(st.sampled_from(ENDED))
    kinds = draw(st.sampled_from(["", "locomotive"]))
    item = draw(st.sampled_from(["", "", "P1"]))
    others = draw(st.sampled_from(["", "book 1955"])) if came else ""
    return f"{feature},{state},{came},{ended},{kinds},{item},cat,{others},"


@st.composite
def variants(draw: st.DrawFn, number: str, place: int) -> str:
    """One row of variants.csv."""
    years = draw(st.sampled_from(YEARS))
    others = draw(st.sampled_from(["", "book 1953/1958"])) if years else ""
    common = draw(st.sampled_from(["1", "0.2", "3"]))
    cells = [
        draw(st.sampled_from(["", "", "?", STATES[feature][0], "|".join(STATES[feature][:2])]))
        if feature == "livery" or number == "P1"
        else ""
        for feature in STATES
    ]
    return f"v{place},{number},Any,{years},cat,{others},{common},,{','.join(cells)}"


@st.composite
def pack_files(draw: st.DrawFn) -> dict[str, str]:
    """The files of a pack without mistakes."""
    numbers = ["P1", "P2", "S 1", *draw(st.lists(st.sampled_from(["P1", "P2"]), max_size=4))]
    files = changed("items.csv", "1950/1957", "../..")
    files["items.csv"] = files["items.csv"].replace("1952/1959", "../..")
    files["items.csv"] = files["items.csv"].replace("1953/1954", "../..").replace("green", "")
    files["variants.csv"] = "\n".join(
        [COLUMNS, *(draw(variants(number, place)) for place, number in enumerate(numbers))]
    )
    drawn = draw(st.lists(changes(), max_size=8))
    usual = small_files()["changes.csv"] + "horns,plastic,1956,,,,cat,,"
    files["changes.csv"] = "\n".join([usual, *drawn])
    return files
