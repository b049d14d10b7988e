/* Stands in for the system's message box, which no story can read: prints what it asks, and quits. */
// The runtime loads it by require, before the app.
// eslint-disable-next-line @typescript-eslint/no-require-imports
const { dialog } = require('electron');

dialog.showMessageBoxSync = (box) => {
  process.stdout.write(`${JSON.stringify(box)}\n`);
  return box.cancelId;
};
