// Maintenance, and the cautions that belong to this work.
import { caution, h, list, num } from './white-dom.js';
import { get } from './white-http.js';
import { act } from './white-form.js';

export async function carePage({ again }) {
  const care = await get('/api/upkeep');
  return h('section', {}, h('h1', {}, 'Maintenance'),
    care.clock_set === false ? caution('The clock of the controller is not set: due dates cannot be trusted.') : h('p', { class: 'hint' }, 'Today is ' + care.today + '.'),
    care.start_needs_confirmation ? caution(care.start_words) : null,
    h('ul', { class: 'rows' }, list(care.items).map((item) => row(item, again))),
    footSwitch());
}

// The key of a foot switch that acts as a keyboard, kept in this browser; pedal.js of the dark page reads it.
const PEDAL = 'trayward-pedal';
const NEVER = ['x', 'tab', 'escape', 'enter', ' ', 'shift', 'control', 'alt', 'meta', 'altgraph', 'dead', 'unidentified', 'process'];

function footSwitch() {
  const said = h('p', { role: 'status' }, 'N, B, Page Down and F13 to F24 always do.');
  const tell = (text) => said.replaceChildren(text);
  const stored = (key) => {
    try {
      if (key === undefined) return window.localStorage.getItem(PEDAL) || '';
      if (key) window.localStorage.setItem(PEDAL, key);
      else window.localStorage.removeItem(PEDAL);
      return key;
    } catch {
      return '';
    }
  };
  if (stored()) tell('This browser also takes ' + stored().toUpperCase() + ' as the pedal.');
  const learn = () => {
    tell('Now press the foot switch.');
    document.addEventListener('keydown', (event) => {
      event.preventDefault();
      const key = event.key.toLowerCase();
      if (NEVER.includes(key)) tell('Not that key: it is the stop, or the browser needs it.');
      else tell(stored(key) ? 'This browser also takes ' + key.toUpperCase() + ' as the pedal; on the dark page it does nothing else.' : 'This browser keeps nothing.');
    }, { once: true, capture: true });
  };
  return h('section', {}, h('h2', {}, 'Foot switch that acts as a keyboard'),
    h('p', {}, 'Pressed, it makes the next mark; kept down for a second, it takes that mark back.'), said,
    h('p', { class: 'actions' }, h('button', { type: 'button', onclick: learn }, 'Learn its key'),
      h('button', { type: 'button', onclick: () => { stored(''); tell('Forgotten: N, B, Page Down and F13 to F24.'); } }, 'Forget it')));
}

function row(item, again) {
  const days = item.overdue ? 'overdue' : item.days_left === 1 ? '1 day left' : item.days_left + ' days left';
  const hours = item.hours_due === null ? '' : ', ' + num(item.hours, 1) + ' of ' + num(item.hours_due, 0, 'h') + ' used';
  return h('li', { class: item.overdue ? 'overdue' : '' },
    h('h2', {}, item.words.charAt(0).toUpperCase() + item.words.slice(1)),
    h('p', {}, h('b', {}, 'due ' + item.due + ', ' + days + hours)),
    h('p', { class: 'hint' }, (item.last_done ? 'Last done ' + item.last_done : 'Never done') + '. ' + item.reason),
    h('p', { class: 'actions' }, h('button', { type: 'button', onclick: () => act('POST', '/api/upkeep/' + item.item + '/done', undefined, 'Noted: ' + item.words + ' done today.', again) },
      'Done today', h('span', { class: 'unseen' }, ': ' + item.words))));
}

// Common knowledge of the trade and of safety data sheets, from memory; the sheet of the very product comes first.
const CAUTIONS = [
  ['Air', 'A hot developer gives off far more vapour than a cold one. Extract at the tray, give the air an inlet, and stay out while the fan is not proven.'],
  ['A filter mask is no interlock', 'A mask proves nothing to the heater and replaces no extraction. Its cartridges must match the vapour, run out without notice, and it must fit the face. A dust mask holds back no vapour at all.'],
  ['Sulfide toner and acid', 'Together they give hydrogen sulfide, which kills, and dulls the sense of smell first. Keep a sulfide toner away from stop bath, acid fixer and every other acid; wash well between; outdoors or under extraction.'],
  ['Acid and fixer', 'They give off sulfur dioxide, which attacks the lungs, of people with asthma most. Drain well between them; never pour one into the other.'],
  ['Bleach and acid', 'A ferricyanide bleach with strong acid or heat may give off hydrogen cyanide. Keep them apart.'],
  ['Selenium', 'Selenium toner is poisonous by mouth, through the skin and breathed in. Gloves, extraction, and its waste goes to hazardous waste.'],
  ['Skin and eyes', 'Gloves and tongs always, goggles for concentrates. A skin once sensitised to developer stays so. Water for fifteen minutes after a splash in the eye, then a doctor.'],
  ['What is kept', 'Label used developer the hour it is kept: what, since when, the warning. Never in a bottle for food or drink.'],
  ['When you feel it', 'With a smell, stinging eyes, headache or dizziness: stop, leave, air the room.'],
  ['Water and mains', 'Ground-fault breaker, thermal cut-out and airflow contact are hardware, and mains wiring belongs to a licensed person under local codes. This program only ever withholds heat.'],
];

export async function cautionsPage() {
  return h('section', {}, h('h1', {}, 'Cautions'),
    h('p', { class: 'hint' }, 'They warn; the lack of one says nothing. The safety data sheet of the very product comes first.'),
    CAUTIONS.map(([title, text]) => h('section', { class: 'caution' }, h('h2', {}, title), h('p', {}, text))));
}
