"""What a column of a list can be, and how such columns are headed.

Headings in English, German, French and Dutch: common practice, no source.
"""

from ..types.importing import FieldName

# Field -> its name on the screen, and the field of a piece, a want and a note that it goes to ("":
# the notes).
LIST_FIELDS: list[list[str]] = [
    ["number", "Catalogue number", "", "", ""],
    ["name", "What it is", "", "", ""],
    ["description", "Description in your own words", "", "", ""],
    ["variant", "Variant", "", "", ""],
    ["range", "Maker or range", "", "", ""],
    ["condition", "Condition", "condition", "least", "condition"],
    ["boxed", "Box, yes or no", "boxed", "box", "boxed"],
    ["box_condition", "Condition of the box", "box_condition", "", ""],
    ["price", "Price", "paid", "most", "asked"],
    ["asking", "Price to ask for it", "asking", "", ""],
    ["offer", "Offer made", "", "", "offer"],
    ["where", "Where from", "where", "", "hall"],
    ["when", "When", "when", "", ""],
    ["table", "Table at the meet", "", "", "table"],
    ["urgency", "How urgent (1 to 3)", "", "urgency", ""],
    ["quantity", "How many", "", "", ""],
    ["notes", "Notes", "notes", "notes", "text"],
    ["row_id", "The list's own row number", "", "", ""],
]
LIST_HEADINGS: list[list[str]] = [
    ["number", "number", "no", "no.", "nr", "nr.", "item number", "cat no", "cat. no.",
     "catalogue no", "catalogue number", "catalog number", "ref", "reference", "reference number",
     "item no", "model no", "model number", "stock no", "part number", "nummer", "artikelnummer",
     "art nr", "art. nr.", "artikel nr", "bestellnummer", "katalognummer", "kat nr", "numéro",
     "n°", "référence", "réf", "réf.", "no de catalogue", "artikelnr", "catalogusnummer"],
    ["name", "name", "item", "what", "what it is", "model", "title", "piece", "article",
     "bezeichnung", "artikel", "modell", "benennung", "nom", "désignation", "modèle", "titre",
     "naam", "omschrijving kort", "benaming"],
    ["description", "description", "desc", "details", "detail", "beschreibung", "ausführung",
     "remarks on model", "type", "kind", "omschrijving", "beschrijving", "descriptif",
     "type and colour"],
    ["variant", "variant", "version", "variation", "livery", "colour", "color", "farbe",
     "variante", "couleur", "livrée", "kleur", "uitvoering"],
    ["range", "maker", "make", "manufacturer", "brand", "range", "hersteller", "marke",
     "fabricant", "marque", "fabrikant", "merk"],
    ["condition", "condition", "cond", "cond.", "grade", "state", "quality", "zustand",
     "erhaltung", "état", "conditie", "staat", "kwaliteit", "least condition",
     "condition wanted"],
    ["boxed", "box", "boxed", "box?", "boxed?", "original box", "ob", "packaging", "karton",
     "ovp", "schachtel", "originalkarton", "boîte", "boite", "emballage", "doos", "verpakking",
     "with box"],
    ["box_condition", "box condition", "condition of box", "box grade", "box state",
     "zustand karton", "zustand ovp", "état boîte", "état de la boîte", "staat doos"],
    ["price", "price", "paid", "price paid", "cost", "purchase price", "bought for", "amount",
     "preis", "kaufpreis", "bezahlt", "einkaufspreis", "prix", "prix payé", "prix d'achat",
     "payé", "prijs", "betaald", "aankoopprijs", "limit", "most", "maximum", "asked",
     "asking price"],
    ["asking", "asking", "for sale at", "sell for", "selling price", "sale price",
     "verkaufspreis", "prix de vente", "verkoopprijs", "vraagprijs"],
    ["offer", "offer", "offered", "my offer", "bid", "angebot", "gebot", "offre", "bod"],
    ["where", "where", "from", "bought from", "bought at", "source", "seller", "dealer", "place",
     "fair", "shop", "where bought", "acquired from", "gekauft bei", "händler", "verkäufer",
     "herkunft", "börse", "ort", "vendeur", "acheté à", "acheté chez", "lieu", "provenance",
     "bourse", "gekocht bij", "verkoper", "herkomst", "beurs", "hall"],
    ["when", "when", "date", "bought", "bought on", "date bought", "purchase date", "acquired",
     "date acquired", "year bought", "datum", "kaufdatum", "gekauft", "gekauft am",
     "date d'achat", "acheté", "acheté le", "aankoopdatum", "gekocht", "gekocht op",
     "purchased"],
    ["table", "table", "stand", "stall", "tisch", "tafel"],
    ["urgency", "urgency", "priority", "priorität", "priorité", "prioriteit"],
    ["quantity", "quantity", "qty", "count", "how many", "anzahl", "menge", "stück", "quantité",
     "nombre", "aantal"],
    ["notes", "notes", "note", "comment", "comments", "remarks", "remark", "bemerkung",
     "bemerkungen", "anmerkung", "notizen", "kommentar", "remarque", "remarques", "commentaire",
     "opmerking", "opmerkingen", "notities"],
    ["row_id", "id", "row", "row id", "record no", "lfd nr", "lfd. nr.", "laufende nummer",
     "inventory number", "inventory no", "inventarnummer", "inv no", "inv. no.", "my number",
     "my no", "no d'inventaire", "inventarisnummer", "volgnummer"],
]  # fmt: skip
SORTS = ["piece", "want", "note"]
# How the columns of a table of ours count in a row that has no record yet.
GENERIC: list[list[str]] = [
    ["=pack", "range"], ["=item", "number"], ["=what it is", "name"], ["=which variant", "variant"],
    ["=called", "name"], ["=condition", "condition"], ["=least", "condition"], ["=boxed", "boxed"],
    ["=box", "boxed"], ["=box_condition", "box_condition"], ["=paid", "price"], ["=most", "price"],
    ["=asked", "price"], ["=asking", "asking"], ["=offer", "offer"], ["=where", "where"],
    ["=hall", "where"], ["=when", "when"], ["=table", "table"], ["=urgency", "urgency"],
    ["=notes", "notes"], ["=text", "notes"],
]  # fmt: skip


def list_fields() -> list[FieldName]:
    """What a column can be, with its name in words."""
    return [{"id": field[0], "name": field[1]} for field in LIST_FIELDS]


def list_field(field: str) -> list[str]:
    """What there is to say of a field."""
    about = LIST_FIELDS[0]
    for entry in LIST_FIELDS:
        if entry[0] == field:
            about = entry
    return about


def goes_to(field: str, sort: str) -> str:
    """The field of a record of a sort that a field of a list goes to, "" for the notes."""
    place = 2
    for n in range(len(SORTS)):
        if SORTS[n] == sort:
            place = 2 + n
    return list_field(field)[place]


def generic(field: str) -> str:
    """What a column counts as in a row that has no record yet; "" for one of ours with no use."""
    if field[0:1] != "=":
        return field
    for pair in GENERIC:
        if pair[0] == field:
            return pair[1]
    return ""
