// Finds what is shown by role and name, roughly as a screen reader tells it.
// arguments: role, name. Special roles: `list` tells all, `focus` what has the focus.
const [wantedRole, wantedName] = arguments;

// Large things are not named after all they hold.
const NAMED_BY_HAND =
  'main navigation banner contentinfo region dialog alertdialog list table grid group figure article form radiogroup tablist toolbar textbox combobox listbox'.split(
    ' ',
  );

function squash(text) {
  return (text ?? '').replace(/\s+/g, ' ').trim();
}

function roleOf(element) {
  const given = element.getAttribute('role');
  if (given) return given.split(' ')[0];
  const tag = element.tagName.toLowerCase();
  const type = element.type;
  if (tag === 'input') {
    if (type === 'checkbox' || type === 'radio') return type;
    if (type === 'range') return 'slider';
    if (type === 'number') return 'spinbutton';
    return type === 'button' || type === 'submit' ? 'button' : 'textbox';
  }
  if (tag === 'a') return element.hasAttribute('href') ? 'link' : '';
  if (/^h[1-6]$/.test(tag)) return 'heading';
  const plain = {
    button: 'button',
    textarea: 'textbox',
    select: element.multiple || element.size > 1 ? 'listbox' : 'combobox',
    option: 'option',
    img: 'img',
    nav: 'navigation',
    main: 'main',
    header: 'banner',
    dialog: 'dialog',
    ul: 'list',
    ol: 'list',
    li: 'listitem',
    table: 'table',
    output: 'status',
    progress: 'progressbar',
    summary: 'button',
    fieldset: 'group',
    article: 'article',
  };
  return plain[tag] ?? '';
}

function textOf(node) {
  if (node.nodeType === Node.TEXT_NODE) return node.data;
  if (node.nodeType !== Node.ELEMENT_NODE) return '';
  if (node.getAttribute('aria-hidden') === 'true' || node.hidden) return '';
  const label = node.getAttribute('aria-label') ?? node.getAttribute('alt');
  if (label) return label;
  return [...node.childNodes].map(textOf).join(' ');
}

function nameOf(element) {
  const ids = element.getAttribute('aria-labelledby');
  if (ids) {
    const parts = ids.split(/\s+/).map((id) => document.getElementById(id));
    return squash(parts.map((part) => (part ? textOf(part) : '')).join(' '));
  }
  const own = element.getAttribute('aria-label') ?? element.getAttribute('alt');
  if (own) return squash(own);
  if (element.labels?.length) return squash([...element.labels].map(labelText).join(' '));
  if (element.tagName === 'FIELDSET') return squash(element.querySelector('legend')?.textContent);
  if (NAMED_BY_HAND.includes(roleOf(element))) return squash(element.title);
  return squash(textOf(element)) || squash(element.title);
}

// A label's words without those of the field inside it.
function labelText(label) {
  const copy = label.cloneNode(true);
  copy.querySelectorAll('input, select, textarea').forEach((field) => field.remove());
  return textOf(copy);
}

function shown(element) {
  if (element.closest('[inert], [aria-hidden="true"], [hidden]')) return false;
  if (element.tagName === 'OPTION') return true;
  return element.getClientRects().length > 0 && getComputedStyle(element).visibility === 'visible';
}

if (wantedRole === 'focus') {
  const focus = document.activeElement;
  return focus ? squash(`${roleOf(focus)} ${nameOf(focus)}`) : '';
}

const open = [...document.querySelectorAll('dialog:modal')].pop();
const all = [...(open ?? document).querySelectorAll('*')].filter((e) => roleOf(e) && shown(e));
if (wantedRole === 'list') {
  return all.map((e) => `${roleOf(e)} “${nameOf(e).slice(0, 120)}”`).join('\n');
}
return all.filter((element) => {
  if (wantedRole !== '*' && roleOf(element) !== wantedRole) return false;
  const name = nameOf(element);
  return wantedName.startsWith('~') ? name.includes(wantedName.slice(1)) : name === wantedName;
});
