// Elements, numbers and times for the white-light pages. Whatever comes from the server becomes text, never markup.

/** An element: attributes, listeners as `onclick`, properties for what has no attribute; children as text or elements. */
export function h(tag, given = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(given)) {
    if (value === undefined || value === null || value === false) continue;
    if (name.startsWith('on')) element.addEventListener(name.slice(2), value);
    else if (name === 'value' || name === 'checked') element[name] = value;
    else element.setAttribute(name, value === true ? '' : String(value));
  }
  element.append(...children.flat().filter((c) => c !== null && c !== undefined && c !== false).map(childOf));
  return element;
}

function childOf(child) {
  return child instanceof Node ? child : document.createTextNode(String(child));
}

export const isNumber = (value) => typeof value === 'number' && Number.isFinite(value);
export const list = (value) => (Array.isArray(value) ? value : []);

/** A number with so many decimals, or a dash. */
export function num(value, decimals = 1, unit = '') {
  return isNumber(value) ? value.toFixed(decimals) + (unit ? '\u00a0' + unit : '') : '–';
}

/** A number as short as it may be said: three figures that count. */
export function short(value) {
  if (!isNumber(value)) return '–';
  return Math.abs(value) >= 1000 ? String(Math.round(value)) : String(Number(value.toPrecision(4)));
}

/** Seconds as minutes:seconds. */
export function clock(seconds) {
  if (!isNumber(seconds)) return '–';
  const tenths = Math.round(Math.abs(seconds) * 10);
  const s = (tenths % 600) / 10;
  const text = s % 1 ? s.toFixed(1).padStart(4, '0') : String(s).padStart(2, '0');
  return (seconds < 0 ? '−' : '') + Math.floor(tenths / 600) + ':' + text;
}

/** Minutes:seconds, or seconds alone, as seconds; NaN for neither. */
export function secondsOf(text) {
  const said = text.trim().replace('−', '-').replace(',', '.');
  const parts = /^(-?)(?:(\d{1,4}):)?(\d{1,6}(?:\.\d+)?)$/.exec(said);
  if (!parts || (parts[2] !== undefined && Number(parts[3]) >= 60)) return NaN;
  const seconds = Number(parts[2] ?? 0) * 60 + Number(parts[3]);
  return parts[1] ? -seconds : seconds;
}

/** A moment as the person's own calendar and clock say it. */
export function when(instant) {
  const date = new Date(instant);
  if (Number.isNaN(date.getTime())) return '–';
  return date.toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}

/** A name in JSON as words: `base_exposure_s` as "base exposure". */
export const words = (name) => String(name).replace(/[_-]/g, ' ');

/** Pairs of words and values. */
export function facts(pairs, className = 'facts') {
  return h('dl', { class: className }, pairs.filter(Boolean).map(([name, value]) =>
    h('div', {}, h('dt', {}, name), h('dd', {}, value))));
}

/** A table that scrolls within itself where it is wider than the page. */
export function table(caption, head, rows) {
  return h('div', { class: 'scroll', role: 'region', 'aria-label': caption, tabindex: '0' },
    h('table', {},
      h('caption', {}, caption),
      h('thead', {}, h('tr', {}, head.map((c) => h('th', { scope: 'col' }, c)))),
      h('tbody', {}, rows.map((row) => h('tr', {}, row.map((c, i) => (i ? h('td', {}, c) : h('th', { scope: 'row' }, c))))))));
}

/** A button that asks once more before it acts. */
export function twice(label, again, act) {
  let sure = false;
  const button = h('button', { type: 'button', class: 'quiet' }, label);
  const calm = () => { sure = false; button.textContent = label; };
  button.addEventListener('click', () => {
    if (sure) { calm(); act(); } else { sure = true; button.textContent = again; }
  });
  button.addEventListener('blur', calm);
  return button;
}

/** Something to open; its content is made when it is opened first. */
export function fold(summary, make, open = false) {
  const box = h('details', {}, h('summary', {}, summary));
  let made = false;
  const fill = () => { if (!made) { made = true; box.append(make()); } };
  box.addEventListener('toggle', () => { if (box.open) fill(); });
  box.fill = () => { fill(); box.open = true; };
  if (open) box.fill();
  return box;
}

/** What was corrected, newest last. */
export function history(entries) {
  const all = list(entries);
  if (!all.length) return h('p', { class: 'hint' }, 'Nothing was corrected.');
  return h('ol', { class: 'history' }, all.map((e) => h('li', {},
    h('span', { class: 'when' }, when(e.at)), ' ', h('b', {}, words(e.field)), ': ',
    h('s', {}, e.was || 'nothing'), ' → ', e.became || 'nothing')));
}

export function caution(text) {
  return h('p', { class: 'caution' }, h('strong', {}, 'Caution. '), text);
}

/** Says something once, at the foot and to a screen reader. */
export function say(text) {
  const place = document.getElementById('said');
  place.textContent = text;
  clearTimeout(say.timer);
  say.timer = setTimeout(() => { place.textContent = ''; }, 8000);
}
