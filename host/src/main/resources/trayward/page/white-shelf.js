// The shelf: papers, concentrates, stocks, make-ups, exposures. Its kinds and their fields come from the program.
import { facts, fold, h, list, twice } from './white-dom.js';
import { get } from './white-http.js';
import { act, capital, field, form, numberOr } from './white-form.js';

export async function shelfPage({ again }) {
  const shelf = await get('/api/shelf');
  return h('section', {}, h('h1', {}, 'Shelf'),
    h('p', { class: 'hint' }, 'What you keep and use again. A make-up can be made into a bath in the bath book.'),
    shelf.kinds.map((kind) => kindPart(kind, list(shelf.items).filter((i) => i.kind === kind.kind), again)));
}

function kindPart(kind, items, again) {
  const title = capital(kind.kind) + 's';
  return h('section', { class: 'part', 'aria-label': title }, h('h2', {}, title),
    items.length ? h('ul', { class: 'rows' }, items.map((item) => itemRow(kind, item, again))) : h('p', { class: 'empty' }, 'None.'),
    fold('Add a ' + kind.kind, () => itemForm(kind, null, again)));
}

function itemRow(kind, item, again) {
  const said = kind.fields.filter((rule) => item.fields[rule.name] !== undefined).map((rule) => [rule.label, String(item.fields[rule.name])]);
  return h('li', {}, h('h3', {}, item.name), said.length ? facts(said) : null,
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
