"""What a column of a list can be, and how such columns are headed.

Headings in English, German, French and Dutch: common practice, no source.
"""

from dataclasses import dataclass

# Field -> headings, separated by "|".
HEADINGS = {
    "number": """
        number | no | no. | nr | nr. | item number | cat no | cat. no. | catalogue no |
        catalogue number | catalog number | ref | reference | reference number | item no |
        model no | model number | stock no | part number | nummer | artikelnummer | art nr
        | art. nr. | artikel nr | bestellnummer | katalognummer | kat nr | numéro | n° |
        référence | réf | réf. | no de catalogue | artikelnr | catalogusnummer
    """,
    "name": """
        name | item | what | what it is | model | title | piece | article | bezeichnung |
        artikel | modell | benennung | nom | désignation | modèle | titre | naam |
        omschrijving kort | benaming
    """,
    "description": """
        description | desc | details | detail | beschreibung | ausführung | remarks on
        model | type | kind | omschrijving | beschrijving | descriptif | type and colour
    """,
    "variant": """
        variant | version | variation | livery | colour | color | farbe | variante |
        couleur | livrée | kleur | uitvoering
    """,
    "range": """
        maker | make | manufacturer | brand | range | hersteller | marke | fabricant |
        marque | fabrikant | merk
    """,
    "condition": """
        condition | cond | cond. | grade | state | quality | zustand | erhaltung | état |
        conditie | staat | kwaliteit | least condition | condition wanted
    """,
    "boxed": """
        box | boxed | box? | boxed? | original box | ob | packaging | karton | ovp |
        schachtel | originalkarton | boîte | boite | emballage | doos | verpakking | with
        box
    """,
    "box_condition": """
        box condition | condition of box | box grade | box state | zustand karton |
        zustand ovp | état boîte | état de la boîte | staat doos
    """,
    "price": """
        price | paid | price paid | cost | purchase price | bought for | amount | preis |
        kaufpreis | bezahlt | einkaufspreis | prix | prix payé | prix d'achat | payé |
        prijs | betaald | aankoopprijs | limit | most | maximum | asked | asking price
    """,
    "asking": """
        asking | for sale at | sell for | selling price | sale price | verkaufspreis |
        prix de vente | verkoopprijs | vraagprijs
    """,
    "offer": """
        offer | offered | my offer | bid | angebot | gebot | offre | bod
    """,
    "where": """
        where | from | bought from | bought at | source | seller | dealer | place | fair |
        shop | where bought | acquired from | gekauft bei | händler | verkäufer | herkunft
        | börse | ort | vendeur | acheté à | acheté chez | lieu | provenance | bourse |
        gekocht bij | verkoper | herkomst | beurs | hall
    """,
    "when": """
        when | date | bought | bought on | date bought | purchase date | acquired | date
        acquired | year bought | datum | kaufdatum | gekauft | gekauft am | date d'achat |
        acheté | acheté le | aankoopdatum | gekocht | gekocht op | purchased
    """,
    "table": """
        table | stand | stall | tisch | tafel
    """,
    "urgency": """
        urgency | priority | priorität | priorité | prioriteit
    """,
    "quantity": """
        quantity | qty | count | how many | anzahl | menge | stück | quantité | nombre |
        aantal
    """,
    "notes": """
        notes | note | comment | comments | remarks | remark | bemerkung | bemerkungen |
        anmerkung | notizen | kommentar | remarque | remarques | commentaire | opmerking |
        opmerkingen | notities
    """,
    "row_id": """
        id | row | row id | record no | lfd nr | lfd. nr. | laufende nummer | inventory
        number | inventory no | inventarnummer | inv no | inv. no. | my number | my no |
        no d'inventaire | inventarisnummer | volgnummer
    """,
}


@dataclass(frozen=True)
class Field:
    """A meaning of a column: id, its name on the screen, and the field of each type of record that
    it goes to ("" for the notes).
    """

    id: str
    name: str
    piece: str = ""
    want: str = ""
    note: str = ""

    @property
    def headings(self) -> list[str]:
        """How such a column is headed."""
        return [" ".join(one.split()) for one in HEADINGS[self.id].split("|")]

    def goes_to(self, sort: str) -> str:
        """The field of a record of a type."""
        return {"piece": self.piece, "want": self.want, "note": self.note}[sort]


FIELDS = (
    Field("number", "Catalogue number"),
    Field("name", "What it is"),
    Field("description", "Description in free words"),
    Field("variant", "Variant"),
    Field("range", "Maker or range"),
    Field("condition", "Condition", "condition", "least", "condition"),
    Field("boxed", "Box, yes or no", "boxed", "box", "boxed"),
    Field("box_condition", "Condition of the box", "box_condition"),
    Field("price", "Price", "paid", "most", "asked"),
    Field("asking", "Price to ask for it", "asking"),
    Field("offer", "Offer made", "", "", "offer"),
    Field("where", "Where from", "where", "", "hall"),
    Field("when", "When", "when"),
    Field("table", "Table at the fair", "", "", "table"),
    Field("urgency", "How urgent (1 to 3)", "", "urgency"),
    Field("quantity", "How many"),
    Field("notes", "Notes", "notes", "notes", "text"),
    Field("row_id", "The list's own number of the row"),
)
BY_ID = {one.id: one for one in FIELDS}
TYPES = ("piece", "want", "note")
# How the columns of a table of ours count in a row that has no record yet.
GENERIC = {
    "=pack": "range", "=item": "number", "=what it is": "name", "=which variant": "variant",
    "=called": "name", "=condition": "condition", "=least": "condition", "=boxed": "boxed",
    "=box": "boxed", "=box_condition": "box_condition", "=paid": "price", "=most": "price",
    "=asked": "price", "=asking": "asking", "=offer": "offer", "=where": "where", "=hall": "where",
    "=when": "when", "=table": "table", "=urgency": "urgency", "=notes": "notes", "=text": "notes",
}  # fmt: skip
