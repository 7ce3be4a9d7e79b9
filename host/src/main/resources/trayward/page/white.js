// The white-light pages: which of them is shown. Each page is a function that is given the rest of the address and gives an element.
import { h } from './white-dom.js';
import { startBar } from './white-bar.js';
import { kept, putBack } from './white-kept.js';
import { printsPage } from './white-prints.js';
import { printPage } from './white-print.js';
import { comparePage } from './white-compare.js';
import { bathsPage } from './white-baths.js';
import { bathPage } from './white-bath.js';
import { shelfPage } from './white-shelf.js';
import { sessionsPage } from './white-sessions.js';
import { plansPage } from './white-plans.js';
import { carePage, cautionsPage } from './white-care.js';

const PAGES = [
  [/^\/prints$/, printsPage],
  [/^\/prints\/(\d+)$/, printPage],
  [/^\/compare$/, comparePage],
  [/^\/baths$/, bathsPage],
  [/^\/baths\/(\d+)$/, bathPage],
  [/^\/shelf$/, shelfPage],
  [/^\/sessions$/, sessionsPage],
  [/^\/plans(?:\/([a-z]+))?$/, plansPage],
  [/^\/care$/, carePage],
  [/^\/cautions$/, cautionsPage],
];

const content = document.getElementById('content');
let turn = 0;

/** Shows what the address says; `again` keeps place and focus where a page shows itself anew. */
async function show(again) {
  const mine = ++turn;
  const [path, query] = (location.hash.slice(1) || '/prints').split('?');
  const [pattern, page] = PAGES.find(([p]) => p.test(path)) || [/.*/, missing];
  const context = { id: (pattern.exec(path) || [])[1], query: new URLSearchParams(query || ''), again: () => show(true) };
  const at = window.scrollY;
  let made;
  try {
    made = await page(context);
  } catch (e) {
    made = h('section', {}, h('h1', {}, e.status === 404 ? 'Not there' : 'Not to be read now'), h('p', { class: 'error', role: 'alert' }, e.message),
      h('p', {}, h('button', { type: 'button', onclick: () => show(false) }, 'Try again')));
  }
  if (mine !== turn) return;
  const before = again ? kept(content) : null;
  content.replaceChildren(made);
  const title = content.querySelector('h1');
  document.title = (title ? title.textContent + ', ' : '') + 'Trayward, white light';
  for (const link of document.querySelectorAll('nav a')) {
    const here = path === link.hash.slice(1) || path.startsWith(link.hash.slice(1) + '/') || (path === '/compare' && link.hash === '#/prints');
    if (here) link.setAttribute('aria-current', 'page');
    else link.removeAttribute('aria-current');
  }
  if (before) { putBack(content, before); window.scrollTo(0, at); return; }
  window.scrollTo(0, 0);
  if (location.hash) content.focus({ preventScroll: true });
}

function missing() {
  return h('section', {}, h('h1', {}, 'Not there'), h('p', {}, 'There is no such page.'));
}

window.addEventListener('hashchange', () => show(false));
document.querySelector('.skip').addEventListener('click', (event) => { event.preventDefault(); content.focus(); });
startBar();
show(false);
