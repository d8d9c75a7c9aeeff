// Measures what is shown: hit areas, contrast, what is cut off, what lies over what.
// Gives {targets, contrast, cut, over, sideways, counted: [targets, texts]}; a line for each fault.
const TARGET = 48;
const CONTRAST = 4.5;
const LIVE =
  'button, a[href], input, select, textarea, summary, [role=button], [role=slider], [role=gridcell], [role=link]';

const modal = [...document.querySelectorAll('dialog:modal')].pop();
const scope = modal ?? document.body;

const SAID = '.unseen, [hidden], [inert], html.large .app:not(.wide) .unseen-large';
const unseen = (e) => e.closest(SAID) !== null;
const shown = (e) =>
  !unseen(e) &&
  e.getClientRects().length > 0 &&
  e.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: true });
const squash = (text) => text.replace(/\s+/g, ' ').trim();
const named = (e) => {
  const said = e.getAttribute('aria-label') ?? e.innerText ?? e.textContent ?? e.value ?? '';
  return `${e.dataset.testid ?? e.tagName.toLowerCase()} “${squash(said).slice(0, 40)}”`;
};

// Hit areas: its own, or that of a label which hands on what hits it.
const targets = [];
const live = [...scope.querySelectorAll(LIVE)].filter((e) => shown(e) && !e.disabled);
for (const e of live) {
  const areas = [e, ...(e.labels ?? [])].map((a) => a.getBoundingClientRect());
  const large = areas.some((r) => r.width >= TARGET - 0.01 && r.height >= TARGET - 0.01);
  if (large) continue;
  const [own] = areas;
  targets.push(`${named(e)} ${own.width.toFixed(1)} × ${own.height.toFixed(1)}`);
}

// Colours as WCAG has them.
const colour = (text) => {
  const parts = text.match(/^rgba?\(([^)]+)\)$/)?.[1].split(/[\s,/]+/).map(Number);
  return parts && [parts[0], parts[1], parts[2], parts[3] ?? 1];
};
const over = (top, under) => {
  const alpha = top[3];
  return [0, 1, 2].map((n) => top[n] * alpha + under[n] * (1 - alpha)).concat(1);
};
const light = ([r, g, b]) => {
  const part = (c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4);
  return 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
};
const ratio = (a, b) => {
  const [high, low] = [light(a), light(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
};
const unclear = new Set();

// Every colour that may lie under an element: a gradient is taken by its stops.
function grounds(e) {
  if (!e || e === document) return [[255, 255, 255, 1]];
  const style = getComputedStyle(e);
  const own = colour(style.backgroundColor) ?? [0, 0, 0, 0];
  let found = own[3] >= 1 ? [own] : grounds(e.parentElement).map((g) => over(own, g));
  if (style.backgroundImage !== 'none' && !['SELECT', 'INPUT'].includes(e.tagName)) {
    const stops = style.backgroundImage.match(/rgba?\([^)]+\)/g)?.map(colour);
    if (!stops) unclear.add(named(e));
    else found = stops.flatMap((stop) => found.map((g) => over(stop, g)));
  }
  return found;
}

function opacity(e) {
  let whole = 1;
  for (let at = e; at; at = at.parentElement) whole *= Number(getComputedStyle(at).opacity);
  return whole;
}

function worst(e) {
  const style = getComputedStyle(e);
  if (e instanceof SVGElement) {
    // Letters in a drawing have a rim of their own, painted first, which is their ground.
    const [ink, rim] = [colour(style.fill), colour(style.stroke)];
    const rimmed = rim && rim[3] === 1 && Number.parseFloat(style.strokeWidth) > 0;
    if (!ink || !rimmed || !style.paintOrder.startsWith('stroke')) {
      unclear.add(`${named(e)} in a drawing`);
      return Infinity;
    }
    return ratio(ink, rim);
  }
  const ink = colour(style.color);
  const share = opacity(e);
  return Math.min(
    ...grounds(e).map((ground) => {
      // What is see-through as a whole lets the page's ground through too.
      const page = grounds(document.body)[0];
      const [top, under] = [over(ink, ground), ground].map((c) => over([...c.slice(0, 3), share], page));
      return ratio(top, under);
    }),
  );
}

// Texts: every run of letters to be seen, and what stands in fields.
const walker = document.createTreeWalker(scope, NodeFilter.SHOW_TEXT);
const texts = [];
for (let node = walker.nextNode(); node; node = walker.nextNode()) {
  const e = node.parentElement;
  if (!node.data.trim() || !shown(e) || e.tagName === 'OPTION' || e.tagName === 'TEXTAREA') continue;
  const range = document.createRange();
  range.selectNodeContents(node);
  const rects = [...range.getClientRects()].filter((r) => r.width > 0.5 && r.height > 0.5);
  if (rects.length) texts.push({ e, rects, said: squash(node.data).slice(0, 40) });
}
const fields = live.filter((e) => ['INPUT', 'SELECT', 'TEXTAREA'].includes(e.tagName));
const typed = fields.filter((e) => !['radio', 'checkbox'].includes(e.type));
const contrast = [];
const read = new Set([...texts.map(({ e }) => e), ...typed]);
for (const e of read) {
  const found = worst(e);
  if (found < CONTRAST) contrast.push(`${named(e)} ${found.toFixed(2)}`);
}

// What is cut off: beyond the window's sides, beyond its button, or hidden by a box it is in.
const cut = [];
for (const { e, rects, said } of texts) {
  if (e instanceof SVGElement) continue;
  const box = (r) => `${said}: ${r.left.toFixed(0)}–${r.right.toFixed(0)}`;
  const aside = rects.find((r) => r.left < -1 || r.right > innerWidth + 1);
  let pans = false;
  for (let at = e; at && at !== document.documentElement; at = at.parentElement) {
    const style = getComputedStyle(at);
    const edge = at.getBoundingClientRect();
    const [x, y] = [style.overflowX, style.overflowY];
    if (['auto', 'scroll'].includes(x) && at.scrollWidth > at.clientWidth + 1) pans = true;
    const out = (r) =>
      (['hidden', 'clip'].includes(x) && (r.left < edge.left - 1 || r.right > edge.right + 1)) ||
      (['hidden', 'clip'].includes(y) && (r.top < edge.top - 3 || r.bottom > edge.bottom + 3));
    const lost = pans ? undefined : rects.find(out);
    if (lost) cut.push(`${box(lost)} is cut off by ${named(at)}`);
    if (at.tagName === 'BUTTON' || at.tagName === 'LABEL') {
      const beyond = rects.find((r) => r.left < edge.left - 1 || r.right > edge.right + 1
        || r.top < edge.top - 3 || r.bottom > edge.bottom + 3);
      if (beyond && !pans) cut.push(`${box(beyond)} sticks out of ${named(at)}`);
    }
  }
  if (aside && !pans) cut.push(`${box(aside)} is beyond the window's side`);
}
// What may be typed as long as one likes moves in its field.
for (const e of typed) {
  if (e.tagName === 'INPUT' && e.maxLength < 0 && e.scrollWidth > e.clientWidth + 1) cut.push(`${named(e)}: its text`);
}

// What lies over what, layer by layer: feet and bars stand over what scrolls on purpose.
const layer = (e) => e.closest('dialog, .foot, .nav, .top, .second, .problem, main');
const covered = [];
const clear = texts.filter(({ e }) => !(e instanceof SVGElement));
for (let i = 0; i < clear.length; i += 1) {
  for (let j = i + 1; j < clear.length; j += 1) {
    const [a, b] = [clear[i], clear[j]];
    if (layer(a.e) !== layer(b.e)) continue;
    const meet = a.rects.some((r) =>
      b.rects.some((s) => {
        const wide = Math.min(r.right, s.right) - Math.max(r.left, s.left);
        const high = Math.min(r.bottom, s.bottom) - Math.max(r.top, s.top);
        // Lines set close share a little of the room above and below their letters.
        return wide > 2 && high > Math.min(r.height, s.height) * 0.4;
      }),
    );
    if (meet) covered.push(`“${a.said}” and “${b.said}”`);
  }
}

const page = document.documentElement;
const sideways = [];
if (page.scrollWidth > innerWidth) {
  const far = [...document.body.querySelectorAll('*')].filter((e) => e.getBoundingClientRect().right > innerWidth + 1);
  const who = far.slice(0, 6).map((e) => `${e.tagName}.${e.className.baseVal ?? e.className} to ${e.getBoundingClientRect().right.toFixed(0)}`);
  sideways.push(`the page: ${page.scrollWidth} of ${innerWidth}, by ${who.join(', ')}`);
}
for (const e of [document.getElementById('main'), modal]) {
  if (e && e.scrollWidth > e.clientWidth + 1) sideways.push(`${e.tagName}: ${e.scrollWidth} of ${e.clientWidth}`);
}

// The large button of the screen, without scrolling: where it is is what would be hit.
const hidden = [];
for (const e of scope.querySelectorAll(modal ? '.no-foot' : '.foot .big')) {
  const r = e.getBoundingClientRect();
  const hit = document.elementFromPoint((r.left + r.right) / 2, (r.top + r.bottom) / 2);
  const inside = r.top >= -1 && r.bottom <= innerHeight + 1 && r.left >= -1 && r.right <= innerWidth + 1;
  if (!inside || !hit || !e.contains(hit)) hidden.push(`${named(e)} at ${r.top.toFixed(0)}–${r.bottom.toFixed(0)} of ${innerHeight}`);
}

return {
  targets,
  contrast,
  cut: [...new Set(cut)],
  over: covered,
  sideways,
  hidden,
  unclear: [...unclear],
  counted: [live.length, read.size],
};
