"""A typed amount cut up: figures, words, slashes and dashes."""

from .runs import QUARTERS, end_of, runs_of, sort_at, text_of
from .types.money import Figures, Token
from .types.texts import Run

VULGAR = ["1/4", "1/2", "3/4"]
SHILLINGS = ["S", "SH", "SHILLING", "SHILLINGS", "BOB"]
WORDS_AND_SIGNS = ["letter", "foreign", "sign"]  # what has no use of its own is a word unknown


def parts_thousands(runs: list[Run], at: int, before: int) -> bool:
    """Whether a space or a tick here, after `before` figures, parts thousands: 1 234 or 1'234."""
    after = len(runs[at + 1]["text"]) if sort_at(runs, at + 1) == "figure" else 0
    return len(runs[at]["text"]) == 1 and before <= 3 and after == 3


def figures_at(runs: list[Run], start: int) -> Figures:
    """The figures that begin here; the token keeps its points and parts as typed."""
    groups: list[str] = []
    points: list[str] = []
    end = start
    going = True
    while going:
        group = ""
        if sort_at(runs, end) == "figure":
            group = runs[end]["text"]
            end = end + 1
        groups.append(group)
        after = sort_at(runs, end)
        going = False
        if after == "point":
            going = sort_at(runs, end + 1) == "figure"
        elif after in ["space", "tick"]:
            going = parts_thousands(runs, end, len(group))
        if going:
            points.append(runs[end]["text"] if after == "point" else " ")
            end = end + 1
    quarters = 0
    if sort_at(runs, end) == "quarter":
        quarters = quarters_of(runs[end]["text"])
        end = end + 1
    return {"token": figures_token(groups, points, quarters), "end": end}


def figures_token(groups: list[str], points: list[str], quarters: int) -> Token:
    """A token for a number."""
    return {"sort": "n", "groups": groups, "points": points, "quarters": quarters}


def quarters_of(c: str) -> int:
    """How many quarters one of the fractions ¼, ½ and ¾ is."""
    count = 0
    for i in range(len(QUARTERS)):
        if QUARTERS[i] == c:
            count = i + 1
    return count


def starts_figures(runs: list[Run], at: int) -> bool:
    """Whether a number begins here: at a figure, or at a point with a figure after it that does not
    end an abbreviation (.50 and £.50, but not Fr.50 or 7s.6d).
    """
    if sort_at(runs, at) != "point":
        return sort_at(runs, at) == "figure"
    after_letter = at > 0 and runs[max(0, at - 1)]["sort"] == "letter"
    return sort_at(runs, at + 1) == "figure" and not after_letter


def tokens_of(text: str) -> list[Token]:
    """The tokens of a text."""
    runs = runs_of(text)
    out: list[Token] = []
    at = 0
    while at < len(runs):
        sort = runs[at]["sort"]
        end = at + 1
        if starts_figures(runs, at):
            figures = figures_at(runs, at)
            out.append(figures["token"])
            end = figures["end"]
        elif sort == "quarter":
            out.append(figures_token([""], [], quarters_of(runs[at]["text"])))
        elif sort == "slash":
            out.append({"sort": "/"})
        elif sort == "dash":
            out.append({"sort": "-"})
        elif sort == "tick":
            out.append({"sort": "w", "word": runs[at]["text"]})
        elif sort in WORDS_AND_SIGNS:
            end = end_of(runs, at, WORDS_AND_SIGNS)
            out.append({"sort": "w", "word": text_of(runs, at, end)})
        at = end
    return out


def vulgar_at(tokens: list[Token], at: int) -> int:
    """How many quarters the tokens here spell with a slash (1/2, 1/4, 3/4), 0 for none."""
    if at + 2 >= len(tokens) or tokens[at + 1]["sort"] != "/":
        return 0
    if tokens[at]["sort"] != "n" or tokens[at + 2]["sort"] != "n":
        return 0
    if tokens[at + 2]["quarters"] > 0:
        return 0
    spelt = tokens[at]["groups"][0] + "/" + tokens[at + 2]["groups"][0]
    for i in range(len(VULGAR)):
        if VULGAR[i] == spelt:
            return i + 1
    return 0


def pence_before(tokens: list[Token], at: int) -> bool:
    """Whether the number before this place can only be pence: it comes after a slash or shillings,
    or a D stands after the three tokens here.
    """
    if at + 3 < len(tokens) and tokens[at + 3].get("word", "") == "D":
        return True
    if at < 2:
        return False
    before = tokens[at - 2]
    return before["sort"] == "/" or before.get("word", "") in SHILLINGS


def joined(tokens: list[Token]) -> list[Token]:
    """The tokens with fractions that stand apart joined to their numbers: 7 ½, and 1/11 3/4."""
    out: list[Token] = []
    at = 0
    while at < len(tokens):
        token = tokens[at]
        width = 1
        quarters = 0
        if at > 0 and tokens[max(0, at - 1)]["sort"] == "n" and token["sort"] == "n":
            if token["quarters"] > 0 and token["groups"][0] == "":
                quarters = token["quarters"]
            elif pence_before(tokens, at):
                quarters = vulgar_at(tokens, at)
                width = 3 if quarters > 0 else 1
        if quarters > 0 and out[len(out) - 1]["quarters"] == 0:
            last = out[len(out) - 1]
            out[len(out) - 1] = figures_token(last["groups"], last["points"], quarters)
        else:
            width = 1
            out.append(token)
        at = at + width
    return out
