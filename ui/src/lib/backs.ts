// What a step back does before it leads to another screen.
//
// A page of the beginning leads to the page before. Whatever is on the screen says so while it is
// there; the last to say so comes first. The phone's back, a browser's and the bar's are the same.
// (An open sheet is closed before any of it: see `store.ts`.)

export class Backs {
  private catchers: (() => void)[] = [];

  /** A step back does this instead, until what this gives is called. */
  catch(run: () => void): () => void {
    this.catchers.push(run);
    return () => {
      this.catchers = this.catchers.filter((catcher) => catcher !== run);
    };
  }

  /** Do what a step back does here; false where it leads to another screen. */
  take(): boolean {
    const run = this.catchers.at(-1);
    run?.();
    return run !== undefined;
  }
}

/** Those of the window. */
export const backs = new Backs();
