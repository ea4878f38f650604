"""The lab's findings as a page to read, and in a few lines for the terminal."""

from identify.core.stopping import TOGETHER
from identify.lab import plots
from identify.lab.intervals import share_said
from identify.lab.leaving import SAID, confused
from identify.lab.measuring import HARD, PERFECT, STALL, Findings, Scenario
from identify.lab.page import figure, heading, page, percent, say, table
from identify.lab.trials import Trial, among, mean

MOST = 200  # pairs that are listed
NEAR = 10  # pairs that are listed of what is most nearly taken for something recorded
WHAT = {"variant": "which variant it is", "swapped": "which parts were replaced"}


def summary(findings: Findings) -> list[str]:
    """What matters most, a line each."""
    out = [f"{findings.bits:.3f} bits to find out among {len(findings.pack['variants'])} variants."]
    if len(findings.pack["variants"]) > 1:
        out.append(
            f"Huffman bound: {findings.huffman_two:.3f} questions with two answers, "
            f"{findings.huffman_most:.3f} with up to {findings.answers}."
        )
    for scenario in findings.scenarios:
        best = scenario.best
        line = f"{scenario.name.capitalize()}: {_asked(best):.2f} questions"
        if scenario.random:
            line += f" ({_asked(scenario.random):.2f} in a random order)"
        line += f", right in {_among(best, 1)}"
        out.append(f"{line}, among the first three in {_among(best, 3)}.")
    out += [
        f"Calibration error, {each.scenario}, {WHAT[each.what]}: {each.error:.3f}."
        for each in findings.calibrations
    ]
    out += [
        f"With {each.what} left out, given a wrong name with 90 % or more: "
        f"{share_said(each.wrong, len(each.taken))}."
        for each in findings.left
        if each.taken
    ]
    out += [
        f"With {percent(each.missing)} of the items missing, the chance of “none of these” is off "
        f"by {each.error:.3f}."
        for each in findings.nothing
    ]
    out.append(f"{len(findings.alike)} pairs that nothing visible can tell apart.")
    names = [findings.pack["features"][n]["name"] for n in findings.useless]
    out.append(f"Features that never help: {', '.join(names) or 'none'}.")
    return out


def report(findings: Findings) -> str:
    """The whole report as one HTML page."""
    pack = findings.pack
    body = [
        say(
            f"{len(pack['variants'])} variants in {len(pack['rows']['variant'])} rows, "
            f"{len(pack['features'])} features. {findings.count} pieces drawn for each trial, with "
            f"the seed {findings.seed}. Pack {pack['id']}, version {pack['version']}.",
            "quiet",
        ),
        *_questions(findings),
        *_right(findings),
        *_calibration(findings),
        *_unknown(findings),
        *_alike(findings),
        *_features(findings),
    ]
    return page(f"How well {pack['range']['name']} identifies", body)


def _asked(done: list[Trial]) -> float:
    return mean(len(trial.asked) for trial in done)


def _among(done: list[Trial], first: int) -> str:
    """The share with the truth among the first so many, with its interval."""
    return share_said(round(among(done, first) * len(done)), len(done))


def _orders(scenario: Scenario) -> list[tuple[str, list[Trial]]]:
    """The sessions of a scenario in each order there was."""
    both = [("best order", scenario.best), ("random order", scenario.random)]
    return [(name, done) for name, done in both if done]


def _questions(findings: Findings) -> list[str]:
    rows: list[list[str | float]] = [
        [
            scenario.name,
            order,
            _asked(done),
            mean(trial.seconds for trial in done),
            percent(mean(trial.stop == "sure" for trial in done)),
            scenario.bits_learnt(done),
            scenario.least(done),
        ]
        for scenario in findings.scenarios
        for order, done in _orders(scenario)
    ]
    columns = [
        "trial", "order", "questions", "seconds", "ended at 95 %", "bits told", "entropy bound",
    ]  # fmt: skip
    stall = findings.scenarios[1]
    series = [(name, [len(trial.asked) for trial in done]) for name, done in _orders(stall)]
    return [
        heading("How many questions it takes"),
        say(
            "A session ends when one variant holds 95 %, when 95 % say that it is not in the "
            f"range, or when all that is left to look at is worth less than {TOGETHER} bits "
            "together. The best order asks what tells most bits for each second of looking; the "
            "random order leaves out only what can tell nothing more."
        ),
        table("Questions until the end", columns, rows),
        say(
            f"There are {findings.bits:.3f} bits to find out, counting as one what is recorded "
            "alike in all that can be seen. No order of questions with right answers can do with "
            f"fewer, by Huffman (1952), than {findings.huffman_two:.3f} questions with two answers "
            f"or {findings.huffman_most:.3f} with up to {findings.answers}, if every variant is to "
            "be told for certain. The entropy bound is the least number of questions that could "
            "have told the bits that were told, if each told as much as any question of this pack "
            "possibly "
            "can."
        ),
        figure(
            plots.steps("Sessions ended by so many questions, at the stall", "questions", series),
            "At the stall: answers are misread and parts swapped as often as the engine expects.",
        ),
    ]


def _right(findings: Findings) -> list[str]:
    rows: list[list[str | float]] = [
        [name, order, _among(done, 1), _among(done, 3)]
        for name, order, done in (
            (scenario.name, order, done)
            for scenario in findings.scenarios
            for order, done in _orders(scenario)
        )
    ]
    columns = ["trial", "order", "the first candidate", "among the first three"]
    return [
        heading("How often it is right"),
        say(
            f"“{PERFECT.capitalize()}”: nothing misread, nothing swapped. “{STALL.capitalize()}”: "
            "3 % of the answers are wrong and parts are swapped as often as the pack says, which "
            f"is what the engine expects. “{HARD}”: more than it expects."
        ),
        table("Where the truth stands at the end", columns, rows),
    ]


def _calibration(findings: Findings) -> list[str]:
    out = [
        heading("Whether its chances can be believed"),
        say(
            "Pieces with swapped parts are looked at in some features, in no order and with "
            "misread answers. What is called likely should be so as often as it says. The error "
            "is the mean distance between stated and true (expected calibration error)."
        ),
    ]
    for each in findings.calibrations:
        title = f"{each.scenario.capitalize()}: {WHAT[each.what]}, error {each.error:.3f}"
        rows: list[list[str | float]] = [
            [f"{percent(low)} to {percent(high)}", int(count), percent(stated), percent(true)]
            for low, high, count, stated, true in each.table
        ]
        out.append(
            figure(
                plots.reliability(title, each.table),
                f"{title}. The dashed line is perfect; a bar shows one standard error.",
            )
        )
        out.append(table(title, ["stated", "times", "mean stated", "came true"], rows))
    return out


def _unknown(findings: Findings) -> list[str]:
    rows: list[list[str | float]] = [
        [f"{each.what} left out", len(each.taken), share_said(each.wrong, len(each.taken))]
        for each in findings.left
        if each.taken
    ]
    missing: list[list[str | float]] = [
        [percent(each.missing), percent(each.stated), percent(each.true), each.error]
        for each in findings.nothing
    ]
    near: list[list[str | float]] = [
        [_variant(findings, each.truth), _variant(findings, each.name), percent(each.chance)]
        for each in confused(findings.left, NEAR)
    ]
    return [
        heading("What it does not know"),
        say(
            "No range is complete. So a tenth of the items, or of the variants of an item that has "
            "more, is taken out at a time, and pieces of these are identified as at the stall. "
            f"Wrong is what is given the name of something else with {percent(SAID)} or more. In "
            "brackets is the 95 % interval."
        ),
        table("Pieces of what was left out", ["left out", "pieces", "given a wrong name"], rows),
        table(
            "“None of these”, where the range says how much of it is missing",
            ["items missing", "stated on average", "so in", "mean distance by tenths"],
            missing,
        ),
        table(
            "What was most nearly taken for something else",
            ["the piece, left out", "what it was taken for", "with the chance"],
            near,
        ),
    ]


def _variant(findings: Findings, place: int) -> str:
    variant = findings.pack["variants"][place]
    item = findings.pack["items"][variant["item"]]
    name = f"{item['number']} {item['name']}".strip()
    return f"{name}, {variant['name']}" if variant["name"] else name


def _alike(findings: Findings) -> list[str]:
    features = findings.pack["features"]
    rows: list[list[str | float]] = [
        [
            _variant(findings, pair.one),
            _variant(findings, pair.other),
            "; ".join(f"{features[n]['name']} ({features[n]['needs']})" for n, _ in pair.would)
            or "nothing in this pack",
        ]
        for pair in findings.alike[:MOST]
    ]
    out = [heading("What cannot be told apart")]
    if not rows:
        return [*out, say("Any two variants can be told apart by something visible.")]
    out.append(
        say(
            f"{len(findings.alike)} pairs of variants differ in nothing that can be seen with "
            "nothing in the hand, or in too little to be worth a question."
            + (f" The {MOST} commonest are listed." if len(findings.alike) > MOST else "")
        )
    )
    return [*out, table("Pairs that look alike", ["one", "the other", "what would tell"], rows)]


def _features(findings: Findings) -> list[str]:
    features = findings.pack["features"]
    order = sorted(range(len(features)), key=lambda n: -findings.worth[n])
    rows: list[list[str | float]] = [
        [
            features[n]["name"],
            features[n]["needs"],
            float(features[n]["seconds"]),
            float(findings.worth[n]),
            percent(findings.asked[n]),
        ]
        for n in order
    ]
    useless = [features[n]["name"] for n in findings.useless]
    top = [(features[n]["name"], findings.worth[n]) for n in order[:12]]
    return [
        heading("What each feature is worth"),
        say(
            "Bits about the variant when it is asked first, among the kind of piece where it tells "
            "most; and in how many of the sessions at the stall it was asked."
        ),
        figure(plots.bars("The features that tell most", top, "bits"), "Bits as a first question."),
        table("Features", ["feature", "needs", "seconds", "bits at first", "asked in"], rows),
        say(
            f"Never of any help here: {', '.join(useless)}. Each costs a person time to record."
            if useless
            else "Every feature helps somewhere."
        ),
    ]
