/** Is the window as wide as a desk's? */
export const WIDE = matchMedia("(min-width: 56em)");
