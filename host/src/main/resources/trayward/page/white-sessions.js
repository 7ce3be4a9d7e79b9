// Sessions, and what was felt in them, in the person's own words.
import { caution, fold, h, history, list, when } from './white-dom.js';
import { get } from './white-http.js';
import { field, form } from './white-form.js';

const PER_PAGE = 20;

export async function sessionsPage({ query, again }) {
  const from = Math.max(0, Number.parseInt(query.get('from') || '0', 10) || 0);
  const asked = await get('/api/sessions?' + new URLSearchParams({ limit: PER_PAGE + 1, offset: from }));
  const sessions = asked.slice(0, PER_PAGE);
  return h('section', {}, h('h1', {}, 'Sessions'),
    caution('Headache, stinging eyes, cough, a rash or a tight chest are a sign: leave, air the room, and do not work on. Note them here, and show them to a doctor who asks what you work with.'),
    sessions.length ? h('ul', { class: 'rows' }, sessions.map((s) => row(s, again))) : h('p', { class: 'empty' }, 'No sessions yet.'),
    h('p', { class: 'pager' },
      from ? h('a', { href: '#/sessions?from=' + Math.max(0, from - PER_PAGE) }, '← newer') : null,
      asked.length > PER_PAGE ? h('a', { href: '#/sessions?from=' + (from + PER_PAGE) }, 'older →') : null));
}

function row(session, again) {
  const ended = session.ended ? 'until ' + when(session.ended) + (session.ending ? ' (' + session.ending + ')' : '') : 'open';
  const earlier = list(session.history);
  return h('li', {}, h('h2', {}, 'Session ', session.id), h('p', { class: 'when' }, when(session.started), ', ', ended, session.simulated ? ', simulated' : ''),
    form({
      fields: [field({ name: 'symptoms', label: 'What I felt', kind: 'long', hint: 'in your own words' }, session.symptoms)], submit: 'Save',
      send: (body) => ({ method: 'PATCH', path: '/api/sessions/' + session.id, body }), done: again,
    }),
    earlier.length ? fold('What stood here before', () => history(earlier)) : null);
}
