// The sheet of prints: newest first, searched, paged, chosen for comparison.
import { clock, h, list, num, when } from './white-dom.js';
import { ask, get } from './white-http.js';
import { chosen, COMPARED_MAX } from './white-chosen.js';

const PER_PAGE = 12;

export async function printsPage({ query }) {
  const q = query.get('q') || '';
  const from = Math.max(0, Number.parseInt(query.get('from') || '0', 10) || 0);
  const asked = await get('/api/prints?' + new URLSearchParams({ q, limit: PER_PAGE + 1, offset: from }));
  const prints = asked.slice(0, PER_PAGE);
  const bar = h('div', { class: 'compare-bar' });
  const cards = prints.map((print) => card(print, () => showChosen(bar)));
  showChosen(bar);
  seek(prints, cards);
  return h('section', {}, h('h1', {}, 'Prints'), search(q), bar,
    prints.length ? h('ul', { class: 'sheet' }, cards) : h('p', { class: 'empty' }, q ? 'No print speaks of this.' : 'No prints yet. The first mark “in” makes one.'),
    pager(q, from, asked.length > PER_PAGE));
}

function search(q) {
  const words = h('input', { id: 'q', name: 'q', type: 'search', value: q, maxlength: 200, autocomplete: 'off' });
  return h('form', { role: 'search', class: 'search', onsubmit: (e) => { e.preventDefault(); location.hash = address(words.value.trim(), 0); } },
    h('label', { for: 'q' }, 'Search in everything said of prints'), words, h('button', { type: 'submit' }, 'Search'),
    q ? h('a', { href: '#/prints' }, 'Show all') : null);
}

function address(q, from) {
  const said = new URLSearchParams();
  if (q) said.set('q', q);
  if (from) said.set('from', from);
  return '#/prints' + (said.size ? '?' + said : '');
}

function pager(q, from, more) {
  if (!from && !more) return null;
  return h('p', { class: 'pager' },
    from ? h('a', { href: address(q, Math.max(0, from - PER_PAGE)), rel: 'prev' }, '← newer') : null,
    more ? h('a', { href: address(q, from + PER_PAGE), rel: 'next' }, 'older →') : null);
}

function card(print, changed) {
  const summary = print.summary || {};
  const record = print.record || {};
  const verdict = record.verdict_dry ? ['dry', record.verdict_dry] : record.verdict_wet ? ['wet', record.verdict_wet] : null;
  const box = h('input', { type: 'checkbox', id: 'c' + print.id, checked: chosen.has(print.id),
    onchange: () => { if (!chosen.set(print.id, box.checked)) box.checked = false; changed(); } });
  return h('li', { class: 'card', 'data-print': print.id },
    h('a', { class: 'picture', href: '#/prints/' + print.id, tabindex: '-1', 'aria-hidden': 'true' }, h('span', {}, 'no picture')),
    h('h2', {}, h('a', { href: '#/prints/' + print.id }, h('span', { class: 'number' }, print.id), ' ', print.title || 'untitled')),
    h('p', { class: 'when' }, when(print.started), print.in_progress ? ', in the developer now' : ''),
    h('dl', { class: 'small' },
      h('div', {}, h('dt', {}, 'bath, mean'), h('dd', {}, num(summary.mean_c, 1, '°C'))),
      h('div', {}, h('dt', {}, 'emergence'), h('dd', {}, clock(summary.emergence_s))),
      h('div', {}, h('dt', {}, 'pull'), h('dd', {}, clock(summary.pull_s)))),
    verdict ? h('p', { class: 'verdict' }, h('span', { class: 'tag' }, verdict[0]), ' ', verdict[1]) : null,
    print.ask_again ? h('p', { class: 'again' }, 'look again, dry') : null,
    h('p', { class: 'choose' }, box, h('label', { for: 'c' + print.id }, 'compare', h('span', { class: 'unseen' }, ' print ' + print.id))));
}

function showChosen(bar) {
  const ids = chosen.all();
  if (!ids.length) { bar.replaceChildren(); return; }
  bar.replaceChildren(h('p', {}, 'Chosen: ' + ids.join(', ') + (ids.length < 2 ? '. Choose two to ' + COMPARED_MAX + '.' : '.')),
    ids.length > 1 ? h('a', { class: 'button', href: '#/compare?n=' + ids.join(',') }, 'Compare side by side') : null);
}

/** The list knows no pictures, so each card asks for its own, one after the other. */
async function seek(prints, cards) {
  for (let i = 0; i < prints.length; i++) {
    const known = prints[i].pictures ? { ok: true, body: prints[i] } : await ask('GET', '/api/prints/' + prints[i].id);
    if (i > 0 && !cards[i].isConnected) return; // another page is shown by now
    const picture = known.ok ? list(known.body.pictures)[0] : null;
    if (picture) cards[i].querySelector('.picture').replaceChildren(h('img', { src: '/api/pictures/' + picture.id + '/small', alt: '' }));
  }
}
