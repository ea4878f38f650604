/** The words of devices and sync. */

// Adding a device
export const ADD_A_DEVICE = "Add a device";
export const POINT_THE_CAMERA = "Point the other phone’s camera at this, and open the link.";
export const SQUARE_CODE = "Square code with the pairing link";
export const orOpenAndType = (origin) =>
  `Or open ${origin}/ there, go to More, “Devices and sync”, and type:`;
export const COPY_THE_LINK = "Copy the link";
export const goodUntil = (time) =>
  `Good until ${time}, for one device. Show it to nobody else: whoever has it can ` +
  "read the collection.";
export const COPIED_THE_LINK = "Copied: open it on the other device";
export const BROWSER_DOES_NOT_COPY = "This browser cannot copy it: use the code";

// At the start
export const UNPAIRED_FROM_AFAR =
  "This device was unpaired by one of your other devices. What the collection kept here " +
  "was deleted; it is still on your server. To use it here again, pair this device again.";

// The devices
export const DOING = {
  looking: "Checking for changes",
  sending: "Sending changes",
  "photos there": "Sending photos",
  "photos here": "Fetching photos",
};
export const DEVICES_AND_SYNC = "Devices and sync";
export const ASKING_THE_SERVER = "Asking the server…";
export const SYNC_NOW = "Sync now";
export const DEVICES = "Devices";
export const BACKUPS_ON_THE_SERVER = "Backups on the server";
export const ONE_EVERY_NIGHT =
  "The server makes one every night. One made now holds what it has so far.";
export const MAKE_A_BACKUP_THERE_NOW = "Make a backup there now";
export const WHAT_GOES_WHERE = "What goes where";
export const whatGoesWhere = (host) =>
  `Pieces, wants, notes and photos with all their changes go to ${host}, your own ` +
  "server, and from there to the devices above. Nobody else can read them without " +
  "being paired. The piece you are identifying and your settings stay on this " +
  "device. Photos do not say where they were taken.";
export const WITH_A_SERVER_OF_YOUR_OWN =
  "With a server of your own, at home or on a machine you rent, several phones and " +
  "computers keep the same collection, each of them without a signal too.";
export const SYNC_IS_NOT_SET_UP =
  "Sync is not set up. It needs a server of your own; the instructions that come with the app " +
  "explain how.";
export const PROGRESS = "Progress";
export const SYNC = "Sync";
export const doneOf = (done, total) => `: ${done} of ${total}`;
export const NOT_IN_TOUCH_YET = "Not in touch with the server yet.";
export const lastInTouch = (time) => `Last in touch: ${time}.`;
export const NOTHING_IS_WAITING = "Nothing is waiting to be sent.";
export const waitingToBeSent = (what, are) =>
  `${what} ${are} waiting to be sent. Until then the only copy is here.`;
export const BETWEEN_TWO = " and ";
export const stillToCome = (sent, photos) => `${sent} ${photos} still to come.`;
export const PHOTO_IS = "photo is";
export const PHOTOS_ARE = "photos are";
export const serverDoesNotTake = (changes, why) =>
  `The server will not take ${changes}; kept here: ${why} More, Set aside, shows it.`;
export const recordsToSettle = (records) => `To settle: ${records}`;
export const unpairedSince = (names) => `Unpaired: ${names}.`;
export const lastSeen = (time) => `last seen ${time}`;
export const NOT_SEEN_YET = "not seen yet";
export const isThisDevice = (name) => `${name} (this device)`;
export const pairedAt = (time, seen) => `Paired ${time}, ${seen}.`;
export const RENAME = "Rename";
export const renameName = (name) => `Rename ${name}`;
export const UNPAIR = "Unpair";
export const unpairName = (name) => `Unpair ${name}`;
export const RENAME_A_DEVICE = "Rename a device";
export const NAME = "Name";
export const SAVE_THE_NAME = "Save the name";
export const RENAMED = "Renamed.";
export const whetherToUnpair = (name) => `Unpair ${name}?`;
export const UNPAIRED_HERE =
  "This device will no longer be paired, and everything the collection keeps on it is " +
  "deleted. What is waiting to be sent is lost; the rest stays on the server and your " +
  "other devices.";
export const UNPAIRED_THERE =
  "It cannot read or send anything from now on. When it is next in touch, the collection " +
  "is deleted there, with what is waiting to be sent. Until then, what it holds can be " +
  "read by whoever has it: lock the device if it is lost.";
export const UNPAIR_AND_DELETE_HERE = "Unpair and delete here";
export const UNPAIR_IT = "Unpair it";
export const isUnpaired = (name) => `${name} is unpaired.`;
export const THE_BACKUP_IS_MADE = "The backup is made.";
export const backupIsMade = (records, photos) =>
  `The backup is made: ${records}, ${photos}. It was restored once as a test, and is ` +
  "complete.";
export const NO_BACKUPS_THERE_YET = "No backups yet.";
export const BACKUPS = "Backups";

// Pairing this device
export const A_CODE_HAS =
  "A code has 8 letters and figures, such as K7QM 2XDF. Look again at the other device, " +
  "or at the server’s screen.";
export const PAIR_THIS_DEVICE_AGAIN = "Pair this device again";
export const PAIR_THIS_DEVICE = "Pair this device";
export const WHERE_THE_CODE_IS =
  "On a device that is paired already, tap “Add a device” on this screen, and type the " +
  "code here. It is good for five minutes. For the first device the code comes from the " +
  "server; the instructions that come with the app explain how.";
export const LINK_PAIRS_THIS_DEVICE = "This link pairs this device with the server it came from.";
export const CODE = "Code";
export const WHAT_TO_CALL_THIS_DEVICE = "What to call this device";
export const PAIR = "Pair";
export const PAIR_ON_THE_HOME_SCREEN =
  "An app on the home screen may keep things apart from the browser: pair it there, with " +
  "the code.";
export const PHONE = "Phone";
export const COMPUTER = "Computer";
export const ONE_RECORD_IS_HERE = "1 record is on this device. It is";
export const recordsAreHere = (count) => `${count} records are on this device. They are`;
export const DEMO_IS_AMONG_THEM =
  " The demo collection is among them: if it should not go along, remove it first, under " +
  "More.";
export const putTogether = (records, demo) =>
  `${records} put together with what is on the server: nothing is overwritten, and ` +
  `all your paired devices will show both.${demo}`;
export const PAIRED = "Paired.";
export const PAIRED_AND_PUT_TOGETHER =
  "This device is paired. What is here and what is on the server are being put together.";

// Photos
export const PHOTO_NOT_TAKEN = "The server did not finish taking a photo. It is sent again later.";

// The journal
export const A_DEVICES_NAME = "The device’s name";
export const AS_IT_WAS_ON_THIS_PHONE = "As it was on this phone";

// How the server stands
export const certificateExpires = (day) =>
  `Your server’s certificate expires on ${day}. Renew it before then, or this device ` +
  "loses touch with the server.";
export const authorityExpires = (day) =>
  `The authority of your server’s certificate expires on ${day}. Before then a new ` +
  "one has to be made there, and put on this device as the first one was.";
export const NO_BACKUP_YET = "Your server has not made a backup yet.";
export const lastBackupIsOf = (day) =>
  `The last backup on your server that was tested was made on ${day}. Check the server.`;
export const NO_COPY_ELSEWHERE =
  "The copy of the last backup for another place could not be made. Check the server.";
export const DISK_NEARLY_FULL =
  "Your server’s disk is nearly full. Photos wait on this device until there is space.";

// To settle
export const TO_SETTLE = "To settle";
export const NOTHING_TO_SETTLE = "Nothing left to settle: your devices agree.";
export const CHANGED_OUT_OF_TOUCH =
  "This was changed on two devices while they were out of touch. Nothing is lost. Tap " +
  "what is right; the rest stays in the history.";
export const budgetOf = (day) => `Budget of ${day}`;
export const OPEN_IT = "Open it";
export const openName = (name) => `Open ${name}`;
export const DELETED_AND_CHANGED =
  "It was deleted on one device and changed on another, so it is kept.";
export const KEEP_IT = "Keep it";
export const KEPT = "Kept";
export const IT_IS_KEPT = "It is kept.";
export const keepName = (name) => `Keep ${name}`;
export const MOVE_IT_TO_THE_BIN = "Move it to the bin";
export const TO_THE_BIN = "To the bin";
export const IT_IS_IN_THE_BIN = "It is in the bin.";
export const moveNameToTheBin = (name) => `Move ${name} to the bin`;
export const fieldOf = (label, name) => `${label} of ${name}`;
export const SHOWN_NOW = "shown now";
export const BOTH_TOGETHER = "Both together";
export const photoNumber = (number) => `Photo ${number}`;
export const ANOTHER_DEVICE = "another device";
export const settledField = (name) => `Settled: ${name}.`;
export const settledAs = (name) => `Settled: ${name}`;

// Syncing
export const DEVICE_NOT_KNOWN =
  "The server does not know this device any more. Everything here is kept. Pair it again.";
export const SERVER_NOT_REACHED =
  "The server cannot be reached. What is waiting is sent when it can be reached.";
export const SENDING_WENT_WRONG =
  "Something went wrong while sending. What is waiting is kept, and sent later.";
export const NO_SIGNAL = "There is no signal. What is waiting is sent when there is.";
export const ANSWER_NOT_READ = "The server’s answer cannot be read.";
