// The shelf: papers, concentrates, stocks, make-ups, exposures, other baths, lights. Its kinds and their fields come from the program.
import { facts, fold, h, list, twice } from './white-dom.js';
import { ask, get } from './white-http.js';
import { act, capital, field, form, numberOr } from './white-form.js';

export async function shelfPage({ again }) {
  const [shelf, baths, lights] = await Promise.all([get('/api/shelf'), ask('GET', '/api/working-baths'), ask('GET', '/api/lights')]);
  const known = new Map([baths, lights].flatMap((a) => (a.ok ? list(a.body) : [])).map((one) => [one.id, one]));
  return h('section', {}, h('h1', {}, 'Shelf'),
    h('p', { class: 'hint' }, 'What you keep and use again. A make-up can be made into a bath in the bath book.'),
    shelf.kinds.map((kind) => kindPart(kind, list(shelf.items).filter((i) => i.kind === kind.kind), known, again)));
}

function kindPart(kind, items, known, again) {
  const title = capital(kind.kind) + 's';
  return h('section', { class: 'part', 'aria-label': title }, h('h2', {}, title),
    items.length ? h('ul', { class: 'rows' }, items.map((item) => itemRow(kind, item, known.get(item.id) || {}, again))) : h('p', { class: 'empty' }, 'None.'),
    fold('Add: ' + kind.kind, () => itemForm(kind, null, again)));
}

/** What the program works out of a bath or a light, and what is due, stands under its name. */
function itemRow(kind, item, now, again) {
  const said = kind.fields.filter((rule) => item.fields[rule.name] !== undefined).map((rule) => [rule.label, String(item.fields[rule.name])]);
  return h('li', {}, h('h3', {}, item.name), now.words ? h('p', {}, now.words) : null,
    list(now.due).length || now.due === true ? h('p', { class: 'again' }, 'due: ' + (now.due === true ? 'a fog test' : now.due.join(', '))) : null,
    now.disposal ? h('p', { class: 'hint' }, 'Away with it ' + now.disposal + '.') : null, said.length ? facts(said) : null,
    fold('Edit ' + item.name, () => itemForm(kind, item, again)),
    h('p', { class: 'actions' }, twice('Take off the shelf', 'Really take it off', () => act('DELETE', '/api/shelf/' + item.id, undefined, 'Taken off the shelf.', again))));
}

function itemForm(kind, item, again) {
  const was = (name) => (item ? String(item.fields[name] ?? '') : '');
  const fields = [field({ name: 'name', label: 'Name', required: true }, item ? item.name : ''), ...kind.fields.map((rule) => field({ ...rule, accepted: rule.kind === 'text' ? '' : rule.accepted }, was(rule.name)))];
  return form({
    className: 'boxed', fields, submit: item ? 'Save ' + item.name : 'Put on the shelf',
    send: ({ name, ...values }) => {
      const said = Object.fromEntries(kind.fields.filter((rule) => values[rule.name] !== was(rule.name)).map((rule) => {
        const value = values[rule.name];
        return [rule.name, value === '' ? null : rule.kind === 'number' ? numberOr(value) : value];
      }));
      return item
        ? { method: 'PATCH', path: '/api/shelf/' + item.id, body: { name, fields: said } }
        : { method: 'POST', path: '/api/shelf', body: { kind: kind.kind, name, fields: said }, said: 'Put on the shelf.' };
    },
    done: again,
  });
}
