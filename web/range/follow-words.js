/** The words of letting others follow a range of one's own. */

export const LET_OTHERS_FOLLOW = "Let others follow it";
export const LETTING_OTHERS_FOLLOW = "From your own server";
export const YES = "Yes, whoever has the address";
export const NO = "No, it stays private";
export const WHAT_FOLLOWERS_SEE =
  "Whoever has the address reads this range on your server, with its notes, drawings and photos, " +
  "and gets what you change. Nothing else that you keep can be read there.";
export const ITS_ADDRESS = "Give this address to those who are to follow it:";
export const COPY_THE_ADDRESS = "Copy the address";
export const ADDRESS_COPIED = "Copied. Whoever has it can read this range.";
export const ADDRESS_NOT_COPIED = "This browser cannot copy it. Type it where you need it.";
export const WHAT_FOLLOWERS_NEED =
  "It answers once this device has synced. They have to reach your server from where they are, " +
  "and their device has to trust its certificate.";
export const HOW_OTHERS_FOLLOW =
  "Share it as a file under Ranges, put that where anybody can fetch it over https, and give " +
  "them the address. Put each newer edition in its place. A device that is paired with a server " +
  "of your own has a switch for it here instead.";
