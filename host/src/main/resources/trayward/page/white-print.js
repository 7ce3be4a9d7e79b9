// One print: marks, trace, bath, record, steps, pictures, repeat, history.
import { clock, facts, fold, h, history, list, num, secondsOf, when } from './white-dom.js';
import { ask, get } from './white-http.js';
import { field, form } from './white-form.js';
import { chart, traceOf } from './white-chart.js';
import { bathOf } from './white-bathof.js';
import { recordForm, titleForm } from './white-record.js';
import { stepsPart } from './white-steps.js';
import { picturesPart } from './white-pictures.js';
import { repeatPart } from './white-repeat.js';

export async function printPage({ id, again }) {
  const path = '/api/prints/' + id;
  const [print, fields, kinds, trace] = await Promise.all([get(path), get('/api/print-fields'), get('/api/print-steps'), ask('GET', path + '/trace.csv')]);
  return h('article', { class: 'print' },
    h('p', { class: 'crumb' }, h('a', { href: '#/prints' }, 'Prints'), ' / ', print.id),
    h('h1', {}, h('span', { class: 'number' }, print.id), ' ', print.title || 'untitled'),
    h('p', { class: 'when' }, when(print.started), ', ', h('a', { href: '#/sessions' }, 'session ' + print.session), print.in_progress ? ', in the developer now' : ''),
    print.ask_again ? h('p', { class: 'again' }, 'look again, dry: say below what it looks like now') : null,
    part('Temperature', tracePart(print, trace)),
    part('Marks', marksPart(print, path, again)),
    part('Bath at this print', bathPart(print)),
    part('Pictures', picturesPart(print, path, again)),
    part('Title and notes', titleForm(print, path, again)),
    part('Record', recordForm(print, fields, path, again)),
    part('After the developer', stepsPart(print, kinds, path, again)),
    part('Repeat this print', repeatPart(print, path)),
    part('History', fold('What was corrected (' + list(print.history).length + ')', () => history(print.history))));
}

function part(title, ...content) {
  return h('section', { class: 'part', 'aria-label': title }, h('h2', {}, title), ...content);
}

function tracePart(print, trace) {
  const s = print.summary;
  const pairs = facts([['mean', num(s.mean_c, 1, '°C')], ['least', num(s.min_c, 1, '°C')], ['most', num(s.max_c, 1, '°C')],
    ['at in', num(s.in_c, 1, '°C')], ['at pull', num(s.pull_c, 1, '°C')], ['deviation', num(s.deviation_k, 2, 'K')]]);
  const rows = trace.ok ? traceOf(trace.body) : [[]];
  if (rows[0].length < 2) return [pairs, h('p', { class: 'empty' }, 'There is no trace of this print.')];
  const label = 'Bath temperature over the time from in: mean ' + num(s.mean_c) + ', least ' + num(s.min_c) + ', most ' + num(s.max_c) + ' °C; '
    + list(print.marks).map((m) => m.kind + ' at ' + clock(m.elapsed_s)).join(', ');
  return [chart([{ name: 'bath', trace: rows, marks: list(print.marks) }], label), pairs];
}

function marksPart(print, path, again) {
  const made = ['in', 'emergence', 'pull'].map((kind) => list(print.marks).find((m) => m.kind === kind) || { kind });
  return h('ul', { class: 'marks' }, made.map((mark) => h('li', {},
    h('h3', {}, mark.kind, ' ', h('b', {}, mark.at ? clock(mark.elapsed_s) : 'not marked')),
    mark.at ? h('p', { class: 'hint' }, 'by ' + mark.by + ', ' + when(mark.at) + ', bath ' + num(mark.bath_c, 1, '°C')) : null,
    correction(mark, path, again))));
}

function correction(mark, path, again) {
  const moved = mark.kind === 'in';
  const at = field({ name: 'elapsed_s', kind: 'time', label: moved ? 'In was later by' : capital(mark.kind) + ' at',
    accepted: 'minutes:seconds, such as ' + (moved ? '−0:05' : '3:12') }, mark.at ? clock(mark.elapsed_s) : '');
  return form({
    className: 'inline', fields: [at], submit: 'Save',
    send: ({ elapsed_s: said }) => {
      const seconds = secondsOf(said);
      if (!Number.isFinite(seconds)) return { wrong: { field: 'elapsed_s', found: said || 'nothing', accepted: at.rule.accepted } };
      return { method: 'PATCH', path: path + '/marks/' + mark.kind, body: { elapsed_s: seconds }, said: mark.kind + ' corrected.' };
    },
    done: again,
  });
}

const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

/** Filled in when it has been found, so that the page does not wait for the books. */
function bathPart(print) {
  const place = h('div', { class: 'bath-of' }, h('p', { class: 'hint' }, 'looking in the bath book…'));
  bathOf(print).then((bath) => {
    if (!bath) { place.replaceChildren(h('p', { class: 'empty' }, 'The bath book had no bath in the tray then.')); return; }
    const b = bath.held;
    place.replaceChildren(h('p', {}, h('a', { href: '#/baths/' + bath.id }, bath.name)),
      facts([['litres', num(b.litres, 2, 'L')], ['strength', num(b.strength * 100, 1, '%')],
        ['bromide as KBr', num(b.bromide_g_per_l, 2) + ' ± ' + num(b.bromide_give_or_take_g_per_l, 2, 'g/L')],
        ['sulfite as Na₂SO₃', num(b.sulfite_g_per_l, 1) + ' ± ' + num(b.sulfite_give_or_take_g_per_l, 1, 'g/L')],
        ['printed before', num(b.area_m2_per_l, 2, 'm²/L')], ['hot for', num(b.hours_hot, 1, 'h')]]),
      h('p', { class: 'hint' }, 'Estimates from what was entered in the book.'));
  }, (e) => place.replaceChildren(h('p', { class: 'error' }, e.message)));
  return place;
}
