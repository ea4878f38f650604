/** Is the window as large as a desk's? A large phone on its side is as wide, and stays a phone. */
export const WIDE = matchMedia("(min-width: 56em) and (min-height: 30em)");
