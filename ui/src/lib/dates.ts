// Dates and clocks, in the language of the words.

const tongue =
  typeof navigator === 'undefined'
    ? 'en'
    : (navigator.languages?.find((l) => l.startsWith('en')) ?? 'en');
const dayForm = new Intl.DateTimeFormat(tongue, {
  weekday: 'long',
  day: 'numeric',
  month: 'long',
  year: 'numeric',
});
const shortForm = new Intl.DateTimeFormat(tongue, {
  day: 'numeric',
  month: 'short',
  year: 'numeric',
});
const timeForm = new Intl.DateTimeFormat(tongue, { hour: 'numeric', minute: '2-digit' });

export const day = (at: number) => dayForm.format(at);
export const shortDay = (at: number) => shortForm.format(at);
export const time = (at: number) => timeForm.format(at);

/** How far local time is east of UTC now, in minutes. */
export const east = () => -new Date().getTimezoneOffset();

/** Whole seconds as `m:ss`. */
export function clock(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds));
  const part = String(whole % 60).padStart(2, '0');
  return `${Math.floor(whole / 60)}:${part}`;
}
