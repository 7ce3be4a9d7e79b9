// What a person says of a print: title, notes, and every field the program has.
import { field, form, numberOr } from './white-form.js';

export function titleForm(print, path, again) {
  return form({
    fields: [field({ name: 'title', label: 'Title' }, print.title), field({ name: 'notes', label: 'Notes', kind: 'long' }, print.notes)],
    submit: 'Save title and notes',
    send: (body) => ({ method: 'PATCH', path, body }),
    done: again,
  });
}

const LONG = 500; // a text that may be longer gets a box of lines

export function recordForm(print, rules, path, again) {
  const was = (name) => String((print.record || {})[name] ?? '');
  const fields = rules.map((rule) => field({
    ...rule,
    kind: rule.kind === 'text' && rule.most >= LONG ? 'long' : rule.kind,
    rows: 2,
    accepted: rule.kind === 'number' ? rule.accepted : '',
    hint: rule.remembered && rule.values.length ? 'offers what was said before' : '',
  }, was(rule.name)));
  return form({
    className: 'record', fields, submit: 'Save record',
    send: (values) => {
      const changed = rules.filter((rule) => values[rule.name] !== was(rule.name));
      const body = Object.fromEntries(changed.map((rule) => {
        const said = values[rule.name];
        return [rule.name, said === '' ? null : rule.kind === 'number' ? numberOr(said) : said];
      }));
      return { method: 'PATCH', path, body, said: changed.length ? 'Record saved.' : 'Nothing was changed.' };
    },
    done: again,
  });
}
