/** What is told where a file, a photo or the server is not as it should be. */

// Backups
export const storageGivesTooFew = (count, known) =>
  `The storage gives ${count} of the ${known} records that are known to have been ` +
  "here. No file was made: it would only look like a backup. Keep the last one. " +
  "Close the app and open it again; if it is still so, restore the last backup.";
export const NOT_A_PICTURE = "One of its photos is not a picture.";
export const NOT_A_BACKUP =
  "This file is not a backup, or it was cut short. A backup is a file that this app made, " +
  "with “backup” and a date in its name. Nothing was changed.";
export const SOMETHING_ELSE = "This file is something other than a backup. Nothing was changed.";
export const NEWER_BACKUP =
  "This backup was made by a newer version of the app. Update the app first, then restore " +
  "it. Nothing was changed.";
export const RESTORED_FROM_A_BACKUP = "Restored from a backup";
export const OLDER_VERSION = "An older version, from a backup";

export const undoneWhat = (what) => `Undone: ${what}`;

// Photos
export const IPHONES_OWN_FORM =
  "That photo is in the form in which an iPhone keeps its own (HEIC), and this browser " +
  "cannot read it. On the iPhone, tap “Take a photo” here, or choose Settings, Camera, " +
  "Formats, “Most Compatible” and take it again. A photo sent as a JPEG works too.";
export const NOT_READABLE_PICTURE =
  "That file is not a picture this device can read. A JPEG, PNG or WebP photo will do.";
export const NOT_ENOUGH_MEMORY = "There is not enough memory for that photo. Try a smaller one.";

// The server
export const ANSWER_NOT_READ = "The server’s answer cannot be read.";
export const SERVER_NOT_REACHED =
  "The server cannot be reached. Try again where there is a signal.";
export const serverGaveError = (status) => `The server gave error ${status}.`;
