// Which cautions have been read. Each is shown in full the first time in a
// session of the app, and folds to a sign once read.

import type { Caution } from '../lib/types';

let read = $state<Partial<Record<Caution, boolean>>>({});

export const cautions = {
  isOpen: (caution: Caution) => !read[caution],
  turn(caution: Caution, open: boolean) {
    read = { ...read, [caution]: !open };
  },
};
