// What was done with a print after the developer, each step with its cautions.
import { caution, clock, h, list, secondsOf, twice, words } from './white-dom.js';
import { act, field, form } from './white-form.js';

export function stepsPart(print, kinds, path, again) {
  const of = (kind) => list((kinds.find((k) => k.kind === kind) || {}).cautions);
  const done = list(print.steps);
  const seen = h('div', { class: 'cautions', 'aria-live': 'polite' });
  const kind = field({ name: 'kind', label: 'Step', kind: 'choice', choices: kinds.map((k) => [k.kind, k.kind]) });
  const warn = () => seen.replaceChildren(...of(kind.control.value).map((c) => caution(c.words)));
  kind.control.addEventListener('change', warn);
  warn();
  const seconds = field({ name: 'seconds', label: 'How long', accepted: 'minutes:seconds, or empty' });
  const fields = [kind, seconds, field({ name: 'dilution', label: 'Dilution', accepted: 'such as 1+9, or empty' }), field({ name: 'what', label: 'With what, in your words' })];
  return [
    done.length ? h('ol', { class: 'steps' }, done.map((step) => h('li', {},
      h('p', {}, h('b', {}, step.kind), [step.seconds === null ? '' : clock(step.seconds), step.dilution, step.what].filter(Boolean).map((t) => ', ' + t)),
      twice('Take back', 'Really take back ' + step.kind, () => act('DELETE', path + '/steps/' + step.n, undefined, 'Step taken back.', again)))))
      : h('p', { class: 'empty' }, 'No steps entered.'),
    done.length ? h('div', { class: 'cautions' }, cautionsOf(done.map((s) => s.kind), of)) : null,
    h('h3', {}, 'Add a step'),
    form({
      fields, intro: seen, submit: 'Add step',
      send: (v) => {
        const long = v.seconds === '' ? null : secondsOf(v.seconds);
        if (Number.isNaN(long)) return { wrong: { field: 'seconds', found: v.seconds, accepted: seconds.rule.accepted } };
        return { method: 'POST', path: path + '/steps', body: { kind: v.kind, seconds: long, dilution: v.dilution, what: v.what }, said: words(v.kind) + ' added.' };
      },
      done: again,
    }),
  ];
}

/** Each caution of all the steps once. */
function cautionsOf(kinds, of) {
  const all = new Map();
  for (const kind of kinds) for (const c of of(kind)) all.set(c.name, c.words);
  return [...all.values()].map((text) => caution(text));
}
