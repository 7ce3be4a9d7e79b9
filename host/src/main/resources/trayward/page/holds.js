'use strict';
// Presses that must last: a button fills while it is held, and letting go cancels. A mark is taken back, and the white
// pages are reached, in no other way: there is no link to them, and nothing of them is fetched before.
(() => {
  const { $, markOf, MARKS, ask, say, keyOf, keys, ANSWER_MS } = window.tray;
  const WHITE_MS = 2000;
  const UNDO_MS = 1000;

  let now = { status: null, lost: true, print: null };

  // Holding begins where ready() says so, and at its end is asked again.
  function holding(button, ms, ready, done) {
    let timer = 0;
    const cancel = () => {
      clearTimeout(timer);
      timer = 0;
      button.classList.remove('held');
    };
    const begin = () => {
      if (timer || !ready()) return;
      button.style.setProperty('--hold', ms + 'ms');
      button.classList.add('held');
      timer = setTimeout(() => {
        cancel();
        if (ready()) done();
      }, ms);
    };
    button.addEventListener('pointerdown', (event) => { if (event.isPrimary && event.button === 0) begin(); });
    for (const kind of ['pointerup', 'pointercancel', 'pointerleave', 'blur']) button.addEventListener(kind, cancel);
    window.addEventListener('blur', cancel);
    document.addEventListener('visibilitychange', cancel);
    return { begin, cancel, on: () => timer !== 0 };
  }

  // ---- a mark taken back ----

  // The button of the last mark made: that of this print, or the pull of the last.
  function lastMark() {
    const s = now.status;
    if (!s || now.lost) return null;
    const print = s.current_print || s.last_print;
    return MARKS.filter((kind) => markOf(print, kind)).pop() || null;
  }

  async function undo() {
    let back = null;
    const wrong = await ask('POST', '/api/marks/undo', undefined, ANSWER_MS, undefined, (answer) => { back = answer; });
    const print = back && back.print ? ' of print ' + back.print.id : '';
    say(wrong ? 'nothing taken back: ' + wrong : (back && back.undone ? back.undone : 'mark') + print + ' taken back');
  }

  let undone = false; // the click that follows a long press is not a mark
  for (const kind of MARKS) holding($(kind), UNDO_MS, () => lastMark() === kind, () => { undone = true; undo(); });
  $('marks').addEventListener('pointerdown', () => { undone = false; }, true);
  $('marks').addEventListener('click', (event) => {
    if (undone && event.detail > 0) event.stopPropagation();
    undone = false;
  }, true);
  keys.u = undo;

  // ---- white light ----

  function whiteAllowed() {
    const why = now.lost || !now.status ? 'the tray is not heard, a print may be in'
      : now.print ? 'a print is in the developer' : '';
    if (why) say('no white light: ' + why);
    return !why;
  }

  const white = holding($('white'), WHITE_MS, whiteAllowed, () => window.location.assign('/white.html'));

  const holds = (event) => (keyOf(event) === 'w' ? true : event.target === $('white') && ['Enter', ' '].includes(event.key));
  document.addEventListener('keydown', (event) => {
    if (!holds(event) || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    if (event.repeat) return;
    white.begin();
    if (white.on()) say('white light in two seconds: hold on, or let go');
  });
  document.addEventListener('keyup', (event) => {
    if (!holds(event) || !white.on()) return;
    event.preventDefault();
    white.cancel();
    say('no white light: let go too early');
  });

  document.addEventListener('tray', ({ detail }) => {
    now = detail;
    if (white.on() && (now.print || now.lost)) {
      white.cancel();
      whiteAllowed();
    }
    const last = lastMark();
    for (const kind of MARKS) $(kind).classList.toggle('last', kind === last);
  });
})();
