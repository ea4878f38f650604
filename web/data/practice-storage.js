/** The first steps are walked in a storage of their own, so that nothing of them is left behind. */

/** Which of the first steps is being walked; "" for none: this is the collector's own app. */
export const PRACTICE = new URLSearchParams(location.search).get("first-steps") ?? "";

/** The name of the storage for the first steps. */
export const PRACTISING = "identify first steps";

/** The name of the storage in use. */
export const STORAGE = PRACTICE === "" ? "identify" : PRACTISING;
