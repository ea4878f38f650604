"""Names and words that have a meaning in every range."""

KIND = "kind"  # the feature that every range has, first of all
NONE = "none"  # the state that says there is no such thing on the piece
OF_VARIANT = "variant-"  # the photo of one
JPEG = "data:image/jpeg;"
OF_THE_RANGE = ["range-gauge", "range-material"]  # for asking which of several ranges it is
OWN_PIECE = "My own piece"  # who says so, where it is nobody but the owner of one
# share of the pieces met that are in no range (design figures, no source), by what its author says
COMPLETE = ["every catalogue gone through", "all I know of", "a beginning"]
OPEN_SHARES = [0.05, 0.12, 0.5]
