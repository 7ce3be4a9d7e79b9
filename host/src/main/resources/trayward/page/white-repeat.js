// Repeating a print: what it would take today, and asking for it.
import { h, say } from './white-dom.js';
import { ask, wrong } from './white-http.js';
import { act, field, form, numberOr } from './white-form.js';
import { lines } from './white-lines.js';

export function repeatPart(print, path) {
  const place = h('div', { class: 'answer', 'aria-live': 'polite' });
  const size = (name, label, unit) => field({ name, label, kind: 'number', unit, hint: 'leave empty for the same' });
  const fields = [size('magnification', 'New magnification', 'x'), size('width_mm', 'New image width', 'mm')];
  const said = () => Object.fromEntries(fields.map((f) => [f.rule.name, f.control.value.trim().replace(',', '.')]).filter(([, v]) => v !== ''));
  const look = async () => show(await ask('GET', path + '/repeat' + (Object.keys(said()).length ? '?' + new URLSearchParams(said()) : '')), 'It would take:');
  const show = (answer, title) => {
    if (answer.ok) { place.replaceChildren(h('h3', {}, title), lines(answer.body)); return; }
    const none = answer.status === 404 || answer.status === 405;
    place.replaceChildren(h('p', { class: none ? 'empty' : 'error' }, none ? 'This program does not work out repeats.' : wrong(answer.problem)));
  };
  return [
    form({
      fields, submit: 'Repeat this print',
      intro: h('p', { class: 'hint' }, 'Repeating sets the set temperature, and shows this print’s times under the coming one on the dark page. Nothing here starts heat: that is done at the tray.'),
      send: () => ({ method: 'POST', path: path + '/repeat', body: Object.fromEntries(Object.entries(said()).map(([k, v]) => [k, numberOr(v)])), said: 'Repeat asked.' }),
      done: (body) => { show({ ok: true, body }, 'Asked to repeat:'); say('Repeat asked.'); },
    }),
    h('p', { class: 'actions' }, h('button', { type: 'button', class: 'quiet', onclick: look }, 'Only show what it would take'),
      h('button', { type: 'button', class: 'quiet', onclick: () => act('DELETE', '/api/guide', undefined, 'Nothing is repeated.', () => place.replaceChildren()) }, 'Repeat nothing')),
    place,
  ];
}
