/** The words of the button of the light, which is there with the first question. */

export const LIGHT_NAMES = { day: "daylight", dark: "dark", sun: "bright sun" };
export const switchTo = (light) => `Switch to ${light}`;
