// The program around the window, as the shell. Its one thread reads requests in the order they
// are sent.

import { Channel, convertFileSrc, invoke } from '@tauri-apps/api/core';
import type { Shell } from './shell';

export const shell: Shell = {
  care: null,
  ask: (command, given = {}, report) =>
    invoke(command, report ? { ...given, progress: new Channel(report) } : given),
  photoSource: (id, photo) => convertFileSrc(`${id}/${photo}`, 'photo'),
  onDropped(file, photo) {
    window.addEventListener('lapwork-dropped', file);
    window.addEventListener('lapwork-photo', photo);
  },
};
