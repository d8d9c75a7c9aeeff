// What the window needs of the program around it: answers, progress of long work, and dropped
// files. The desktop program is one such shell; a worker thread of a browser that holds the
// service can be another. No other file of the window knows which one it is.

/**
 * What a browser leaves to its maker: whether what is kept here stays, and whether the app is here
 * whole. A program that is installed on the system has none of this.
 */
export interface Care {
  /** The browser has promised to keep what is kept here; null until it has said. */
  readonly kept: boolean | null;
  /** All of the app is here, so that it starts without a network. */
  readonly offline: boolean;
  readonly installed: boolean;
  /** How it is installed here. */
  readonly device: 'iphone' | 'android' | 'other';
  /** Installs it, where the browser lets the app ask for that. */
  readonly install: (() => void) | null;
  /** A newer app has come since the last start. */
  readonly updated: boolean;
  /** Hardly any room is left. */
  readonly low: boolean;
  /** Ask the browser for its promise. */
  keep(): void;
}

export interface Shell {
  /** What the maker is to see to, if the shell is a browser. */
  readonly care: Care | null;
  /**
   * Ask for something. Requests are taken up in the order in which they were made; the answers
   * may come in any order. Resolves to the answer, or rejects with a Problem. `report` hears how
   * far long work is, in order and as often as there is news, until the answer has come.
   */
  ask<T>(
    command: string,
    given?: Record<string, unknown>,
    report?: (news: never) => void,
  ): Promise<T>;
  /** Where the window finds a photo the shell keeps. */
  photoSource(id: string, photo: string): string;
  /** Hear when a throw file or a photo was dropped on the window. */
  onDropped(file: () => void, photo: () => void): void;
}
