// The window's own words, as the core sent them.

import type { WordKey } from './types';

let words = $state.raw<Partial<Record<WordKey, string>>>({});
let code = $state.raw('en');
let sign = $state.raw('.');

/** Take the words over, with the code of their language and its decimal sign. */
export function setWords(
  given: Partial<Record<WordKey, string>>,
  language: string,
  decimal: string,
) {
  words = given;
  code = language;
  sign = decimal;
}

/** The code of the language that is spoken. */
export const language = () => code;

/** Its decimal sign. */
export const point = () => sign;

// Only for the moment before the words have come.
const WITHOUT: Partial<Record<WordKey, string>> = {
  'ui-app': 'Lapwork',
  'ui-dismiss': 'Close this message',
  'ui-again': 'Try again',
  'ui-broke': 'Something went wrong inside the app.',
  'ui-broke-next': 'Try again. What you had done is kept.',
};

/** The words for `key`. */
export function t(key: WordKey): string {
  return words[key] ?? WITHOUT[key] ?? '';
}
