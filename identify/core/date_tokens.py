"""The words, figures and signs of a date in English, German, French and Dutch.

Which words people use is common practice, no source.
"""

from typing import Any

from .runs import WORD, end_of, runs_of, sort_at, text_of
from .types.dates import DateToken, PhraseEnd
from .types.texts import Run

# role, value, words
DATE_WORDS: list[list[Any]] = [
    ["month", 1, "JANUARY JAN JANUAR JÄNNER JANVIER JANV JANUARI"],
    ["month", 2, "FEBRUARY FEB FEBRUAR FEBR FÉVRIER FEVRIER FÉVR FEVR FEBRUARI"],
    ["month", 3, "MARCH MAR MÄRZ MAERZ MRZ MARS MAART MRT"],
    ["month", 4, "APRIL APR AVRIL AVR"],
    ["month", 5, "MAY MAI MEI"],
    ["month", 6, "JUNE JUN JUNI JUIN"],
    ["month", 7, "JULY JUL JULI JUILLET JUIL"],
    ["month", 8, "AUGUST AUG AOÛT AOUT AUGUSTUS"],
    ["month", 9, "SEPTEMBER SEP SEPT SEPTEMBRE"],
    ["month", 10, "OCTOBER OCT OKTOBER OKT OCTOBRE"],
    ["month", 11, "NOVEMBER NOV NOVEMBRE"],
    ["month", 12, "DECEMBER DEC DEZEMBER DEZ DÉCEMBRE DECEMBRE DÉC"],
    ["month", 12, "CHRISTMAS XMAS WEIHNACHTEN NOËL NOEL KERST"],
    ["season", 21, "SPRING FRÜHLING FRÜHJAHR PRINTEMPS VOORJAAR LENTE"],
    ["season", 22, "SUMMER SOMMER ÉTÉ ETE ZOMER"],
    ["season", 23, "AUTUMN FALL HERBST AUTOMNE HERFST NAJAAR"],
    ["season", 24, "WINTER HIVER"],
    ["part", 1, "EARLY ANFANG DÉBUT DEBUT BEGIN BEGINNING"],
    ["part", 2, "MID MIDDLE MITTE MILIEU MIDDEN"],
    ["part", 3, "LATE END ENDE FIN EIND"],
    ["tens", 1920, "TWENTIES"], ["tens", 1930, "THIRTIES"], ["tens", 1940, "FORTIES"],
    ["tens", 1950, "FIFTIES"], ["tens", 1960, "SIXTIES"], ["tens", 1970, "SEVENTIES"],
    ["tens", 1980, "EIGHTIES"], ["tens", 1990, "NINETIES"],
    ["decade", 0, "S ER"],  # 1950s, 50er
    ["years", 0, "ANNÉES ANNEES JAREN JAHRE"],  # années 50, jaren 50, 50er Jahre
    ["x", 0, "X"],
    ["war", 0, "WAR WARTIME"],
    ["about", 0, "C CA CIRCA ABOUT AROUND APPROX APPROXIMATELY ROUGHLY ISH UM ETWA VERS ENVIRON"],
    ["about", 0, "ONGEVEER"],
    ["doubt", 0, "PERHAPS POSSIBLY PROBABLY MAYBE UNCERTAIN"],
    ["before", 0, "BEFORE PRE VOR AVANT VOOR"],
    ["until", 0, "UNTIL TILL BY"],
    ["after", 0, "AFTER POST NACH APRÈS NA"],
    ["since", 0, "SINCE SEIT AB DEPUIS SINDS VANAF"],
    ["from", 0, "FROM VON VAN"],
    ["between", 0, "BETWEEN ZWISCHEN ENTRE TUSSEN"],
    ["to", 0, "TO BIS À TOT"],
    ["or", 0, "AND OR UND ODER ET OU &"],
    ["of", 0, "OF EN"],  # English "of", Dutch "or"; French "in", Dutch "and"
    ["later", 0, "ON ONWARDS ONWARD +"],
    ["skip", 0, "THE IN DE DEN DER DES IM AM LE LES CATALOGUE CATALOG KATALOG"],
]  # fmt: skip
CATALOGUES = "CATALOGUE CATALOG KATALOG"
# several words that are one, and their role
PHRASES: list[list[str]] = [
    ["until", "NOT LATER THAN", "NO LATER THAN", "NOT AFTER", "UP TO", "UP UNTIL", "JUSQU EN"],
    ["since", "NOT EARLIER THAN", "NO EARLIER THAN", "NOT BEFORE", "À PARTIR DE"],
    ["before", "EARLIER THAN", "PRIOR TO"],
    ["after", "LATER THAN"],
    ["earlier", "OR EARLIER", "AND EARLIER", "OR BEFORE", "AT THE LATEST"],
    ["later", "OR LATER", "AND LATER", "OR AFTER", "AT THE EARLIEST"],
    ["about", "OR SO"],
    ["between", "FROM BETWEEN"],
]  # fmt: skip
LONGEST_PHRASE = 4
ORDINALS = " ST ND RD TH E TE "  # after a figure
NOT_BEFORE_DASH = ["part", "about", "before", "until", "after", "since", "from", "between"]
PARTS_OF_PHRASE = ["letter", "foreign", "space", "tick"]


def token_of(role: str, value: int, text: str) -> DateToken:
    """A token."""
    return {"role": role, "value": value, "text": text}


def has_word(words: str, word: str) -> bool:
    """Whether this is one of these words with spaces between them."""
    return " " + word + " " in " " + words + " "


def word_token(word: str) -> DateToken:
    """The token for a word, or for a sign that stands for one; role "other" where none is known."""
    for known in DATE_WORDS:
        if has_word(known[2], word):
            return token_of(known[0], known[1], word)
    return token_of("other", 0, word)


def numbers_a_catalogue(token: DateToken, runs: list[Run], end: int) -> bool:
    """Whether it is a catalogue with its number behind it: "catalogue 12" says no year."""
    if not has_word(CATALOGUES, token["text"]):
        return False
    at = end + 1 if sort_at(runs, end) == "space" else end
    return sort_at(runs, at) == "figure" and len(runs[at]["text"]) < 4


def starts_time(runs: list[Run], at: int) -> bool:
    """Whether the time of a day begins here: figures and a colon, with or without a T before."""
    if sort_at(runs, at) == "letter":
        return runs[at]["text"] == "T" and starts_time(runs, at + 1)
    return sort_at(runs, at) == "figure" and at + 1 < len(runs) and runs[at + 1]["text"] == ":"


def compact(runs: list[Run], at: int) -> bool:
    """Whether the sign here has no space on either side, and something on both."""
    after = sort_at(runs, at + 1)
    return at > 0 and runs[max(0, at - 1)]["sort"] != "space" and after not in ["", "space"]


def sign_token(runs: list[Run], at: int) -> DateToken:
    """The token for what is neither a word nor a figure; role "skip" where it says nothing."""
    sort = runs[at]["sort"]
    text = runs[at]["text"]
    if sort == "dash":
        return token_of("-" if compact(runs, at) else "to", 0, "-")
    if sort == "slash":
        return token_of("/", 0, "/")
    if text == ".":
        between = compact(runs, at) and runs[max(0, at - 1)]["sort"] == "figure"
        return token_of("." if between and sort_at(runs, at + 1) == "figure" else "skip", 0, ".")
    if text == "~":
        return token_of("about", 0, text)
    if text == "?":
        return token_of("doubt", 0, text)
    if sort in ["space", "tick", "point"] or text in '()";:':
        return token_of("skip", 0, text)
    return word_token(text)


def phrase_at(runs: list[Run], start: int) -> PhraseEnd:
    """The role of the longest phrase that begins here, "" for none, and where it ends."""
    longest: PhraseEnd = {"role": "", "end": start}
    said = ""
    at = start
    count = 0
    while count < LONGEST_PHRASE and sort_at(runs, at) in PARTS_OF_PHRASE:
        end = at + 1
        if runs[at]["sort"] in WORD:
            end = end_of(runs, at, WORD)
            said = said + ("" if said == "" else " ") + text_of(runs, at, end)
            count = count + 1
            for phrase in PHRASES:
                if said in phrase:
                    longest = {"role": phrase[0], "end": end}
        at = end
    return longest


def date_tokens(text: str) -> list[DateToken]:
    """The tokens of a text; words and signs that say nothing are left out."""
    runs = runs_of(text)
    out: list[DateToken] = []
    at = 0
    while at < len(runs):
        phrase = phrase_at(runs, at)
        before = out[len(out) - 1]["role"] if len(out) > 0 else ""
        end = at + 1
        token = token_of("n", 0, runs[at]["text"])
        if phrase["role"] != "":
            end = phrase["end"]
            token = token_of(phrase["role"], 0, text_of(runs, at, end))
        elif runs[at]["sort"] in WORD:
            end = end_of(runs, at, WORD)
            token = word_token(text_of(runs, at, end))
            if has_word(ORDINALS, token["text"]) and at > 0 and sort_at(runs, at - 1) == "figure":
                token["role"] = "skip"
            elif numbers_a_catalogue(token, runs, end):
                token["role"] = "other"
        elif runs[at]["sort"] != "figure":
            token = sign_token(runs, at)
        if before != "" and starts_time(runs, at):
            end = len(runs)
        elif token["text"] in ["PREWAR", "POSTWAR"]:
            out.append(token_of("before" if token["text"] == "PREWAR" else "after", 0, ""))
            out.append(token_of("war", 0, "WAR"))
        elif token["role"] != "skip" and (token["role"] != "-" or before not in NOT_BEFORE_DASH):
            out.append(token)
        at = end
    return out
