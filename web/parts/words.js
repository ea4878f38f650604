/** The words of the other parts of screens. */

export const savedAs = (when) => `Saved as ${when}.`;

// Photos
export const PHOTOS = "Photos";
export const photoNumber = (number) => `Photo ${number}`;
export const TAKE_A_PHOTO = "Take a photo";
export const CHOOSE_A_PICTURE = "Choose a picture";
export const PHOTO_ADDED = "Photo added";
export const nothingElseChanged = (why) => `${why} Nothing else was changed.`;
export const REMOVE = "Remove";
export const PHOTO_REMOVED = "Photo removed";
export const PHOTO_IN_THE_BIN = "The photo was removed. It is in the bin.";
export const PHOTO = "Photo";
export const PHOTO_NOT_HERE = "This photo is not on this device.";

// What to pay
export const limitInAnotherCurrency = (limit) => `Your limit is ${limit}, in another currency.`;
export const moreThanYourLimit = (limit) => `The price is above your limit of ${limit}.`;
export const withinYourLimit = (limit) => `The price is within your limit of ${limit}.`;
export const IS_THE_PRICE_RIGHT = "Is the price right?";
export const WHAT_YOU_PAID_BEFORE = "What you paid before";
export const thisOne = (what) => `This one: ${what}.`;
export const NO_PRICE_NO_CONDITION_NOTED = "no price, no condition noted";
export const YOU_PAID_BEFORE = "You paid before:";

export const CHANGED_ON_TWO_DEVICES = "Changed on two devices: choose what is right";

// Packed files
export const CUT_SHORT = "This file is damaged, or was cut short. Save it or fetch it again.";
export const LOCKED_WITH_A_PASSWORD = "This file is locked with a password. Save it without one.";
export const TOO_LARGE_PACKED = "What is packed in this file is too large to be read here.";
