// The photos a screen shows: fetched from the worker when they are first asked for, then kept as
// addresses within the page.

import { SvelteMap } from 'svelte/reactivity';

/** Shown until the photo is there: one clear point. */
const WAITING = 'data:image/gif;base64,R0lGODlhAQABAIAAAAAAAP///yH5BAEAAAAALAAAAAABAAEAAAIBRAA7';
/** No picture, which the screen says in its place. */
const GONE = 'data:,';

export class Pictures {
  private readonly sources = new SvelteMap<string, string>();
  private readonly asked = new Set<string>();

  constructor(
    private readonly fetched: (
      id: string,
      photo: string,
    ) => Promise<Uint8Array<ArrayBuffer> | null>,
  ) {}

  source(id: string, photo: string): string {
    const name = `${id}/${photo}`;
    const source = this.sources.get(name);
    if (source === undefined && !this.asked.has(name)) {
      this.asked.add(name);
      void this.load(id, photo, name);
    }
    return source ?? WAITING;
  }

  private async load(id: string, photo: string, name: string) {
    const bytes = await this.fetched(id, photo).catch(() => null);
    const source = bytes ? URL.createObjectURL(new Blob([bytes], { type: 'image/jpeg' })) : GONE;
    this.sources.set(name, source);
  }
}
