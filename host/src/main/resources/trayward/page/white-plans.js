// The planners: forms from what each may be told, the answer as lines.
import { caution, h, list, words } from './white-dom.js';
import { get } from './white-http.js';
import { field, form } from './white-form.js';
import { lines } from './white-lines.js';

export async function plansPage({ id }) {
  const planners = await get('/api/plan');
  const planner = planners.find((p) => p.name === (id || 'exposure')) || planners[0];
  const answer = h('div', { class: 'answer', 'aria-live': 'polite' });
  return h('section', {}, h('h1', {}, 'Plan: ' + planner.name),
    h('nav', { class: 'sub', 'aria-label': 'planners' }, planners.map((p) => h('a', { href: '#/plans/' + p.name, 'aria-current': p === planner ? 'page' : null }, p.name))),
    h('p', {}, planner.description),
    h('p', { class: 'hint' }, 'What comes out is an estimate, or an upper bound where it says so; never a reading.'),
    asking(planner, answer), answer);
}

function asking(planner, answer) {
  const options = list(planner.options);
  const ordered = [...options.filter((o) => o.required), ...options.filter((o) => !o.required)];
  const fields = ordered.map((o) => field({
    name: o.name, kind: o.kind, label: words(o.name), unit: o.kind === 'number' ? o.unit : '', required: o.required,
    choices: list(o.choices).map((c) => [c, c]), accepted: o.kind === 'number' || o.kind === 'text' ? o.accepted : '',
    hint: o.words + (o.otherwise && o.kind === 'number' ? '; empty: ' + o.otherwise : ''),
  }, o.kind === 'choice' ? o.otherwise : ''));
  return form({
    className: 'plan', fields, submit: 'Work it out',
    send: (values) => {
      const told = Object.entries(values).filter(([, v]) => v !== '' && v !== false).map(([k, v]) => [k, String(v)]);
      return { method: 'GET', path: '/api/plan/' + planner.name + '?' + new URLSearchParams(told), said: '' };
    },
    done: (body) => {
      const taken = Object.entries(body.asked || {}).map(([k, v]) => words(k) + ' ' + v).join(', ');
      answer.replaceChildren(h('h2', { tabindex: '-1' }, 'Answer, estimated'), lines(body, ['plan', 'asked', 'cautions']),
        h('p', { class: 'hint' }, 'It rests on: ' + taken + '.'), ...list(body.cautions).map((c) => caution(c)));
      answer.querySelector('h2').focus();
    },
  });
}
