'use strict';
// Shows the login where nothing is heard because nobody is logged in any more. Everything else waits for nothing here.
(() => {
  const PERIOD_MS = 3000;
  const unheard = () => ['lost', 'unheard'].some((c) => document.body.classList.contains(c));
  const stopping = () => document.body.classList.contains('stop-lost');

  async function look() {
    if (!unheard() || stopping()) return;
    const answer = await fetch('/api/login', { cache: 'no-store', credentials: 'same-origin' }).then((a) => a.json()).catch(() => null);
    if (answer && answer.logged_in === false && !stopping()) {
      location.replace('login.html' + (location.pathname.endsWith('white.html') ? '#white' : ''));
    }
  }

  setInterval(look, PERIOD_MS);
})();
