"""What a portrait can show: its layers, how each can look, and the words by which a range that says
nothing of it is understood.
"""

from .look_up import words
from .runs import runs_of, sort_at, text_of

COLOURS = [
    "green", "blue", "black", "maroon", "red", "brown", "grey", "cream", "yellow", "silver",
    "white", "orange", "gold", "purple", "pink", "turquoise", "bare", "coloured",
]  # fmt: skip
BODIES = [
    "tank_engine", "tender_engine", "lone_engine", "streamlined_engine", "shunter", "diesel",
    "nosed_diesel", "electric", "box_cab", "railcar", "engine", "tender", "smooth_tender",
    "compartment_coach", "corridor_coach", "brake_coach", "dining_coach", "sleeper",
    "mail_coach", "short_coach", "short_brake_coach", "saloon", "smooth_coach", "coach",
    "plank_wagon", "steel_wagon", "hopper", "van", "cattle_wagon", "tank_wagon", "flat_wagon",
    "timber_wagon", "guards_van", "crane", "wagon", "signal", "station", "signal_box",
    "crossing", "buffer_stop", "building", "set", "piece",
]  # fmt: skip
# By layer, how it can look. "letters" stands for any text: "letters: Northfell".
LAYERS = {
    "body": BODIES,
    "extent": ["short", "long"],
    "load": ["fixed", "moving", "load"],
    "train": ["goods", "passenger", "express", "streamliner"],
    "colour": COLOURS,
    "roof": COLOURS,
    "roof_shape": ["arc", "clerestory", "flat"],
    "base": COLOURS,
    "finish": ["enamel", "litho", "thin"],
    "lining": ["plain", "line", "band", "two_tone"],
    "emblem": ["crest", "roundel", "initials", "winged_wheel", "words", "plain", "letters"],
    "number": ["one_end", "both_ends", "plate", "printed", "none"],
    "lettering": ["transfer", "foil", "ink"],
    "joins": ["raised", "smooth", "solder", "tabs"],
    "front": ["lamps", "discs", "panel", "socket", "upright", "plain"],
    "horns": ["metal", "plastic", "moulded", "none"],
    "chimney": ["straight", "rimmed", "wide"],
    "dome": ["bright", "painted", "none"],
    "smoke": ["plates", "none"],
    "pantograph": ["diamond", "single", "pole", "none"],
    "warning": ["panel", "whole", "stripes", "none"],
    "windows": ["none", "flat", "flush", "tinted"],
    "inside": ["empty", "seats"],
    "gangway": ["bellows", "plate", "none"],
    "footboards": ["two", "one", "none"],
    "under_gear": ["boxes", "rods", "none"],
    "planks": ["three", "five", "seven"],
    "plan": ["two", "three", "two_three", "two_lead", "two_both", "two_and_two", "three_and_three"],
    "wheels": ["cast", "black", "bright", "spokes", "tin", "zinc", "plated"],
    "bogies": ["pressed", "plain", "sprung", "none"],
    "axles": ["punched", "moulded", "soldered", "pressed", "cast"],
    "coupling": ["bar", "loop", "claw", "narrow_claw", "link", "tin_hook", "wide_hook"],
    "buffers": ["turned", "sprung", "moulded", "pressed", "diecast"],
    "power": ["clockwork", "electric"],
    "keyhole": ["left", "right"],
    "key": ["fixed", "ears", "wire", "cast"],
    "box": ["label", "picture", "stripe", "window", "covered", "plain", "bright"],
    "lid": ["bridge", "station", "night", "photo", "none"],
    "track": ["fibre", "grey_base", "open", "two_two", "two_three", "three", "none"],
    "controller": ["lamp_board", "resistance", "transformer"],
}
# A word in a name, and what it says of the body: the first that is found counts.
BODY_WORDS = [
    ["SET", "set"], ["STREAMLINED TENDER", "smooth_tender"], ["TENDER", "tender"],
    ["SHUNTER", "shunter"], ["RAILCAR", "railcar"],
    ["TRAILER", "corridor_coach"], ["STREAMLINED", "streamlined_engine"],
    ["TANK ENGINE", "tank_engine"], ["STEAM", "tender_engine"], ["NOSE", "nosed_diesel"],
    ["DIESEL", "diesel"], ["ELECTRIC", "electric"], ["BUFFER STOP", "buffer_stop"],
    ["SIGNAL BOX", "signal_box"], ["SIGNAL", "signal"], ["STATION", "station"],
    ["CROSSING", "crossing"], ["BRAKE VAN", "guards_van"], ["GUARD'S VAN", "guards_van"],
    ["GUARDS VAN", "guards_van"], ["CATTLE", "cattle_wagon"], ["HOPPER", "hopper"],
    ["CRANE", "crane"], ["TIMBER", "timber_wagon"], ["FLAT", "flat_wagon"],
    ["TANKER", "tank_wagon"], ["TANK WAGON", "tank_wagon"], ["OPEN", "plank_wagon"],
    ["PLANK", "plank_wagon"], ["MINERAL", "steel_wagon"], ["MAIL", "mail_coach"],
    ["DINING", "dining_coach"], ["RESTAURANT", "dining_coach"], ["SLEEPING", "sleeper"],
    ["SLEEPER", "sleeper"], ["SALOON", "saloon"], ["BRAKE", "brake_coach"],
    ["COACH", "coach"], ["CARRIAGE", "coach"], ["VAN", "van"], ["WAGON", "wagon"],
    ["TRUCK", "wagon"], ["LOCOMOTIVE", "engine"], ["ENGINE", "engine"], ["LOCO", "engine"],
    ["POWER CAR", "engine"], ["HOUSE", "building"], ["BUILDING", "building"],
]  # fmt: skip
# The same for the name of a kind.
KIND_WORDS = [
    ["SET", "set"], ["SETS", "set"], ["ACCESSORY", "building"], ["BUILDING", "building"],
    ["LOCOMOTIVE", "engine"], ["ENGINE", "engine"], ["DUMMY", "engine"], ["TENDER", "tender"],
    ["COACH", "coach"], ["CARRIAGE", "coach"], ["WAGON", "wagon"], ["VAN", "van"],
    ["TRUCK", "wagon"], ["RAILCAR", "railcar"],
]  # fmt: skip
# A word in a feature's name, and the layer that such a feature fills.
LAYER_WORDS = [
    ["ROOF", "roof"], ["LIVERY", "colour"], ["COLOUR", "colour"], ["COLOR", "colour"],
    ["LINING", "lining"], ["EMBLEM", "emblem"], ["RIVETS", "joins"], ["HORNS", "horns"],
    ["GLAZING", "windows"], ["BOGIES", "bogies"], ["BOGIE FRAMES", "bogies"],
    ["COUPLING", "coupling"], ["COUPLINGS", "coupling"], ["BUFFERS", "buffers"],
    ["WHEELS", "wheels"], ["TYPE", "body"],
]  # fmt: skip
LOADS = [
    ["TIMBER", "logs"], ["LOGS", "logs"], ["WOOD", "logs"], ["CONTAINER", "container"],
    ["DRUM", "drums"], ["DRUMS", "drums"], ["CABLE", "drums"], ["COAL", "coal"],
]  # fmt: skip
# What a colour in a name belongs to, by the word behind it.
NOT_SIDES = [
    ["LETTERING", "letters"], ["LETTERS", "letters"], ["LINE", "second"], ["BAND", "second"],
    ["ROOF", "roof"], ["JIB", "second"], ["LABEL", "box"], ["BOX", "box"], ["TRACK", "track"],
]  # fmt: skip


def spaced(text: str) -> str:
    """The words of a text with a space before, between and behind."""
    out = " "
    for word in words(text):
        out = out + word + " "
    return out


def first_of(pairs: list[list[str]], text: str) -> str:
    """What goes with the first of the words that the text has; "" for none."""
    held = spaced(text)
    for pair in pairs:
        if spaced(pair[0]) in held:
            return pair[1]
    return ""


def colours_in(text: str) -> list[list[str]]:
    """The colours that a name speaks of, each with what of the piece has it: sides, second (a line,
    a band, the other half), letters or roof; what is neither is left out.
    """
    runs = runs_of(text)
    out: list[list[str]] = []
    sides = ""
    for n in range(len(runs)):
        for colour in COLOURS:
            if runs[n]["text"] == colour.upper():
                behind = (
                    text_of(runs, n + 2, min(n + 3, len(runs)))
                    if sort_at(runs, n + 1) == "space"
                    else ""
                )
                of = "sides"
                for pair in NOT_SIDES:
                    if pair[0] == behind:
                        of = pair[1]
                if of == "sides" and sides != "":
                    of = "second"
                if of == "sides":
                    sides = colour
                if of != "second" or colour != sides:
                    out.append([of, colour])
    return out


def colour_in(text: str, of: str) -> str:
    """The colour that a name gives to the sides, the second, letters or roof; "" for none."""
    for colour in colours_in(text):
        if colour[0] == of:
            return colour[1]
    return ""


def look_fits(layer: str, look: str) -> bool:
    """Whether a layer can look like this: one of its words, a colour as #rrggbb, or letters."""
    known = LAYERS.get(layer, [])
    if look in known:
        return look != "letters"
    if "letters" in known and look[:9] == "letters: ":
        return 0 < len(spaced(look)) - 10 <= 24
    return known is not None and "maroon" in known and hexadecimal(look)


def hexadecimal(look: str) -> bool:
    """Whether this is a colour as #rrggbb."""
    if len(look) != 7 or look[:1] != "#":
        return False
    for c in look[1:].upper():
        if c not in "0123456789ABCDEF":
            return False
    return True


def layer_by_name(name: str) -> str:
    """The layer that a feature of this name fills; "" for none."""
    return first_of(LAYER_WORDS, name)


def look_by_name(layer: str, ident: str, name: str) -> str:
    """How a state of this id and name looks in a layer; "" where the words do not say."""
    if look_fits(layer, ident):
        return ident
    if layer == "body":
        return first_of(BODY_WORDS, name)
    known = LAYERS.get(layer, [])
    if "maroon" in known:
        return colour_in(name, "sides")
    held = spaced(name)
    for look in known:
        if look != "none" and spaced(look) in held:
            return look
    return ""
