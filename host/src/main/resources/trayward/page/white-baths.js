// The bath book: which baths there are, which is in the tray, a new one.
import { h, list, num, when } from './white-dom.js';
import { get } from './white-http.js';
import { act, field, form, numberOr } from './white-form.js';

export async function bathsPage({ again }) {
  const [baths, tray, shelf] = await Promise.all([get('/api/baths?limit=200'), get('/api/in-tray'), get('/api/shelf')]);
  return h('section', {}, h('h1', {}, 'Bath book'),
    inTray(tray, baths, again),
    h('section', { class: 'part', 'aria-label': 'Baths' }, h('h2', {}, 'Baths'),
      baths.length ? h('ul', { class: 'rows' }, baths.map(row)) : h('p', { class: 'empty' }, 'No baths yet.')),
    h('section', { class: 'part', 'aria-label': 'New bath' }, h('h2', {}, 'New bath'), newBath(shelf)));
}

function row(bath) {
  const c = bath.contents || {};
  return h('li', {},
    h('h3', {}, h('a', { href: '#/baths/' + bath.id }, bath.name), bath.in_tray ? h('span', { class: 'tag' }, 'in the tray') : null),
    h('p', {}, num(bath.litres_now, 2, 'L'), ', strength ', num(c.strength * 100, 1, '%'), ', bromide ', num(c.bromide_g_per_l, 2, 'g/L'), ', ', num(c.area_m2_per_l, 2, 'm²'), ' printed in a litre'),
    h('p', { class: 'when' }, 'made ', when(bath.made)));
}

function inTray(tray, baths, again) {
  const now = tray.bath ? String(tray.bath.id) : '';
  const which = field({ name: 'bath', label: 'In the tray is', kind: 'choice', choices: [['', 'none of them'], ...baths.map((b) => [String(b.id), b.name])] }, now);
  return form({
    className: 'inline boxed', fields: [which], submit: 'Say so',
    send: (v) => ({ method: 'PUT', path: '/api/in-tray', body: { bath: v.bath === '' ? null : Number(v.bath) }, said: 'Noted what is in the tray.' }),
    done: again,
  });
}

const WAYS = [['make-up', 'a make-up from the shelf'], ['dilution', 'litres at a dilution of concentrates'], ['empty', 'an empty tray, filled line by line']];

function newBath(shelf) {
  const items = list(shelf.items);
  const makeUps = items.filter((i) => i.kind === 'make-up');
  const concentrates = items.filter((i) => i.kind === 'concentrate').map((i) => i.name);
  const how = field({ name: 'how', label: 'Made of', kind: 'choice', choices: makeUps.length ? WAYS : WAYS.slice(1) });
  const fields = {
    name: field({ name: 'name', label: 'Name', required: true }),
    how,
    make_up: field({ name: 'make_up', label: 'Make-up', kind: 'choice', choices: makeUps.map((m) => [String(m.id), m.name]) }),
    litres: field({ name: 'litres', label: 'Litres', kind: 'number', unit: 'L', hint: 'empty for a make-up’s own' }),
    dilution: field({ name: 'dilution', label: 'Dilution', accepted: 'parts by volume, such as 1+1+20' }),
    concentrates: field({ name: 'concentrates', label: 'Concentrates', values: [concentrates.join(', ')].filter(Boolean), accepted: 'one for each part before the water, with commas' }),
    note: field({ name: 'note', label: 'Note' }),
  };
  const shown = () => {
    const way = how.control.value;
    fields.make_up.box.hidden = way !== 'make-up';
    fields.litres.box.hidden = way === 'empty';
    fields.dilution.box.hidden = fields.concentrates.box.hidden = way !== 'dilution';
  };
  how.control.addEventListener('change', shown);
  shown();
  return form({
    fields: Object.values(fields), submit: 'Make bath', intro: h('p', { class: 'hint' }, 'It is then noted as the one in the tray.'),
    send: (v) => ({ method: 'POST', path: '/api/baths', body: bodyOf(v), said: 'Bath made.' }),
    done: (bath) => { location.hash = '#/baths/' + bath.id; },
  });
}

function bodyOf(v) {
  const body = { name: v.name };
  if (v.note) body.note = v.note;
  if (v.how !== 'empty' && v.litres !== '') body.litres = numberOr(v.litres);
  if (v.how === 'make-up') body.make_up = Number(v.make_up);
  if (v.how === 'dilution') {
    body.dilution = v.dilution;
    body.concentrates = v.concentrates.split(',').map((c) => c.trim()).filter(Boolean);
  }
  return body;
}

/** Says that a bath is in the tray, from its own page. */
export const putIn = (id, again) => act('PUT', '/api/in-tray', { bath: id }, 'Noted what is in the tray.', again);
