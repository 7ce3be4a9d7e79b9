'use strict';
// Additions in two taps: what was poured of late, and water, poured again by one press each.
(() => {
  const { $, seconds, isNumber, list, fixed, put, show, clock, ask, say, keys, ANSWER_MS } = window.tray;
  const OFTEN = [{ what: 'water', millilitres: 50 }, { what: 'water', millilitres: 100 }];
  const SHOWN = 6;    // with the one that closes two rows of four, each as wide as a finger
  const OPEN_S = 60;  // the panel hides the bath: it closes by itself

  const body = document.body.classList;
  let bath = null;
  let lost = true;
  let openedAt = 0;
  let pouring = false;

  const amount = (ml) => (Number.isInteger(ml) ? String(ml) : fixed(ml, 1)) + ' mL';
  const label = (add) => [amount(add.millilitres), add.what, add.dilution || ''].filter(Boolean).join(' ');

  async function inTray() {
    const answer = await fetch('/api/in-tray', { cache: 'no-store' }).then((a) => (a.ok ? a.json() : null)).catch(() => null);
    return answer;
  }

  function open(now, byKey) {
    if (now && (lost || body.contains('alarmed') || body.contains('stop-lost'))) {
      say('add: not now, ' + (lost ? 'the tray is not heard' : 'an alarm stands first'));
      return;
    }
    const inside = $('adds').contains(document.activeElement);
    show($('adds'), now);
    body.toggle('adding', now);
    if (!now && inside) $('adds-open').focus();
    $('adds-open').setAttribute('aria-expanded', String(now));
    if (!now) return;
    openedAt = seconds();
    show($('probes'), false);
    body.remove('probing');
    put($('adds-words'), 'asking for the bath');
    offer([]);
    hear(byKey);
  }

  const isOpen = () => !$('adds').hidden;

  async function hear(byKey) {
    const answer = await inTray();
    if (!isOpen()) return;
    bath = answer && answer.bath;
    put($('adds-words'), bath ? bathWords(bath) : answer
      ? 'No bath in the tray. Put one in on the white pages: hold white light, then baths.'
      : 'not heard: the host does not answer');
    offer(bath ? choices(list(answer.again)) : []);
    if (byKey) $('adds-list').firstElementChild.focus();
  }

  function bathWords(b) {
    const c = b.contents || {};
    const litres = isNumber(b.litres_now) ? b.litres_now : c.litres;
    const give = (x, n) => (isNumber(x) ? ' ± ' + fixed(Math.max(x, 10 ** -n), n) : '');
    return 'bath ' + b.name + ': '
      + [isNumber(litres) ? litres.toFixed(2) + give(c.give_or_take_l, 2) + ' L' : 'litres not known',
        isNumber(c.bromide_g_per_l) ? 'bromide ' + fixed(c.bromide_g_per_l, 2) + give(c.bromide_give_or_take_g_per_l, 2) + ' g/L' : '']
        .filter(Boolean).join(', ');
  }

  function choices(again) {
    const all = OFTEN.concat(again.filter((a) => a && a.what && isNumber(a.millilitres) && a.millilitres > 0));
    const seen = new Set();
    return all.filter((add) => !seen.has(label(add)) && seen.add(label(add))).slice(0, SHOWN);
  }

  function button(parts, name, act) {
    const made = document.createElement('button');
    made.type = 'button';
    made.setAttribute('aria-label', name);
    made.append(...parts.filter(Boolean).map((text, at) => {
      const span = document.createElement('span');
      span.className = at ? 'what' : 'word';
      span.textContent = text;
      return span;
    }));
    made.addEventListener('click', act);
    return made;
  }

  function offer(adds) {
    const made = adds.map((add) => button([amount(add.millilitres), add.what, add.dilution], 'add ' + label(add), () => pour(add)));
    const close = button(['close'], 'close', () => open(false));
    close.id = 'adds-close';
    $('adds-list').replaceChildren(...made, close);
  }

  // One pour under way at a time; a poured one closes the panel, so that a bounce of the finger meets nothing.
  async function pour(add) {
    if (pouring || !bath) return;
    pouring = true;
    const asked = { what: add.what, millilitres: add.millilitres };
    if (add.dilution) asked.dilution = add.dilution;
    let made = null;
    const wrong = await ask('POST', '/api/baths/' + bath.id + '/additions', asked, ANSWER_MS, undefined, (answer) => { made = answer; });
    pouring = false;
    if (wrong) {
      say(label(add) + ' not added: ' + wrong);
      return;
    }
    open(false);
    say(label(add) + ' added');
    const now = await inTray();
    const litres = now && now.bath && now.bath.litres_now;
    const controller = made && /^refused/.test(made.controller) ? '; the controller ' + made.controller : '';
    say(label(add) + ' added' + (isNumber(litres) ? ': bath ' + litres.toFixed(2) + ' L' : '') + controller);
  }

  document.addEventListener('tray', ({ detail }) => {
    lost = detail.lost;
    if (isOpen() && (lost || seconds() - openedAt > OPEN_S)) open(false);
    body.toggle('adding', isOpen() && !body.contains('alarmed') && !body.contains('stop-lost'));
    put($('adds-elapsed'), detail.print && isNumber(detail.elapsed) ? clock(detail.elapsed) : '');
  });
  document.addEventListener('tray-window-opened', () => open(false)); // the sheet comes first
  document.addEventListener('keydown', (event) => { if (event.key === 'Escape') open(false); });
  $('probes-open').addEventListener('click', () => open(false));
  $('adds-open').addEventListener('click', (event) => open(!isOpen(), event.detail === 0));
  keys.d = () => open(!isOpen(), true);
})();
