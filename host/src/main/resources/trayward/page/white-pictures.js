// Pictures of a print: shown small, added, taken back.
import { h, list, say, twice } from './white-dom.js';
import { ask, wrong } from './white-http.js';
import { act } from './white-form.js';

const UPLOAD_MS = 120000; // a large picture over a slow line

export function picturesPart(print, path, again) {
  const all = list(print.pictures);
  const error = h('p', { class: 'error', role: 'alert' });
  const file = h('input', { type: 'file', id: 'picture', accept: 'image/jpeg,image/png' });
  const send = async () => {
    error.textContent = '';
    const chosen = file.files[0];
    if (!chosen) { error.textContent = 'Choose a file first.'; return; }
    const answer = await ask('POST', path + '/pictures', chosen, chosen.type || 'application/octet-stream', UPLOAD_MS);
    if (answer.ok) { say('Picture added.'); again(); } else error.textContent = wrong(answer.problem);
  };
  return [
    all.length ? h('ul', { class: 'pictures' }, all.map((picture, i) => h('li', {},
      h('a', { href: '/api/pictures/' + picture.id, target: '_blank', rel: 'noopener' },
        h('img', { src: '/api/pictures/' + picture.id + '/small', alt: 'picture ' + (i + 1) + ' of print ' + print.id + ', ' + picture.width + ' by ' + picture.height })),
      twice('Take back', 'Really take it back', () => act('DELETE', '/api/pictures/' + picture.id, undefined, 'Picture taken back.', again)))))
      : h('p', { class: 'empty' }, 'No pictures yet.'),
    h('form', { class: 'upload', onsubmit: (e) => { e.preventDefault(); send(); } },
      h('div', { class: 'field' }, h('label', { for: 'picture' }, 'Add a picture (JPEG or PNG)'), file, error),
      h('p', { class: 'actions' }, h('button', { type: 'submit' }, 'Add picture'))),
  ];
}
