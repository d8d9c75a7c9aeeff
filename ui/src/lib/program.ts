// The program around the window, as the shell. Its one thread reads requests in the order they
// are sent.

import { Channel, convertFileSrc, invoke } from '@tauri-apps/api/core';
import type { Shell } from './shell';

declare global {
  interface Window {
    /** The answer to the first `hello`: the program asks it of itself while this code is read. */
    lapworkGreeting?: Promise<unknown>;
  }
}

/** The greeting that was sent for already; each one is taken once. */
function greeting() {
  const sent = window.lapworkGreeting;
  window.lapworkGreeting = undefined;
  return sent;
}

export const shell: Shell = {
  care: null,
  ask: <T>(
    command: string,
    given: Record<string, unknown> = {},
    report?: (news: never) => void,
  ): Promise<T> => {
    const sent = command === 'hello' ? greeting() : undefined;
    if (sent) return sent as Promise<T>;
    return invoke(command, report ? { ...given, progress: new Channel(report) } : given);
  },
  photoSource: (id, photo) => convertFileSrc(`${id}/${photo}`, 'photo'),
  onDropped(file, photo) {
    window.addEventListener('lapwork-dropped', file);
    window.addEventListener('lapwork-photo', photo);
  },
};
