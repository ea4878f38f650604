/** The words of the settings. */

// Settings
export const ABLE_TODAY = [
  ["loupe", "I have a loupe with me"],
  ["body off", "I can take the body off"],
];
export const LIGHTS = [
  ["day", "Light"],
  ["dark", "Dark, for a dim hall"],
  ["sun", "Black on white, for the sun"],
  ["", "As the device"],
];
export const SETTINGS = "Settings";
export const BACK_TO_THE_PIECE = "Back to the piece";
export const BACK_TO_THE_START = "Back to the start";
export const LIGHT = "Light";
export const WHAT_YOU_CAN_DO_TODAY = "What you can do today";
export const MONEY_WITHOUT_A_SIGN_IS_IN = "Money without a sign is in";
export const ON_THE_HOME_SCREEN = "On the home screen";
export const PUT_IT_ON_THE_HOME_SCREEN = "Put it on the home screen";
export const alsoSentTo = (host) =>
  `The collection with its photos and notes is also sent to your own server, ${host}, ` +
  "and to the devices paired with it; nothing else is sent anywhere.";
export const NOTHING_IS_SENT_ANYWHERE = "Nothing is sent anywhere.";
export const CHECKING_KEPT = "Checking whether the browser will keep it…";
export const ASK_THE_BROWSER_TO_KEEP_IT = "Ask the browser to keep it";
export const PROMISED_TO_KEEP = "The browser has promised to keep it, even when space runs short.";
export const MAY_DELETE = "The browser may delete it when space runs short.";
export const DOES_NOT_SAY = "This browser does not say whether it will keep it.";
export const STORED_HERE = "What is stored on this device";
export const storedThings = (sent) =>
  `The app, the ranges, your settings, your collection and the piece at hand. ${sent}`;
export const VERSION_NOT_STORED_YET = "Version: not stored yet.";
export const versionName = (name) => `Version ${name}.`;
export const ABOUT = "About";
export const READY_FOR_NO_SIGNAL = "Everything works with no signal.";
export const NOT_READY_FOR_NO_SIGNAL =
  "Not ready for no signal yet: leave it open for a moment while there is one.";
export const CARE =
  "Old models can carry mains voltage, lead paint, asbestos or brittle celluloid. What is " +
  "known of the piece is shown with the answer. Have mains equipment tested by a " +
  "competent person before it is plugged in, and follow the rules where you live.";
