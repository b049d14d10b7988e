import { app, Menu, type MenuItemConstructorOptions } from 'electron';
import type { Push } from '../core/contract/push.ts';
import { FIRST_MINUTES } from '../core/report/first-minutes.ts';
import type { Pushes } from './service/pushes.ts';

type Entry = Extract<Push, { kind: 'menu' }>['entry'];

/** The menu bar. Entries of ours are pushed to the page, which does what its own buttons do. */
export function setMenu(pushes: Pushes): void {
  const ours = (label: string, entry: Entry, accelerator?: string): MenuItemConstructorOptions => ({
    label,
    accelerator,
    click: () => pushes.send({ kind: 'menu', entry }),
  });
  const mac = process.platform === 'darwin';
  const settings = ours('Settings…', 'settings', 'CmdOrCtrl+,');
  const template: MenuItemConstructorOptions[] = [
    ...(mac
      ? [{ label: app.name, submenu: [settings, { type: 'separator' as const }, { role: 'quit' as const }] }]
      : []),
    {
      label: '&File',
      submenu: [
        ours('Import orders…', 'import', 'CmdOrCtrl+O'),
        ours('Print dispatch lists…', 'print', 'CmdOrCtrl+P'),
        { type: 'separator' },
        ...(mac
          ? [{ role: 'close' as const }]
          : [settings, { type: 'separator' as const }, { role: 'quit' as const }]),
      ],
    },
    {
      label: '&Edit',
      submenu: [
        // The page hears these keys itself: in a text field they undo typing, elsewhere the last step. On a Mac a key
        // shown here would be taken from the page.
        { ...ours('Undo', 'undo', mac ? undefined : 'CmdOrCtrl+Z'), registerAccelerator: false },
        { ...ours('Redo', 'redo', mac ? undefined : 'CmdOrCtrl+Shift+Z'), registerAccelerator: false },
        { type: 'separator' },
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
        { role: 'selectAll' },
      ],
    },
    {
      label: '&View',
      submenu: [
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { type: 'separator' },
        { role: 'togglefullscreen' },
      ],
    },
    {
      label: '&Plan',
      submenu: [
        ours('Plan the week', 'plan'),
        ours('Publish the plan…', 'publish'),
        ours('Plans: keep, compare, go back…', 'plans'),
      ],
    },
    // The page hears F1 itself.
    helpMenu({ ...ours(FIRST_MINUTES, 'first-minutes', mac ? undefined : 'F1'), registerAccelerator: false }),
  ];
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}

const helpMenu = (firstMinutes: MenuItemConstructorOptions): MenuItemConstructorOptions => ({
  role: 'help',
  submenu: [firstMinutes, { type: 'separator' }, { label: `Foldweek ${app.getVersion()}`, enabled: false }],
});
