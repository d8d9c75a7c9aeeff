// Dates and clocks, in the language of the words.

import { language } from './words.svelte';

const DAY = { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' } as const;
const SHORT_DAY = { day: 'numeric', month: 'short', year: 'numeric' } as const;
const TIME = { hour: 'numeric', minute: '2-digit' } as const;

const forms: Partial<Record<string, Intl.DateTimeFormat>> = {};

/** Written as the words' language does, and as is usual where the device says it is. */
function form(name: string, parts: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const code = language();
  const here = typeof navigator === 'undefined' ? [] : (navigator.languages ?? []);
  const tongue = here.find((l) => l === code || l.startsWith(`${code}-`)) ?? code;
  return (forms[`${name} ${code}`] ??= new Intl.DateTimeFormat(tongue, parts));
}

export const day = (at: number) => form('day', DAY).format(at);
export const shortDay = (at: number) => form('short', SHORT_DAY).format(at);
export const time = (at: number) => form('time', TIME).format(at);

/** How far local time is east of UTC now, in minutes. */
export const east = () => -new Date().getTimezoneOffset();

/** Whole seconds as `m:ss`. */
export function clock(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds));
  const part = String(whole % 60).padStart(2, '0');
  return `${Math.floor(whole / 60)}:${part}`;
}
