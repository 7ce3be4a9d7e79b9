'use strict';
// A foot switch that acts as a keyboard. One key means what the pedal on a line means, by the same rules in the host:
// pressed, the next mark that makes sense; kept down for a second, the mark of that press taken back.
(() => {
  const { say, ask, keyOf, buzz, ANSWER_MS } = window.tray;
  const HOLD_MS = 1000; // as the controller counts it for a pedal on a line
  const OFTEN = ['n', 'b', 'pagedown', ...Array.from({ length: 12 }, (_, i) => 'f' + (13 + i))];
  const STORE = 'trayward-pedal';

  // the key learned on the white pages comes beside the usual ones
  function learned() {
    try {
      return (window.localStorage.getItem(STORE) || '').toLowerCase();
    } catch {
      return '';
    }
  }

  let down = '';
  let timer = 0;
  let pressed = Promise.resolve();

  async function send(press, told) {
    let answer = null;
    const wrong = await ask('POST', '/api/pedal', { press }, ANSWER_MS, undefined, (said) => { answer = said; });
    say(wrong ? 'pedal: nothing marked: ' + wrong : told(answer || {}));
    if (!wrong) buzz();
  }

  const short = () => send('short', (said) => (said.marked || 'mark') + ' marked');
  const long = () => send('long', (said) => (said.undone ? said.undone + ' taken back' : 'nothing taken back: this press made no mark'));

  function up() {
    clearTimeout(timer);
    down = '';
  }

  document.addEventListener('keydown', (event) => {
    const key = keyOf(event);
    if (event.ctrlKey || event.altKey || event.metaKey || key === 'x' || !(key === learned() || OFTEN.includes(key))) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (event.repeat || down === key) return; // a key that repeats is one press
    up();
    down = key;
    pressed = short();
    timer = setTimeout(() => pressed.then(long), HOLD_MS);
  }, true);
  document.addEventListener('keyup', (event) => { if (keyOf(event) === down) up(); }, true);
  window.addEventListener('blur', up);
})();
