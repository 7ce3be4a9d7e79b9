// Up to four prints side by side: traces over each other from `in`, figures and records in a table.
import { clock, h, list, num, table, when, words } from './white-dom.js';
import { ask, get } from './white-http.js';
import { chart, traceOf } from './white-chart.js';
import { chosen, COMPARED_MAX } from './white-chosen.js';
import { bathOf } from './white-bathof.js';

export async function comparePage({ query }) {
  const ids = [...new Set((query.get('n') || '').split(',').filter((n) => /^\d{1,15}$/.test(n)))].slice(0, COMPARED_MAX);
  if (ids.length < 2) {
    return h('section', {}, h('h1', {}, 'Compare'), h('p', {}, 'Choose two to four prints on the ', h('a', { href: '#/prints' }, 'sheet'), '.'));
  }
  const [prints, fields] = await Promise.all([Promise.all(ids.map((id) => get('/api/prints/' + id))), get('/api/print-fields')]);
  const traces = await Promise.all(ids.map((id) => ask('GET', '/api/prints/' + id + '/trace.csv')));
  const baths = await Promise.all(prints.map((p) => bathOf(p).catch(() => null)));
  const lines = prints.map((p, i) => ({ name: 'print ' + p.id, short: String(p.id), trace: traceOf(traces[i].ok ? traces[i].body : 't_s,bath_c'), marks: p.marks }));
  return h('section', {}, h('h1', {}, 'Prints ' + ids.join(', ') + ' side by side'),
    h('ul', { class: 'sheet side' }, prints.map(head)),
    chart(lines, 'Bath temperature of prints ' + ids.join(', ') + ' over the time from in; means ' + prints.map((p) => num(p.summary.mean_c)).join(', ') + ' °C'),
    table('Key figures', ['', ...prints.map((p) => 'Print ' + p.id)], rows(prints, fields, baths)),
    h('p', {}, h('button', { type: 'button', class: 'quiet', onclick: () => { chosen.all().forEach((id) => chosen.set(id, false)); location.hash = '#/prints'; } }, 'Choose others')));
}

function head(print) {
  const picture = list(print.pictures)[0];
  return h('li', { class: 'card' },
    h('div', { class: 'picture' }, picture ? h('img', { src: '/api/pictures/' + picture.id + '/small', alt: 'print ' + print.id }) : h('span', {}, 'no picture')),
    h('h2', {}, h('a', { href: '#/prints/' + print.id }, h('span', { class: 'number' }, print.id), ' ', print.title || 'untitled')));
}

function rows(prints, fields, baths) {
  const of = (name, value) => [name, ...prints.map(value)];
  const s = (name, key, shown) => of(name, (p) => shown(p.summary[key]));
  const bath = (name, value) => [name, ...baths.map((b) => (b ? value(b) : '–'))];
  const all = [
    of('Made', (p) => when(p.started)),
    s('Emergence', 'emergence_s', clock),
    s('Pull', 'pull_s', clock),
    of('Pull over emergence', (p) => num(p.summary.pull_s / p.summary.emergence_s, 2)),
    s('Bath, mean', 'mean_c', (v) => num(v, 1, '°C')),
    of('Bath, least to most', (p) => num(p.summary.min_c) + ' to ' + num(p.summary.max_c, 1, '°C')),
    bath('Bath', (b) => b.name),
    bath('Litres', (b) => num(b.held.litres, 2, 'L')),
    bath('Strength', (b) => num(b.held.strength * 100, 1, '%')),
    bath('Bromide as KBr', (b) => num(b.held.bromide_g_per_l, 2, 'g/L')),
    bath('Sulfite as Na₂SO₃', (b) => num(b.held.sulfite_g_per_l, 1, 'g/L')),
    ...fields.map((f) => of(f.label + (f.unit ? ' (' + f.unit + ')' : ''), (p) => String((p.record || {})[f.name] ?? '–'))),
    of('Steps', (p) => list(p.steps).map((step) => words(step.kind)).join(', ') || '–'),
  ];
  return all.filter((row) => row.slice(1).some((cell) => cell !== '–'));
}
