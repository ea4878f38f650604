"""Reading money as people type it: £4, 4.50, 4,50 €, 12/6, 27/6d, £1 7s 6d, 5 gns, 1/11¾.

The shape of a text is its tokens in one letter each: n a number, / and - themselves, s d g p for
shillings, old pence, guineas and the small unit of a currency. SHAPES says what the numbers of a
shape count.
"""

from .currencies import digits_of, is_small, meant, written_as
from .money import GUINEA, OLD_PENNY, OLD_POUND, SHILLING, WHOLE, money_of, scale_of
from .tokens import SHILLINGS, joined, tokens_of, vulgar_at
from .types.money import Decimal, MoneyProblem, ReadMoney, Shape, Token

# shape, what its numbers count (N the currency itself, P its small unit, L S D G pounds, shillings,
# old pence and guineas), and whether a currency must be written there, must not, or may
SHAPES = [
    ["n", "N", "may"], ["n-", "N", "may"], ["np", "P", "no"], ["nnp", "NP", "must"],
    ["nd", "D", "no"], ["ns", "S", "no"], ["nsnd", "SD", "no"], ["nsn", "SD", "no"],
    ["n/n", "SD", "no"], ["n/nd", "SD", "no"], ["n/-", "S", "no"],
    ["-/n", "D", "no"], ["-/nd", "D", "no"], ["ng", "G", "no"],
    ["nns", "LS", "must"], ["nnd", "LD", "must"], ["nnsnd", "LSD", "must"],
    ["nnsn", "LSD", "must"], ["nnn", "LSD", "must"],
    ["nn/n", "LSD", "must"], ["nn/nd", "LSD", "must"], ["nn/-", "LS", "must"],
    ["n/n/n", "LSD", "may"], ["n/n/nd", "LSD", "may"], ["n/n/-", "LS", "may"],
    ["n/-/n", "LD", "may"], ["n/-/-", "L", "may"],
    ["n-n-n", "LSD", "may"], ["n-n-nd", "LSD", "may"],
]  # fmt: skip
GUINEAS = ["GN", "GNS", "GUINEA", "GUINEAS"]
HALF_CROWN = ["HALF A CROWN ", "HALF CROWN "]
LONGEST = 9  # figures before the point


def refused(problem: MoneyProblem) -> ReadMoney:
    """No money, and why."""
    return {"money": None, "problem": problem}


def read_money(text: str, usual: str) -> ReadMoney:
    """Money from a typed text, or what is wrong with it. usual: the currency that is meant where
    none is written. Old money is sterling, whatever is usual.
    """
    tokens = joined(tokens_of(text))
    if len(tokens) == 0:
        return refused("empty")
    if spelt_out(tokens) in HALF_CROWN:
        return {"money": money_of(30 * OLD_PENNY, "GBP", text), "problem": ""}
    seen = shape_of(tokens, usual)
    if seen["problem"] != "":
        return refused(seen["problem"])
    if len(seen["numbers"]) == 0:
        return refused("amount")
    counts = counts_of(tokens, seen)
    if counts == "":
        return refused("ambiguous")
    currency = seen["currency"] if seen["currency"] != "" else usual
    if counts not in ["N", "P", "NP"]:
        if seen["currency"] not in ["", "GBP"]:
            return refused("mixed")
        currency = "GBP"
    if digits_of(currency) < 0:
        return refused("currency")
    return added_up(seen["numbers"], counts, currency, text)


def spelt_out(tokens: list[Token]) -> str:
    """The words of a text that has nothing but words and dashes, each with a space after it."""
    out = ""
    for token in tokens:
        if token["sort"] == "w":
            out = out + token["word"] + " "
        elif token["sort"] != "-":
            return ""
    return out


def unit_of(word: str, shape: str) -> str:
    """What a word counts: s, d, g or p; "" where it is no unit. Pence after shillings are old."""
    if word in SHILLINGS:
        return "s"
    if word in GUINEAS:
        return "g"
    if word == "D" or (word in ["PENCE", "PENNY"] and "s" in shape):
        return "d"
    return "p" if is_small(word) else ""


def shape_of(tokens: list[Token], usual: str) -> Shape:
    """What a typed amount looks like."""
    shape = ""
    numbers: list[Token] = []
    marked = 0
    codes: list[str] = []
    problem: MoneyProblem = ""
    for token in tokens:
        if token["sort"] == "n":
            numbers.append(token)
            shape = shape + "n"
        elif token["sort"] != "w":
            shape = shape + token["sort"]
        elif token["word"] not in ["AND", "&"]:
            unit = unit_of(token["word"], shape)
            shape = shape + unit
            if unit in ["", "p"]:
                could = written_as(token["word"], "small" if unit == "p" else "marks")
                codes.append(meant(could, usual))
                marked = marked + (0 if unit == "p" else 1)
                if len(could) == 0:
                    problem = "word"
    if problem == "" and "" in codes:
        problem = "which"
    elif problem == "" and len([code for code in codes if code != codes[0]]) > 0:
        problem = "mixed"
    return {
        "shape": shape,
        "numbers": numbers,
        "marked": marked,
        "currency": codes[0] if len(codes) > 0 else "",
        "problem": problem,
    }


def counts_of(tokens: list[Token], seen: Shape) -> str:
    """What each number counts, one letter each as in SHAPES; "" where that is not clear."""
    if seen["shape"] in ["nn/n", "n/nd"]:  # £7 1/2 and 1/2d can mean a half too
        for at in range(len(tokens)):
            if vulgar_at(tokens, at) > 0:
                return ""
    for known in SHAPES:
        if known[0] == seen["shape"]:
            written = "must" if seen["marked"] > 0 else "no"
            return known[1] if known[2] in ["may", written] else ""
    return ""


def size_of(count: str, currency: str) -> int:
    """How many 48ths of the minor unit one of what a number counts is."""
    if count == "L":
        return OLD_POUND
    if count == "S":
        return SHILLING
    if count == "D":
        return OLD_PENNY
    if count == "G":
        return GUINEA
    return WHOLE if count == "P" else WHOLE * scale_of(digits_of(currency))


def most_of(count: str) -> int:
    """The most that a number may be beside a larger unit."""
    if count == "S":
        return 19
    return 11 if count == "D" else 99


def added_up(numbers: list[Token], counts: str, currency: str, typed: str) -> ReadMoney:
    """The money that these numbers make together, or the problem with them."""
    value = 0
    for i in range(len(numbers)):
        figures = figures_in(numbers[i])
        quarters = numbers[i]["quarters"]
        size = size_of(counts[i], currency)
        if figures["problem"] != "":
            return refused(figures["problem"])
        if quarters > 0 and (counts[i] not in ["D", "G", "P"] or currency != "GBP"):
            return refused("ambiguous")
        decimals = len(figures["decimals"])
        if decimals > (digits_of(currency) if counts == "N" else 0):
            return refused("decimals")
        if len(figures["whole"]) > LONGEST:
            return refused("large")
        if i > 0 and int(figures["whole"]) > most_of(counts[i]):
            return refused("parts")
        value = value + size * int(figures["whole"]) + size * quarters // 4
        if decimals > 0:
            value = value + size * int(figures["decimals"]) // scale_of(decimals)
    return {"money": money_of(value, currency, typed), "problem": ""}


def figures_in(token: Token) -> Decimal:
    """A number's figures.

    The last point or comma is the decimal one, unless it comes more than once or three figures
    follow. A comma before three figures parts thousands; a point there may be either.
    """
    groups = token["groups"]
    points = token["points"]
    count = len(points)
    if count == 0:
        return {"whole": groups[0] if groups[0] != "" else "0", "decimals": "", "problem": ""}
    last = points[count - 1]
    tail = groups[count]
    once = last not in points[0 : count - 1]
    decimals = ""
    if last != " " and once and (count > 1 or len(tail) != 3):
        decimals = tail
        groups = groups[0:count]
        points = points[0 : count - 1]
    clear = token["points"][0] != "." or count > 1 or decimals != ""
    whole = groups[0] if groups[0] != "" else "0"
    if len(points) > 0:
        clear = clear and len(groups[0]) <= 3 and whole[0] != "0"
        for n in range(len(points)):
            clear = clear and len(groups[n + 1]) == 3 and points[n] == points[0]
            whole = whole + groups[n + 1]
    return {"whole": whole, "decimals": decimals, "problem": "" if clear else "ambiguous"}
