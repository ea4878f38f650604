"""A session: the answers given about one piece, and where it stands after a pack update."""

from .lists import place_of, plus
from .types.engine import Engine
from .types.session import Answer, AnswerProblem, Dropped, Mended, Session

KIND_ASKED = "kind"  # the feature that every range has (KIND of ranges/words.py)


def new_session(engine: Engine) -> Session:
    """A session with no answer, over the whole pack."""
    return {
        "pack": engine["pack"]["id"],
        "version": engine["pack"]["version"],
        "scope": {"kind": "", "items": []},
        "able": [],
        "missing": [],
        "answers": [],
    }


def answers_with_kind(engine: Engine, session: Session) -> list[Answer]:
    """The answers, and after them the kind that the search is limited to: whoever says it says
    what kind of piece it is, and is not asked again.
    """
    answers = session["answers"]
    features = engine["pack"]["features"]
    kind = session["scope"]["kind"]
    place = place_of(features, KIND_ASKED)
    if place < 0 or place_of(features[place]["states"], kind) < 0:
        return answers
    if len([answer for answer in answers if answer["feature"] == KIND_ASKED]) > 0:
        return answers
    tile: Answer = {"feature": KIND_ASKED, "how": "sure", "states": [kind]}
    return plus(answers, tile)


def with_answers(session: Session, answers: list[Answer]) -> Session:
    """The same session with other answers; the old one is left as it was."""
    return {
        "pack": session["pack"],
        "version": session["version"],
        "scope": session["scope"],
        "able": session["able"],
        "missing": session["missing"],
        "answers": answers,
    }


def answered(session: Session, answer: Answer) -> Session:
    """The session with one more answer, in place of an earlier one to the same feature. A sure one
    that says the same again is one that was looked at twice; one that says something else has
    changed.
    """
    kept = [a for a in session["answers"] if a["feature"] != answer["feature"]]
    for before in session["answers"]:
        sure = before["how"] in ["sure", "twice"] and answer["how"] in ["sure", "twice"]
        if sure and before["feature"] == answer["feature"]:
            return with_answers(session, plus(kept, looked_again(before, answer)))
    return with_answers(session, plus(kept, answer))


def looked_again(before: Answer, answer: Answer) -> Answer:
    """A sure answer, after a sure one before it to the same feature."""
    same = before["states"][0] == answer["states"][0]
    out: Answer = {
        "feature": answer["feature"],
        "how": "twice" if same else "sure",
        "states": answer["states"],
    }
    if not same:
        out["changed"] = True
    return out


def undone(session: Session) -> Session:
    """The session without its last answer."""
    count = len(session["answers"])
    return with_answers(session, session["answers"][0 : max(0, count - 1)])


def without(session: Session, feature: str) -> Session:
    """The session without its answer to `feature`."""
    return with_answers(session, [a for a in session["answers"] if a["feature"] != feature])


def problem(engine: Engine, answer: Answer) -> AnswerProblem:
    """What is wrong with an answer: "", "feature", "how", "count" or "state"."""
    features = engine["pack"]["features"]
    place = place_of(features, answer["feature"])
    if place < 0:
        return "feature"
    how = answer["how"]
    if how not in ["sure", "twice", "unsure", "several", "other", "cannot"]:
        return "how"
    count = len(answer["states"])
    if how in ["sure", "twice", "unsure"] and count != 1:
        return "count"
    if how == "several" and count < 1:
        return "count"
    if how in ["other", "cannot"] and count > 0:
        return "count"
    for i in range(count):
        state = answer["states"][i]
        if place_of(features[place]["states"], state) < 0:
            return "state"
        if state in answer["states"][0:i]:
            return "count"
    return ""


def mend(engine: Engine, session: Session) -> Mended:
    """A saved session made to fit this pack.

    What the pack no longer knows is set aside and named, so that the screen can say so.
    """
    pack = engine["pack"]
    dropped: list[Dropped] = []
    fresh = new_session(engine)
    for answer in session["answers"]:
        reason = problem(engine, answer)
        if reason != "":
            dropped.append({"what": answer["feature"], "reason": reason})
        else:
            fresh["answers"].append(answer)
    for part in session["missing"]:
        if place_of(pack["parts"], part) < 0:
            dropped.append({"what": part, "reason": "part"})
        else:
            fresh["missing"].append(part)
    kind = session["scope"]["kind"]
    if len(kind) > 0 and place_of(pack["kinds"], kind) < 0:
        dropped.append({"what": kind, "reason": "kind"})
        kind = ""
    numbers = [item["number"] for item in pack["items"]]
    items: list[str] = []
    for number in session["scope"]["items"]:
        if number in numbers:
            items.append(number)
        else:
            dropped.append({"what": number, "reason": "item"})
    fresh["scope"] = {"kind": kind, "items": items}
    fresh["able"] = session["able"]
    return {"session": fresh, "dropped": dropped}
