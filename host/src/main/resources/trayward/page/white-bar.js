// The bar: the tray now, and the stop, on every white-light page.
import { isNumber, num } from './white-dom.js';
import { ask, wrong } from './white-http.js';

const LOST_MS = 3000; // the stream speaks four times a second
const REOPEN_MS = 5000;
const STOP_ANSWER_MS = 2500;
const STOP_TRIES = 5;

const $ = (id) => document.getElementById(id);
const put = (id, text) => { if ($(id).textContent !== text) $(id).textContent = text; };

let heardAt = -Infinity;
let openedAt = 0;
let stream = null;

function open() {
  openedAt = performance.now();
  if (stream) stream.close();
  stream = new EventSource('/api/stream');
  stream.addEventListener('status', heard);
}

function heard(event) {
  let s;
  try { s = JSON.parse(event.data); } catch { return; }
  if (s === null || typeof s !== 'object') return;
  heardAt = performance.now();
  const doubt = isNumber(s.bath_uncertainty_k) ? ' ± ' + num(s.bath_uncertainty_k) : '';
  put('state', (s.state_words || '–') + (s.first_out ? ': ' + String(s.first_out).toLowerCase().replace(/_/g, ' ') : '') + (s.simulated ? ' (simulated)' : ''));
  put('bath', isNumber(s.bath_c) ? num(s.bath_c) + doubt + '\u00a0°C' : 'reading not valid');
  put('fan', s.fan_proven === true ? 'proven' : 'not proven');
  document.body.classList.remove('unheard');
  document.body.classList.toggle('lockout', s.state === 'LOCKOUT');
  document.body.classList.toggle('no-air', s.fan_proven !== true && s.fan_commanded === true);
  const print = s.current_print;
  $('paper-out').hidden = !print;
  if (print) put('paper-out', 'Print ' + print.id + ' is in the developer: paper is out. Use the dark page.');
}

function tick() {
  if (performance.now() - heardAt <= LOST_MS) return;
  document.body.classList.add('unheard');
  document.body.classList.remove('lockout', 'no-air');
  for (const id of ['state', 'bath', 'fan']) put(id, 'not heard');
  if (performance.now() - openedAt > REOPEN_MS) open();
}

let round = 0;

/** Stop: what came of it is shown at once, and it is tried again a few times meanwhile. */
async function stop() {
  const mine = ++round;
  put('stop-said', '');
  for (let tries = 1; tries <= STOP_TRIES; tries++) {
    const answer = await ask('POST', '/api/commands/stop', undefined, undefined, STOP_ANSWER_MS);
    if (mine !== round) return;
    $('stop-said').className = answer.ok ? 'well' : 'failed';
    if (answer.ok) { put('stop-said', 'Stop delivered.'); return; }
    const rest = tries < STOP_TRIES ? 'Trying again.' : 'Tried ' + STOP_TRIES + ' times.';
    put('stop-said', 'STOP NOT DELIVERED: press the stop at the tray. ' + rest + ' (' + wrong(answer.problem) + ')');
    await new Promise((then) => { setTimeout(then, 1000); });
    if (mine !== round) return;
  }
}

export function startBar() {
  // A stop acts on touch, not on release: a wet finger slides.
  let touched = false;
  $('stop').addEventListener('pointerdown', () => { touched = true; stop(); });
  $('stop').addEventListener('click', (event) => {
    if (!(touched && event.detail > 0)) stop();
    touched = false;
  });
  open();
  setInterval(tick, 250);
}
