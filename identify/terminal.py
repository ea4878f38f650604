"""Identify a piece in the terminal: the same engine, typed answers."""

from pathlib import Path

from identify.core.assess import assess
from identify.core.lists import place_of
from identify.core.look_up import find
from identify.core.reasons import why_not
from identify.core.session import answered, new_session, problem, undone
from identify.core.types.engine import Engine
from identify.core.types.pack import Feature, Pack
from identify.core.types.session import Answer, How, Session
from identify.core.types.view import Question, View
from identify.reference.loading import load_engine

RARE = 0.02  # as on the phone: with less, nobody needs to read it
HELP = """\
Type the number of what you see.
  2?     your best guess is 2       e   something else
  1 3    two or more                c   can't see it
  w      why this question          m   this part is missing
  n 2    why not candidate 2        u   undo
  s      start again                q   stop"""


def run(path: Path, kind: str, text: str) -> int:
    """Ask until the person stops. 1 if there is nothing to ask about."""
    engine = load_engine(path)
    pack = engine["pack"]
    session = new_session(engine)
    if kind and place_of(pack["kinds"], kind) < 0:
        print(f"There is no kind “{kind}”. There are: {', '.join(k['id'] for k in pack['kinds'])}.")
        return 1
    session["scope"]["kind"] = kind
    if text:
        hits = find(engine, text, 5)
        if not hits:
            name = pack["range"]["name"]
            print(f"Nothing in {name} is like “{text}”. Try part of it, or leave out --find.")
            return 1
        item = pack["items"][hits[0]["item"]]
        print(f"{item['number']} {item['name']} ({hits[0]['how']})")
        session["scope"]["items"] = [item["number"]]
    print(HELP)
    while True:
        view = assess(engine, session)
        print()
        print("\n".join(standing(pack, view)))
        if view["question"] is not None:
            print("\n".join(card(pack, view["question"])))
        try:
            line = input("> ").strip()
        except EOFError:
            return 0
        if line == "q":
            return 0
        session = step(engine, session, view, line)


def step(engine: Engine, session: Session, view: View, line: str) -> Session:
    """The session after one typed line; what cannot be done is said and changes nothing."""
    pack = engine["pack"]
    words = line.split()
    if line == "u":
        return undone(session)
    if line == "s":
        return {**session, "answers": [], "missing": []}
    if words[:1] == ["n"]:
        print("\n".join(against(engine, session, view, words[1:])))
        return session
    if view["question"] is None:
        print("There is nothing left to ask. Type u, s or q.")
        return session
    feature = pack["features"][view["question"]["feature"]]
    if line == "w":
        print("\n".join(reasons(feature, view["question"])))
        return session
    answer = typed(feature, words)
    if answer is None or problem(engine, answer):
        count = len(feature["states"])
        print(
            f"“{line}” is not an answer here. Type a number from 1 to {count}, or one of "
            f"these.\n{HELP}"
        )
        return session
    if words == ["m"]:
        if feature["part"] < 0:
            print("This belongs to the piece itself. Type c if you can't see it.")
            return session
        session = {
            **session,
            "missing": [*session["missing"], pack["parts"][feature["part"]]["id"]],
        }
    return answered(session, answer)


def typed(feature: Feature, words: list[str]) -> Answer | None:
    """The answer that was typed, or None."""
    if words in (["c"], ["m"]):
        return {"feature": feature["id"], "how": "cannot", "states": []}
    if words == ["e"]:
        return {"feature": feature["id"], "how": "other", "states": []}
    unsure = len(words) == 1 and words[0].endswith("?")
    states = []
    for word in words:
        number = word.removesuffix("?") if unsure else word
        if not (number.isdecimal() and 1 <= int(number) <= len(feature["states"])):
            return None
        states.append(feature["states"][int(number) - 1]["id"])
    if not states:
        return None
    how: How = "several" if len(states) > 1 else "unsure" if unsure else "sure"
    return {"feature": feature["id"], "how": how, "states": states}


def percent(chance: float) -> str:
    """A chance for reading: never a false 0 or 100."""
    if chance < 0.01:
        return "under 1 %"
    return "over 99 %" if chance > 0.99 else f"{chance:.0%}".replace("%", " %")


def between(first: int, last: int) -> str:
    """1957, or 1957 to 1961; where there are none, that."""
    if not first:
        return "years not recorded"
    return str(first) if first == last else f"{first} to {last}"


def standing(pack: Pack, view: View) -> list[str]:
    """What it is likely to be, when it was made, what was replaced, and why it stops."""
    out = []
    for n, entry in enumerate(view["variants"][:4], 1):
        variant = pack["variants"][entry["variant"]]
        item = pack["items"][variant["item"]]
        made = between(entry["first"], entry["last"])
        name = ", ".join(filter(None, [f"{item['number']} {item['name']}", variant["name"]]))
        out.append(f"  {n}. {percent(entry['chance'])}  {name} ({made})")
    out.append(f"  not in the range: {percent(view['unrecorded'])}")
    if view["years"]["first"]:
        out.append(f"  made {between(view['years']['first'], view['years']['last'])}")
    for suspect in view["parts"]:
        if suspect["how"] in ("probably", "almost certainly"):
            part = pack["parts"][suspect["part"]]
            done = part.get("altered", "replaced")
            chance = percent(suspect["swapped"])
            out.append(f"  {part['name']} {suspect['how']} {done} ({chance})")
    ends = {
        "sure": "That is the one, as far as can be told.",
        "unrecorded": "This piece is not in the range.",
        "nothing": "Nothing left to look at clearly tells these apart.",
        "unseen": "Not enough was seen to tell.",
    }
    if view["stop"]:
        out.append(ends[view["stop"]])
    for would in view["would_tell"] if view["stop"] == "nothing" else []:
        out.append(f"  with {would['needs']}: {pack['features'][would['feature']]['question']}")
    return out


def card(pack: Pack, question: Question) -> list[str]:
    """The question with its states, numbered; "None" only where it is to be expected."""
    feature = pack["features"][question["feature"]]
    out = [feature["question"], f"  ({feature['where']})"]
    for n, state in enumerate(feature["states"]):
        if n != feature["none"] or question["expected"][n] >= RARE:
            out.append(f"  {n + 1}  {state['name']}")
    return out


def reasons(feature: Feature, question: Question) -> list[str]:
    """Why this question: what each answer would leave."""
    out = ["Of all you could look at, this tells you most for the time it takes. If you see:"]
    for group, chance in zip(question["groups"], question["expected"], strict=True):
        state = feature["states"][group["state"]]["name"]
        out.append(f"  {state} ({percent(chance)}): about {group['variants']} left")
    return out


def weight(bits: float) -> str:
    """How much an answer counts, in plain words."""
    if bits >= 4:
        return "counts strongly against it"
    return "counts clearly against it" if bits >= 1.5 else "counts a little against it"


def against(engine: Engine, session: Session, view: View, words: list[str]) -> list[str]:
    """Why not the candidate with this place in the list."""
    pack = engine["pack"]
    shown = view["variants"][:4]
    if not (len(words) == 1 and words[0].isdecimal() and 2 <= int(words[0]) <= len(shown)):
        return [f"Type n and a number from 2 to {len(shown)}."]
    out = []
    for entry in why_not(engine, session, shown[int(words[0]) - 1]["variant"]):
        if entry["bits"] > 0.05:
            feature = pack["features"][entry["feature"]]
            seen = [feature["states"][s]["name"] for s in entry["recorded"]]
            known = " or ".join(seen) if seen else "not recorded"
            out.append(f"  {feature['name']}: {known} ({weight(entry['bits'])})")
    return out or ["  It fits too, but is rarer."]
