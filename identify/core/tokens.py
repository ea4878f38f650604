"""A typed amount cut up: figures, words, slashes and dashes."""

from .types.money import Figures, Token

FIGURES = "0123456789"
SPACES = [" ", "\t", "\u00a0", "\u2009", "\u202f"]
DASHES = ["-", "\u2010", "\u2011", "\u2012", "\u2013", "\u2014", "\u2212", "="]  # 10/= is 10/-
TICKS = ["'", "\u2019"]  # part thousands in Switzerland
QUARTERS = ["¼", "½", "¾"]
VULGAR = ["1/4", "1/2", "3/4"]
SHILLINGS = ["S", "SH", "SHILLING", "SHILLINGS", "BOB"]


def sort_of(c: str) -> str:
    """What a character is: figure, space, point, tick, slash, dash, quarter or letter.

    Whatever has no use of its own is a letter: it makes a word that nothing knows.
    """
    if c in FIGURES:
        return "figure"
    if c in SPACES:
        return "space"
    if c in [".", ","]:
        return "point"
    if c in TICKS:
        return "tick"
    if c in DASHES:
        return "dash"
    if c in QUARTERS:
        return "quarter"
    return "slash" if c == "/" else "letter"


def sorts_of(text: str) -> list[str]:
    """What every character of a text is, and a space at the end."""
    out: list[str] = []
    for c in text:
        out.append(sort_of(c))
    out.append("space")
    return out


def run_of(sorts: list[str], start: int, sort: str) -> int:
    """Where the characters of this sort that begin at `start` end."""
    end = start
    while end < len(sorts) and sorts[end] == sort:
        end = end + 1
    return end


def parts_thousands(sorts: list[str], at: int, before: int) -> bool:
    """Whether a space or a tick here, after `before` figures, parts thousands: 1 234 or 1'234."""
    return before <= 3 and run_of(sorts, at + 1, "figure") == at + 4


def figures_at(text: str, sorts: list[str], start: int) -> Figures:
    """The figures that begin here: {token, end}; a token keeps its points and parts as typed."""
    groups: list[str] = []
    points: list[str] = []
    at = start
    going = True
    while going:
        end = run_of(sorts, at, "figure")
        groups.append(text[at:end])
        going = False
        if sorts[end] == "point":
            going = sorts[end + 1] == "figure"
        elif sorts[end] in ["space", "tick"]:
            going = parts_thousands(sorts, end, end - at)
        if going:
            points.append(text[end] if sorts[end] == "point" else " ")
            at = end + 1
    quarters = 0
    if sorts[end] == "quarter":
        quarters = quarters_of(text[end])
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


def starts_figures(text: str, sorts: list[str], at: int) -> bool:
    """Whether a number begins here: at a figure, or at a point with a figure after it that does not
    end an abbreviation (.50 and £.50, but not Fr.50 or 7s.6d).
    """
    if sorts[at] != "point":
        return sorts[at] == "figure"
    after_letter = at > 0 and "A" <= text[max(0, at - 1)] <= "Z"
    return sorts[at + 1] == "figure" and not after_letter


def tokens_of(text: str) -> list[Token]:
    """The tokens of a text in capitals: {sort: "n", groups, points, quarters} for a number (a bare
    fraction has the group ""), {sort: "w", word} for a word or a sign, {sort: "/"}, {sort: "-"}.
    """
    sorts = sorts_of(text)
    out: list[Token] = []
    at = 0
    while at < len(sorts):
        end = at + 1
        if starts_figures(text, sorts, at):
            found = figures_at(text, sorts, at)
            out.append(found["token"])
            end = found["end"]
        elif sorts[at] == "quarter":
            out.append(figures_token([""], [], quarters_of(text[at])))
        elif sorts[at] == "slash":
            out.append({"sort": "/"})
        elif sorts[at] == "dash":
            end = run_of(sorts, at, "dash")
            out.append({"sort": "-"})
        elif sorts[at] in ["letter", "tick"]:
            end = max(end, run_of(sorts, at, "letter"))
            out.append({"sort": "w", "word": text[at:end]})
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
