// Forms: a label on every field, what is wrong at its field, a question where the program asks one.
import { h, say } from './white-dom.js';
import { ask, wrong } from './white-http.js';

let count = 0;

/**
 * One field. `rule`: name, label, kind (text, number, choice, flag, long, time, date), unit, accepted, values offered,
 * choices [[value, words]], required.
 */
export function field(rule, value = '') {
  const id = 'f' + ++count;
  const unit = rule.unit ? ' (' + rule.unit + ')' : '';
  const said = [rule.hint, rule.accepted].filter(Boolean).join('; ');
  const common = { id, name: rule.name, 'aria-describedby': id + 'h ' + id + 'e', autocomplete: 'off', required: rule.required };
  const control = controlOf(rule, value ?? '', common);
  control.first = rule.kind === 'flag' ? control.checked : control.value; // what is unsaved differs from it
  const offered = rule.values && rule.values.length ? h('datalist', { id: id + 'l' }, rule.values.map((v) => h('option', { value: v }))) : null;
  if (offered) control.setAttribute('list', id + 'l');
  const error = h('p', { class: 'error', id: id + 'e' });
  const label = h('label', { for: id }, capital(rule.label || rule.name) + unit + (rule.required ? ' *' : ''));
  return { rule, control, error, box: h('div', { class: 'field of-' + (rule.kind || 'text') },
    rule.kind === 'flag' ? [control, label] : [label, control], offered,
    h('p', { class: 'hint', id: id + 'h' }, said), error) };
}

export const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

function controlOf(rule, value, common) {
  if (rule.kind === 'choice') {
    return h('select', common, rule.choices.map(([v, name]) => h('option', { value: v, selected: String(v) === String(value) }, name)));
  }
  if (rule.kind === 'flag') return h('input', { ...common, type: 'checkbox', checked: value === true || value === 'true' });
  if (rule.kind === 'long') return h('textarea', { ...common, rows: rule.rows || 3 }, String(value));
  const number = rule.kind === 'number';
  return h('input', { ...common, type: rule.kind === 'date' ? 'date' : 'text', inputmode: number ? 'decimal' : null, value: String(value) });
}

/** What a field says: a text without margins, a number with a point, true or false. */
export function valueOf(f) {
  if (f.rule.kind === 'flag') return f.control.checked;
  const text = f.control.value.trim();
  return f.rule.kind === 'number' ? text.replace(',', '.').replace('−', '-') : text;
}

/** A number where it is one; else the text, for the program to refuse by name. */
export const numberOr = (text) => (text !== '' && Number.isFinite(Number(text)) ? Number(text) : text);

/**
 * A form. `send(values)` gives { method, path, body } or { wrong: { field, detail } }; `done(body)` follows. A 409 that can be confirmed is asked of
 * the person, and sent again as confirmed.
 */
export function form({ fields, submit, send, done, intro, className = '' }) {
  const general = h('p', { class: 'error', role: 'alert' });
  const question = h('div', { class: 'question', role: 'alert' });
  const button = h('button', { type: 'submit' }, submit);
  const element = h('form', { class: className, novalidate: true, onsubmit: (e) => { e.preventDefault(); go(false); } },
    intro, h('div', { class: 'fields' }, fields.map((f) => f.box)), question, general, h('p', { class: 'actions' }, button));

  function clear() {
    general.textContent = '';
    question.replaceChildren();
    for (const f of fields) { f.error.textContent = ''; f.control.removeAttribute('aria-invalid'); }
  }

  function refuse(problem) {
    const at = fields.find((f) => f.rule.name === problem.field);
    if (!at) { general.textContent = wrong(problem); return; }
    at.error.textContent = problem.accepted !== undefined ? 'Found ' + (problem.found || 'nothing') + '. Accepted: ' + problem.accepted + '.' : wrong(problem);
    at.control.setAttribute('aria-invalid', 'true');
    at.control.focus();
  }

  function confirm(problem) {
    const yes = h('button', { type: 'button', onclick: () => go(true) }, 'It is so: enter it');
    question.replaceChildren(h('p', {}, capital(problem.detail) + '.'), h('p', { class: 'actions' }, yes,
      h('button', { type: 'button', class: 'quiet', onclick: clear }, 'Do not enter it')));
    yes.focus();
  }

  async function go(confirmed) {
    clear();
    const request = send(Object.fromEntries(fields.map((f) => [f.rule.name, valueOf(f)])));
    if (request.wrong) { refuse(request.wrong); return; }
    button.disabled = true;
    const body = confirmed ? { ...request.body, confirmed: true } : request.body;
    const answer = await ask(request.method, request.path, body);
    button.disabled = false;
    if (answer.ok) { element.sent = true; if (request.said !== '') say(request.said || 'Saved.'); done(answer.body); }
    else if (answer.problem.confirm) confirm(answer.problem);
    else refuse(answer.problem);
  }
  return element;
}

/** Asks for something by a button alone, and says what came of it. */
export async function act(method, path, body, said, done) {
  const answer = await ask(method, path, body);
  say(answer.ok ? said : 'Not done: ' + wrong(answer.problem));
  if (answer.ok) done(answer.body);
}
