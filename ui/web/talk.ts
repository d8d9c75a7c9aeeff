// What the page and its workers say to each other.

import type { Printing } from '../src/lib/types';

/** What the page asks of the worker that holds the service. */
export type Asked =
  | { do: 'ask'; command: string; given: string }
  | { do: 'import'; name: string; bytes: ArrayBuffer }
  | { do: 'drop'; name: string; bytes: ArrayBuffer }
  | { do: 'keep'; id: string; name: string; small: ArrayBuffer | null }
  | { do: 'photo'; id: string; photo: string }
  | { do: 'export'; id: string; wanted: string };

export interface ExportedFile {
  name: string;
  bytes: Uint8Array<ArrayBuffer>;
}

/** A question with its number, by which it is answered. */
export type Call = Asked & { n: number };

/** How a worker is begun: to serve, or to search for layouts. */
export type Begun =
  { do: 'open'; languages: string; patience: number } | { do: 'search'; order: string };

/** What the worker that holds the service has its reader make. */
export interface ToReader {
  do: 'read';
  n: number;
  reading: string;
}

export type ToWorker = Begun | ToReader | Call;

/** The answer to call `n`: JSON as the core gives it, or what is made of bytes. */
export type Answer =
  | { n: number; json: string }
  | { n: number; bytes: Uint8Array<ArrayBuffer> | null }
  | { n: number; files: ExportedFile[] }
  /** The service broke off in this call; the worker is of no use any longer. */
  | { n: number; broke: string }
  /** The page asked for something there is not. */
  | { n: number; refused: string };

/** The answer to a call, that the reader broke off in it, or that it cannot be one at all. */
export type FromReader =
  { n: number; json: string } | { n: number; broke: string } | { unloaded: string };

export type FromWorker =
  | Answer
  /** What to say, as JSON, where the service breaks off. */
  | { sayBroke: string }
  /** The command of this number is done; its screen is still being made. */
  | { done: number }
  /** Something was found that the page did not ask for. */
  | { offer: true }
  /** The files were taken over from another page: what was asked before is out of date. */
  | { anew: true }
  /** A search has found something, or has ended. */
  | { found: string; ended: boolean };

/** What the printing worker is given: the job as the core made it, and photos by name. */
export interface ToPress {
  job: string;
  photos: [name: string, bytes: Uint8Array<ArrayBuffer>][];
}

export type FromPress = { now: Printing } | { pdf: Uint8Array<ArrayBuffer> } | { failed: string };
