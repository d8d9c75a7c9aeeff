// Days and times of day, in the language of the words.

import type { WordKey } from './types';
import { language, t } from './words.svelte';

const times: Partial<Record<string, Intl.DateTimeFormat>> = {};

/** As the story and the printed sheet say it: `22 November 2026`. */
export function date(at: number): string {
  const when = new Date(at);
  return t('ui-date')
    .replace('{day}', String(when.getDate()))
    .replace('{month}', t(`ui-month-${when.getMonth() + 1}` as WordKey))
    .replace('{year}', String(when.getFullYear()));
}

/** The same with the day of the week. */
export function day(at: number): string {
  const weekday = new Date(at).getDay() || 7;
  return t('ui-day')
    .replace('{weekday}', t(`ui-weekday-${weekday}` as WordKey))
    .replace('{date}', date(at));
}

/** Hours and minutes, as is usual where the device says it is. */
export function time(at: number): string {
  const code = language();
  const here = typeof navigator === 'undefined' ? [] : (navigator.languages ?? []);
  const tongue = here.find((l) => l === code || l.startsWith(`${code}-`)) ?? code;
  const parts = { hour: 'numeric', minute: '2-digit' } as const;
  return (times[tongue] ??= new Intl.DateTimeFormat(tongue, parts)).format(at);
}

/** The name of this device's time zone in the IANA database. */
export const zone = () => Intl.DateTimeFormat().resolvedOptions().timeZone ?? 'UTC';

/** Whole seconds as `m:ss`. */
export function clock(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds));
  const part = String(whole % 60).padStart(2, '0');
  return `${Math.floor(whole / 60)}:${part}`;
}
