// One bath: what it holds, its book, what is poured in next, the label for what is kept.
import { caution, facts, fold, h, history, list, num, table, twice, when, words } from './white-dom.js';
import { get } from './white-http.js';
import { act, field, form, numberOr } from './white-form.js';
import { putIn } from './white-baths.js';

let notice = ''; // what the answer to the last line warned of, shown once the page is made anew

export async function bathPage({ id, again }) {
  const path = '/api/baths/' + id;
  const [bath, baths, shelf, tray] = await Promise.all([get(path), get('/api/baths?limit=200'), get('/api/shelf'), get('/api/in-tray')]);
  const warned = notice ? h('p', { class: 'caution', role: 'alert' }, notice) : null;
  notice = '';
  return h('article', {},
    h('p', { class: 'crumb' }, h('a', { href: '#/baths' }, 'Bath book'), ' / ', bath.name),
    h('h1', {}, bath.name),
    h('p', { class: 'when' }, 'made ', when(bath.made), ', ', num(bath.age_h, 1), ' hours ago. ', bath.in_tray ? h('span', { class: 'tag' }, 'in the tray') : null),
    bath.note ? h('p', {}, bath.note) : null, warned,
    bath.in_tray ? null : h('p', { class: 'actions' }, h('button', { type: 'button', onclick: () => putIn(bath.id, again) }, 'It is in the tray now')),
    part('What it holds', holds(bath)),
    part('Add a line', addForm(bath, baths, shelf, tray, path, again)),
    part('Book', book(bath, baths, path, again)),
    part('Label for what is kept', label(bath)),
    part('Name and note', rename(bath, path, again)),
    part('History', fold('What was corrected (' + list(bath.history).length + ')', () => history(bath.history))));
}

function part(title, ...content) {
  return h('section', { class: 'part', 'aria-label': title }, h('h2', {}, title), ...content);
}

const withDoubt = (value, doubt, decimals, unit) => num(value, decimals) + ' ± ' + num(doubt, decimals, unit);

function holds(bath) {
  const c = bath.contents;
  const parts = list(c.concentrates);
  const shares = list(c.shares).filter((s) => s.bath !== bath.id && s.share > 0);
  return [
    facts([
      ['litres', withDoubt(c.litres, c.give_or_take_l, 2, 'L')],
      ['strength', withDoubt(c.strength * 100, c.strength_give_or_take * 100, 1, '%')],
      ['bromide as KBr', withDoubt(c.bromide_g_per_l, c.bromide_give_or_take_g_per_l, 2, 'g/L')],
      ['sulfite as Na₂SO₃', withDoubt(c.sulfite_g_per_l, c.sulfite_give_or_take_g_per_l, 1, 'g/L')],
      ['developer used', withDoubt(c.developer_used_g_per_l, c.developer_used_give_or_take_g_per_l, 2, 'g/L')],
      ['paper printed', num(c.area_m2, 2, 'm²') + ', ' + num(c.area_m2_per_l, 2, 'm²/L')],
      ['hot for', num(c.hours_hot, 1, 'h')],
    ]),
    parts.length ? h('p', {}, 'Concentrates: ', parts.map((p, i) => (i ? ', ' : '') + p.name + ' ' + withDoubt(p.millilitres, p.give_or_take_ml, 0, 'mL'))) : null,
    shares.length ? h('p', {}, 'Of earlier baths: ', shares.map((s, i) => [i ? ', ' : '', h('a', { href: '#/baths/' + s.bath }, s.name), ' ' + num(s.share * 100, 0, '%')]).flat()) : null,
    h('p', { class: 'hint' }, 'Estimates from what was entered, with two standard uncertainties give or take; what was never declared of a concentrate is not in them.'),
  ];
}

const KINDS = [['poured', 'poured in'], ['carried-over', 'carried over from an earlier bath'], ['poured-away', 'poured away'], ['level-read', 'level read: it holds so much']];

function addForm(bath, baths, shelf, tray, path, again) {
  const others = baths.filter((b) => b.id !== bath.id);
  const names = ['water', 'bromide 10 %', 'sulfite 10 %', ...list(shelf.items).filter((i) => ['concentrate', 'stock'].includes(i.kind)).map((i) => i.name), ...list(tray.again).map((a) => a.what)];
  const kind = field({ name: 'kind', label: 'What happened', kind: 'choice', choices: others.length ? KINDS : KINDS.filter(([k]) => k !== 'carried-over') });
  const what = field({ name: 'what', label: 'What', values: [...new Set(names)] });
  const from = field({ name: 'from', label: 'From', kind: 'choice', choices: others.map((b) => [String(b.id), b.name]) });
  const ml = field({ name: 'millilitres', label: 'How much', kind: 'number', unit: 'mL' });
  const dilution = field({ name: 'dilution', label: 'Dilution', accepted: 'such as 1+7; empty for undiluted' });
  const celsius = field({ name: 'celsius', label: 'Temperature of it', kind: 'number', unit: '°C', hint: 'empty where not known; above 30 °C the air must be proven' });
  const fields = [kind, what, from, ml, dilution, celsius];
  const shown = () => {
    from.box.hidden = kind.control.value !== 'carried-over';
    what.box.hidden = dilution.box.hidden = kind.control.value !== 'poured';
    celsius.box.hidden = !['poured', 'carried-over'].includes(kind.control.value);
  };
  kind.control.addEventListener('change', shown);
  shown();
  return [
    again2(tray, what, ml, dilution),
    form({
      fields, submit: 'Enter it',
      send: (v) => ({ method: 'POST', path: path + '/additions', body: lineOf(v), said: 'Entered.' }),
      done: (line) => {
        notice = [line.warning && 'Warning: ' + line.warning + '.', String(line.controller || '').startsWith('refused') && 'The controller did not take it: ' + line.controller + '.'].filter(Boolean).join(' ');
        again();
      },
    }),
  ];
}

/** What was poured of late, to fill in the form by one press. */
function again2(tray, what, ml, dilution) {
  const late = list(tray.again);
  if (!late.length) return null;
  return h('p', { class: 'actions late' }, h('span', { class: 'hint' }, 'Of late: '), late.map((a) => h('button', { type: 'button', class: 'quiet', onclick: () => {
    what.control.value = a.what;
    ml.control.value = String(a.millilitres);
    dilution.control.value = a.dilution || '';
    ml.control.focus();
  } }, a.what + ' ' + num(a.millilitres, 0, 'mL') + (a.dilution ? ' ' + a.dilution : ''))));
}

function lineOf(v) {
  const body = { kind: v.kind, millilitres: numberOr(v.millilitres) };
  if (v.kind === 'poured') {
    body.what = v.what;
    if (v.dilution) body.dilution = v.dilution;
  }
  if (v.kind === 'carried-over') body.from = Number(v.from);
  if (['poured', 'carried-over'].includes(v.kind) && v.celsius !== '') body.celsius = numberOr(v.celsius);
  return body;
}

const ENTERED = ['poured', 'carried-over', 'poured-away', 'level-read'];

function book(bath, baths, path, again) {
  const name = (other) => (baths.find((b) => b.id === other) || { name: 'bath ' + other }).name;
  const place = h('div', { 'aria-live': 'polite' });
  const rows = list(bath.book).map((line) => [
    when(line.at),
    [words(line.kind), line.what || (line.from ? 'from ' + name(line.from) : line.to ? 'to ' + name(line.to) : ''), line.dilution].filter(Boolean).join(' ')
      + (line.counted === false && line.kind !== 'printed' ? ' (not counted)' : ''),
    line.print ? h('a', { href: '#/prints/' + line.print }, 'print ' + line.print) : num(line.millilitres, 0, 'mL') + (line.celsius === null ? '' : ' at ' + num(line.celsius, 0, '°C')),
    num(line.after.litres, 2, 'L'), num(line.after.strength * 100, 1, '%'), num(line.after.bromide_g_per_l, 2, 'g/L'), num(line.after.sulfite_g_per_l, 1, 'g/L'),
    ENTERED.includes(line.kind) ? h('span', { class: 'actions' },
      h('button', { type: 'button', class: 'quiet', onclick: () => { place.replaceChildren(correct(line, path, again)); place.querySelector('input').focus(); } }, 'Edit', h('span', { class: 'unseen' }, ' line ' + line.id)),
      twice('Take back', 'Really take it back', () => act('DELETE', path + '/additions/' + line.id, undefined, 'Line taken back.', again))) : '',
  ]);
  return rows.length
    ? [table('Lines of the book, and what each left in the tray', ['When', 'What', 'How much', 'Litres', 'Strength', 'Bromide', 'Sulfite', 'Put right'], rows), place]
    : h('p', { class: 'empty' }, 'No lines yet.');
}

function correct(line, path, again) {
  const fields = [
    line.kind === 'poured' ? field({ name: 'what', label: 'What' }, line.what) : null,
    field({ name: 'millilitres', label: 'How much', kind: 'number', unit: 'mL' }, line.millilitres),
    line.kind === 'poured' ? field({ name: 'dilution', label: 'Dilution', accepted: 'such as 1+7; empty for undiluted' }, line.dilution) : null,
    field({ name: 'celsius', label: 'Temperature', kind: 'number', unit: '°C' }, line.celsius ?? ''),
  ].filter(Boolean);
  return form({
    className: 'boxed', fields, submit: 'Save line', intro: h('h3', {}, 'Correct the line of ' + when(line.at)),
    send: (v) => ({ method: 'PATCH', path: path + '/additions/' + line.id, said: 'Line corrected.',
      body: { ...v, millilitres: numberOr(v.millilitres), celsius: v.celsius === '' ? null : numberOr(v.celsius) } }),
    done: again,
  });
}

function label(bath) {
  const c = bath.contents;
  const slip = h('div', { class: 'label' },
    h('p', {}, h('strong', {}, 'USED DEVELOPER, KEPT FOR CARRY-OVER')),
    h('p', {}, 'Of: ', bath.name, ', bath ', bath.id),
    h('p', {}, 'Made: ', when(bath.made)),
    h('p', {}, 'Kept since: ', when(new Date().toISOString())),
    h('p', {}, 'Strength ', num(c.strength * 100, 1, '%'), ', bromide ', num(c.bromide_g_per_l, 2, 'g/L'), ', sulfite ', num(c.sulfite_g_per_l, 1, 'g/L'), ', ', num(c.area_m2_per_l, 2, 'm²/L'), ' printed (estimates)'),
    h('p', {}, h('strong', {}, 'Harms skin and eyes, harmful if swallowed. Not a drink, not in a food bottle. Locked away from children. Gloves and goggles. No acid into it. Closed, cool and dark.')));
  return [
    caution('Whatever is kept gets a label the same hour: what it is, since when, and the warning. What an unlabelled bottle holds, nobody knows: out with it, as hazardous waste.'),
    slip,
    h('p', { class: 'actions' }, h('button', { type: 'button', class: 'quiet', onclick: () => window.print() }, 'Print the label')),
  ];
}

function rename(bath, path, again) {
  return form({
    fields: [field({ name: 'name', label: 'Name' }, bath.name), field({ name: 'note', label: 'Note' }, bath.note)], submit: 'Save name and note',
    send: (body) => ({ method: 'PATCH', path, body }), done: again,
  });
}
