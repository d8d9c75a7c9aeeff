// What the window needs of the program around it: answers, progress of long work, and dropped
// files. The desktop program is one such shell; a worker thread of a browser that holds the
// service can be another. No other file of the window knows which one it is.

export interface Shell {
  /**
   * Ask for something. Requests are taken up in the order in which they were made; the answers
   * may come in any order. Resolves to the answer, or rejects with a Problem. `told` hears how
   * far long work is, in order and as often as there is news, until the answer has come.
   */
  ask<T>(
    command: string,
    given?: Record<string, unknown>,
    told?: (news: never) => void,
  ): Promise<T>;
  /** Where the window finds a photo the shell keeps. */
  photoSource(id: string, photo: string): string;
  /** Hear when a throw file or a photo was dropped on the window. */
  onDropped(file: () => void, photo: () => void): void;
}
