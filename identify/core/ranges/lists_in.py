"""A collector's own list as items and variants: what its columns are, which state a text means.

Words are compared as in the look-up (a slip or an abbreviation is forgiven). A text means the state
that it fits best, where it fits well and no other one nearly as well.
"""

from ..look_up import count_figures, word_score, words
from ..types.lists_in import (
    Choice,
    ColumnUse,
    LineRead,
    ListedItem,
    ListedVariant,
    ListField,
    LookedAt,
    StatesSeen,
)
from .cells import stripped
from .splitting import at_place

# how well a text must fit, and by how much better than the next one: design figures, no source
FIT_LEAST = 0.65
AHEAD = 0.05
CELLS_LEAST = 0.9  # the share of the cells that must mean a state where the heading names none
LOOKED = 60  # cells looked at for that
EMPTY_WORDS = ["THE", "A", "AN", "OF", "WITH", "AND", "IN", "ON", "IT", "IS"]
NOTHING = ["NO", "NONE", "WITHOUT", "NOT", "NEVER"]
# what pieces of the kit's kinds are called besides: common practice, no source
WORDS_FOR_KINDS: dict[str, list[str]] = {
    "locomotive": ["LOCOMOTIVE", "LOCO", "ENGINE", "SHUNTER", "DIESEL", "RAILCAR"],
    "coach": ["COACH", "CARRIAGE", "SALOON", "SLEEPER"],
    "wagon": ["WAGON", "VAN", "TRUCK", "HOPPER", "TANKER"],
    "set": ["SET"],
}
AS_WRITTEN = ["number", "name", "variant", "years", "source", "note"]
HEADINGS: list[list[str]] = [
    ["number", "number", "no", "nr", "num", "cat no", "catalogue number", "catalogue no", "ref",
     "reference", "item no", "item number", "stock number", "code", "item"],
    ["name", "name", "description", "title", "model", "piece", "what", "locomotive", "subject"],
    ["kind", "kind", "sort", "category", "class", "group", "type of piece"],
    ["variant", "variant", "version", "variation", "edition", "sub type", "variety"],
    ["years", "years", "year", "made", "date", "dates", "produced", "production", "issued",
     "introduced", "from"],
    ["source", "source", "catalogue", "book", "who says so", "where from", "said by"],
    ["note", "note", "notes", "remark", "remarks", "comment", "comments", "details", "other"],
    ["carried", "running number", "running numbers", "fleet number", "printed on it", "lettering",
     "loco number", "name carried"],
]  # fmt: skip


def telling_words(text: str) -> list[str]:
    """The words of a text without those that say nothing, unless there are no others."""
    all_words = words(text)
    kept = [word for word in all_words if word not in EMPTY_WORDS]
    return kept if len(kept) > 0 else all_words


def singular(word: str) -> str:
    """A word without the s of several."""
    end = len(word) - 1
    if len(word) > 3 and word[end:] == "S":
        return word[0:end]
    return word


def word_fit(asked: str, word: str) -> float:
    """How well one word fits another, 0 to 1; one of several fits several."""
    typed = singular(asked)
    written = singular(word)
    return word_score(typed, written, count_figures(typed), count_figures(written))


def text_fit(asked: list[str], known: list[str]) -> float:
    """How well the words of a text fit those of another: most of what is asked must be there."""
    if len(asked) == 0 or len(known) == 0:
        return 0.0
    fits = 0.0
    for word in asked:
        best = 0.0
        for other in known:
            best = max(best, word_fit(word, other))
        fits = fits + best
    here = fits / len(asked)
    there = min(1.0, fits / len(known))
    return 0.8 * here + 0.2 * there


def fit_of(asked: list[str], choice: Choice) -> float:
    """How well words fit what a choice is called, by the name that fits best."""
    best = 0.0
    for text in choice["texts"]:
        best = max(best, text_fit(asked, telling_words(text)))
    return best


def meant(text: str, choices: list[Choice]) -> str:
    """The id of what a text means; "" where it fits none, or two alike."""
    asked = telling_words(text)
    best = 0.0
    second = 0.0
    ident = ""
    for choice in choices:
        if choice["id"] == "none" and len(asked) == 1 and asked[0] in NOTHING:
            return "none"
        fit = fit_of(asked, choice)
        if fit > best:
            second = best
            best = fit
            ident = choice["id"]
        elif fit > second:
            second = fit
    return ident if best >= FIT_LEAST and best - second >= AHEAD else ""


def parts_between(text: str, marks: str) -> list[str]:
    """The parts of a text between signs of these, or between "or", without blanks around them;
    no empty ones.
    """
    out: list[str] = []
    part = ""
    for n in range(len(text)):
        c = text[n : n + 1]
        between = c in marks or (c == " " and text[n : n + 4] == " or ")
        if between and stripped(part) != "":
            out.append(stripped(part))
        part = "" if between else part + c
    if stripped(part) != "":
        out.append(without_or(stripped(part)))
    return [without_or(piece) for piece in out]


def without_or(text: str) -> str:
    """A part of a text without the "or" that it begins with."""
    return text[3:] if text[0:3] == "or " else text


def called_just(text: str, choices: list[Choice]) -> str:
    """The id of the choice that is called just like that, capitals and signs aside."""
    asked = words(text)
    ident = ""
    for choice in choices:
        for known in choice["texts"]:
            own = words(known)
            same = len(own) == len(asked) and len(asked) > 0
            for n in range(len(own)):
                same = same and own[n] == asked[n]
            if same and ident == "":
                ident = choice["id"]
    return ident


def states_meant(text: str, states: list[Choice]) -> list[str]:
    """The states that a cell means: one, or those of "red or green"; empty where one is unread."""
    if text == "?":
        return ["?"]
    exact = called_just(text, states)
    if exact != "":
        return [exact]
    out: list[str] = []
    unread = 0
    for part in parts_between(text, "/|;,"):
        exact = called_just(part, states)
        state = exact if exact != "" else meant(part, states)
        if state == "":
            unread = unread + 1
        elif state not in out:
            out.append(state)
    if unread == 0 and len(out) > 0:
        return out
    whole = meant(text, states)
    return [whole] if whole != "" and len(out) < 2 else []


def heading_field(heading: str) -> ListField:
    """The field that a heading names; "" for none."""
    asked = words(heading)
    best = 0.0
    field: ListField = ""
    for named in HEADINGS:
        for known in named[1:]:
            own = words(known)
            fit = text_fit(asked, own)
            if len(asked) == len(own) and fit > best and fit >= 0.8:
                best = fit
                field = named[0]  # type: ignore[assignment]
    return field


def share_meant(cells: list[str], states: list[Choice]) -> float:
    """The share of the cells that mean one of these states."""
    looked = 0
    known = 0
    for text in cells:
        if text != "" and looked < LOOKED:
            looked = looked + 1
            if len(states_meant(text, states)) > 0:
                known = known + 1
    return known / looked if looked > 0 else 0.0


def feature_of_column(heading: str, cells: list[str], features: list[LookedAt]) -> ColumnUse:
    """The feature that a column is of: by its heading, or by its cells where these can be of no
    other one.
    """
    out: ColumnUse = {"field": "", "feature": "", "states": [], "sure": 0.0}
    asked = telling_words(heading)
    able = 0
    named_so = False
    for feature in features:
        called = 0.0
        for text in feature["texts"]:
            called = max(called, text_fit(asked, telling_words(text)))
        share = share_meant(cells, feature["states"])
        able = able + 1 if share >= 0.5 else able
        named = called >= FIT_LEAST
        sure = 0.6 * called + 0.4 * share if named else 0.5 * share
        if share > 0 and sure > out["sure"] and (named or share >= CELLS_LEAST):
            named_so = named
            out = {
                "field": "seen", "feature": feature["id"], "states": feature["states"],
                "sure": sure,
            }  # fmt: skip
    if not named_so and able > 1:
        out = {"field": "", "feature": "", "states": [], "sure": 0.0}
    return out


def column_uses(
    headings: list[str], lines: list[list[str]], features: list[LookedAt], kinds: list[Choice]
) -> list[ColumnUse]:
    """What each column of a list seems to be; each field but `seen` once, each feature once."""
    out: list[ColumnUse] = []
    used: dict[str, int] = {}
    for place in range(len(headings)):
        cells = [line[place] if place < len(line) else "" for line in lines]
        field = heading_field(headings[place])
        use: ColumnUse = {"field": field, "feature": "", "states": [], "sure": 0.9}
        if field == "" or at_place(used, field) >= 0:
            use = feature_of_column(headings[place], cells, features)
            if use["feature"] != "" and at_place(used, "f" + use["feature"]) >= 0:
                use = {"field": "", "feature": "", "states": [], "sure": 0.0}
        if use["field"] == "kind":
            use["states"] = kinds
        if use["field"] == "seen":
            used["if" + use["feature"]] = 1
        elif use["field"] != "":
            used["i" + use["field"]] = 1
        out.append(use)
    return out


def kind_in_name(name: str, kinds: list[Choice]) -> str:
    """The kind that the name of an item names; "" for none, or several."""
    kinds_named: list[str] = []
    asked = words(name)
    for kind in kinds:
        named = any_fits(WORDS_FOR_KINDS.get(kind["id"], []), asked)
        for text in kind["texts"]:
            own = words(text)
            named = named or (len(own) == 1 and any_fits(own, asked))
        if named:
            kinds_named.append(kind["id"])
    return kinds_named[0] if len(kinds_named) == 1 else ""


def any_fits(named: list[str], asked: list[str]) -> bool:
    """Whether one of these words is one of those, or several of it."""
    for word in named:
        for other in asked:
            if singular(other) == singular(word):
                return True
    return False


def read_line(cells: list[str], line: int, columns: list[ColumnUse]) -> LineRead:
    """What a row says, by what its columns are."""
    out: LineRead = {
        "line": line, "number": "", "name": "", "kind": "", "variant": "", "years": "",
        "source": "", "note": "", "carried": [], "seen": [], "unread": [],
    }  # fmt: skip
    for place in range(len(columns)):
        use = columns[place]
        text = stripped(cells[place]) if place < len(cells) else ""
        field = use["field"]
        if text != "" and field == "seen":
            states = states_meant(text, use["states"])
            if len(states) > 0:
                out["seen"].append([use["feature"], states])
            else:
                out["unread"].append({"column": place, "text": text})
        elif text != "" and field == "kind":
            kind = meant(text, use["states"])
            out["kind"] = kind
            if kind == "":
                out["unread"].append({"column": place, "text": text})
        elif text != "" and field == "carried":
            out["carried"] = parts_between(text, ";,/")
        elif text != "" and field in AS_WRITTEN:
            out[field] = text  # type: ignore[typeddict-unknown-key]
    return out


def read_lines(lines: list[list[str]], columns: list[ColumnUse]) -> list[LineRead]:
    """What the rows of a list say. A row without a number and name is of the item above it where
    it says something else; an empty one says nothing.
    """
    out: list[LineRead] = []
    for place in range(len(lines)):
        read = read_line(lines[place], place, columns)
        says = read["variant"] != "" or len(read["seen"]) > 0 or read["years"] != ""
        if read["number"] == "" and read["name"] == "" and says and len(out) > 0:
            above = out[len(out) - 1]
            read["number"] = above["number"]
            read["name"] = above["name"]
            read["kind"] = above["kind"]
        if read["number"] != "" or read["name"] != "":
            out.append(read)
    return out


def same_states(first: StatesSeen, second: StatesSeen) -> bool:
    """Whether two say the same states of the same feature."""
    if first[0] != second[0] or len(first[1]) != len(second[1]):
        return False
    for state in first[1]:
        if state not in second[1]:
            return False
    return True


def is_said(seen: StatesSeen, read: LineRead) -> bool:
    """Whether a row says this too."""
    for other in read["seen"]:
        if same_states(seen, other):
            return True
    return False


def said_of_all(reads: list[LineRead]) -> list[StatesSeen]:
    """What all of these rows say is seen."""
    out: list[StatesSeen] = []
    for seen in reads[0]["seen"]:
        count = 0
        for read in reads:
            if is_said(seen, read):
                count = count + 1
        if count == len(reads):
            out.append(seen)
    return out


def first_said(texts: list[str]) -> str:
    """The first of these that is not empty."""
    for text in texts:
        if text != "":
            return text
    return ""


def said_by_all(texts: list[str]) -> str:
    """What all of these say; "" where they differ."""
    for text in texts:
        if text != texts[0]:
            return ""
    return texts[0]


def listed_item(reads: list[LineRead]) -> ListedItem:
    """The item of the rows of one number: what all say is the item's, what differs a variant's."""
    alone = len(reads) == 1
    years = said_by_all([row["years"] for row in reads])
    note = said_by_all([row["note"] for row in reads])
    seen = said_of_all(reads)
    out: ListedItem = {
        "lines": [row["line"] for row in reads], "number": reads[0]["number"],
        "name": first_said([row["name"] for row in reads]),
        "kind": first_said([row["kind"] for row in reads]),
        "years": years, "source": first_said([row["source"] for row in reads]), "note": note,
        "carried": reads[0]["carried"], "seen": seen, "variants": [],
    }  # fmt: skip
    for read in reads:
        own = [state for state in read["seen"] if not alone and not_in(state, seen)]
        name = read["variant"]
        if name == "" and read["name"] != out["name"]:
            name = read["name"]
        variant: ListedVariant = {
            "line": read["line"], "name": name, "years": read["years"] if years == "" else "",
            "note": read["note"] if note == "" else "", "seen": own,
        }  # fmt: skip
        out["variants"].append(variant)
    return out


def not_in(seen: StatesSeen, others: list[StatesSeen]) -> bool:
    """Whether none of these says the same."""
    for other in others:
        if same_states(seen, other):
            return False
    return True


def listed_items(reads: list[LineRead]) -> list[ListedItem]:
    """The items of a list, in its order; rows of one number are variants of one item. A row
    without a number is an item of its own unless another one has its name.
    """
    groups: list[list[LineRead]] = []
    places: dict[str, int] = {}
    for read in reads:
        called = "n" + read["number"] if read["number"] != "" else "w" + read["name"]
        place = at_place(places, called)
        if place < 0:
            places["i" + called] = len(groups)
            groups.append([read])
        else:
            groups[place].append(read)
    return [listed_item(group) for group in groups]
