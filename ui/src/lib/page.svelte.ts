// The page itself: how wide it is, and the theme, letters and language it is dressed in.
//
// What the styles go by stands as classes of the page's root: `large` letters, a `broad` window,
// in which a screen has columns side by side, and a `wide` one, in which the tabs stand beside
// the screen; a broad window is also wide. The two widths are said here and nowhere else.

import type { Prefs } from './types';

const BROAD = '(min-width: 900px)';
const WIDE = `${BROAD}, (min-width: 640px) and (max-height: 520px)`;
const DARK = '(prefers-color-scheme: dark)';
/** Letters are large from this size on, in per cent. */
const LARGE = 140;

export class Page {
  wide = $state(false);

  private prefs: Prefs | null = null;

  /** Follow the window's size and the device's theme, from now on. */
  begin() {
    this.follow(BROAD, (is) => this.mark('broad', is));
    this.follow(WIDE, (is) => {
      this.mark('wide', is);
      this.wide = is;
    });
    this.follow(DARK, () => this.dress());
  }

  /** Dress the page as is preferred, in this language. */
  wear(prefs: Prefs, language: string) {
    this.prefs = prefs;
    document.documentElement.lang = language;
    this.dress();
  }

  private dress() {
    if (!this.prefs) return;
    const { theme, text } = this.prefs;
    const dark = theme === 'dark' || (theme === 'auto' && matchMedia(DARK).matches);
    const page = document.documentElement;
    page.dataset.theme = dark ? 'dark' : 'light';
    page.style.fontSize = `${text}%`;
    this.mark('large', text >= LARGE);
  }

  private mark(name: string, is: boolean) {
    document.documentElement.classList.toggle(name, is);
  }

  private follow(query: string, turn: (matches: boolean) => void) {
    const media = matchMedia(query);
    turn(media.matches);
    media.addEventListener('change', () => turn(media.matches));
  }
}
