// What to change next: as the program says it, nothing reckoned here.
import { h, list, words } from './white-dom.js';
import { get } from './white-http.js';

const VERDICTS = ['too-hard', 'too-flat', 'no-colour', 'blacks-weak', 'gritty'];

/** What may be changed for the next print, by what this one was. */
export function advicePart() {
  const answer = h('div', { role: 'status' });
  const ask = async (verdict) => {
    const advice = await get('/api/advice?verdict=' + verdict);
    answer.replaceChildren(h('p', { class: 'hint' }, words(verdict) + ': ' + advice.basis + '.'),
      h('ul', { class: 'rows' }, list(advice.options).map((o) => h('li', {},
        h('h3', {}, o.what + ': ' + o.how),
        h('p', {}, 'Side effect: ' + o.side_effect + '.'),
        o.own_prints ? h('p', {}, 'Your own prints: ' + o.own_prints + '.') : null))));
  };
  return h('div', {}, h('p', { class: 'actions' }, VERDICTS.map((v) =>
    h('button', { type: 'button', class: 'quiet', onclick: () => ask(v) }, words(v)))), answer);
}
