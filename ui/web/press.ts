// The worker that prints: it loads the typesetter, makes one PDF, and is then of no more use. What
// it took of memory goes with it.

import init, { print } from '#press';
import type { FromPress, ToPress } from './talk';

const post = (said: FromPress) => self.postMessage(said);

self.onmessage = async ({ data }: MessageEvent<ToPress>) => {
  try {
    await init();
    const report = (done: number, all: number) => post({ now: { done, all } });
    const pdf = print(data.job, data.photos.flat(), report);
    post({ pdf: pdf as Uint8Array<ArrayBuffer> });
  } catch (thrown) {
    post({ failed: thrown instanceof Error ? thrown.message : String(thrown) });
  }
};
