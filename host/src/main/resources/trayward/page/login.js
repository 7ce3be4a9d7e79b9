'use strict';
// The login. The password goes to the program and nowhere else; stop works without it.
(() => {
  const $ = (id) => document.getElementById(id);
  const STOP_TRIES = 10;
  let stopRound = 0;
  let asking = false;

  async function answerOf(path, body) {
    const gate = new AbortController();
    const timer = setTimeout(() => gate.abort(), 15000); // stretching a password takes a small computer seconds
    try {
      const answer = await fetch(path, {
        method: 'POST',
        cache: 'no-store',
        credentials: 'same-origin',
        signal: gate.signal,
        headers: body ? { 'Content-Type': 'application/json' } : {},
        body: body ? JSON.stringify(body) : undefined,
      });
      const read = await answer.json().catch(() => null);
      return answer.ok ? '' : (read && read.detail) || 'refused (' + answer.status + ')';
    } catch {
      return 'no answer';
    } finally {
      clearTimeout(timer);
    }
  }

  async function enter(event) {
    event.preventDefault();
    if (asking) return;
    asking = true;
    $('said').textContent = 'asking';
    const wrong = await answerOf('/api/login', { password: $('password').value });
    asking = false;
    if (!wrong) {
      location.replace(location.hash === '#white' ? 'white.html' : 'index.html');
      return;
    }
    $('said').textContent = wrong;
    $('password').value = '';
    $('password').focus();
  }

  async function stop() {
    const round = ++stopRound;
    for (let tries = 1; tries <= STOP_TRIES; tries++) {
      const wrong = await answerOf('/api/commands/stop');
      if (round !== stopRound) return;
      $('stop-said').textContent = wrong ? 'STOP NOT DELIVERED — press the stop at the tray (' + wrong + ')' : 'stop delivered';
      if (!wrong) return;
      await new Promise((done) => setTimeout(done, 1000));
      if (round !== stopRound) return;
    }
  }

  // A stop acts on touch, not on release: a wet finger slides.
  let touched = false;
  $('stop').addEventListener('pointerdown', () => { touched = true; stop(); });
  $('stop').addEventListener('click', (event) => {
    if (!(touched && event.detail > 0)) stop();
    touched = false;
  });
  $('ask').addEventListener('submit', enter);
  document.addEventListener('keydown', (event) => {
    if (event.target === $('password') || event.repeat || event.ctrlKey || event.altKey || event.metaKey) return;
    if (event.key.toLowerCase() === 'x') stop();
  });
  for (const kind of ['contextmenu', 'dragstart']) document.addEventListener(kind, (e) => e.preventDefault());
})();
