'use strict';
// When to watch: the window of the forecast, told before a sheet is in and drawn while it is, over the bath's temperature
// since in. All on one time axis, which begins at in. The controller's host says the window; nothing is computed here.
(() => {
  const { $, isNumber, list, one, put, show, clock, IN_USE } = window.tray;
  const AXIS_STEP_S = 30; // the axis grows by steps, so that it stands still between

  const body = document.body.classList;
  const down = (s) => clock(Math.floor(s));
  const up = (s) => clock(Math.ceil(s));
  const span = (two) => down(two[0]) + ' to ' + up(two[1]);
  const from = (f) => 'from ' + f.prints + (f.prints === 1 ? ' print' : ' prints');
  const isSpan = (two) => list(two).length === 2 && two.every(isNumber);

  // where something else comes first
  const pressed = () => ['alarmed', 'asking', 'stop-lost'].some((c) => body.contains(c));

  const windowOf = (f) => (f && !f.refused && isSpan(f.window_80_s) && isSpan(f.window_95_s) ? f : null);
  // the reason without what explains it
  const reasonOf = (f) => (f && f.refused ? 'no forecast: ' + String(f.refused).split(/[:;]/)[0] : '');

  // ---- the sheet's own trace ----

  let sheet = { print: null, points: [], before: null };

  function follow(print, elapsed, s) {
    if (sheet.print !== print.id) {
      sheet = { print: print.id, points: [], before: elapsed > 2 * trayTraces.EVERY_S ? trayTraces.traceOf(print.id) : null };
    }
    const last = sheet.points[sheet.points.length - 1];
    if (last && elapsed < last.t) sheet.points = []; // in was taken back and marked anew
    if (sheet.points.length < trayTraces.POINTS && (!last || elapsed - last.t >= trayTraces.EVERY_S)) {
      sheet.points.push({ t: elapsed, c: isNumber(s.bath_c) ? s.bath_c : null });
    }
  }

  function sheetPoints() {
    const since = sheet.points.length ? sheet.points[0].t : Infinity;
    return (sheet.before ? sheet.before.points.filter((p) => p.t < since) : []).concat(sheet.points);
  }

  function drawSheet(end, old) {
    const now = sheetPoints();
    const past = old ? old.points : [];
    const read = now.concat(past.filter((p) => p.t <= end)).map((p) => p.c).filter((c) => c !== null);
    let low = Math.floor(Math.min(...read) * 2 - 0.4) / 2;
    let high = Math.ceil(Math.max(...read) * 2 + 0.4) / 2;
    if (high - low < 2) { low -= 0.5; high += 0.5; }
    const labels = $('sheet-y').children;
    put(labels[0], read.length ? one(high) : '');
    put(labels[1], read.length ? one(low) : '');
    const x = (t) => (1000 * t / end).toFixed(1);
    const line = (points) => {
      let d = '';
      let before = null;
      for (const p of points) {
        if (p.c !== null) {
          d += (before !== null && p.t - before < 3 * trayTraces.EVERY_S ? 'L' : 'M') + x(p.t) + ' ' + (100 * (high - p.c) / (high - low)).toFixed(1);
          before = p.t;
        }
      }
      return d;
    };
    $('sheet-now').setAttribute('d', read.length ? line(now) : '');
    $('sheet-old').setAttribute('d', read.length ? line(past) : '');
    const ticks = old ? [old.emergence, old.pull].filter(isNumber) : [];
    $('sheet-ticks').setAttribute('d', ticks.map((t) => 'M' + x(t) + ' 100V66').join(''));
  }

  // ---- the bar ----

  function place(id, two, end) {
    $(id).hidden = !two;
    if (!two) return;
    $(id).style.left = (100 * two[0] / end).toFixed(2) + '%';
    $(id).style.width = (100 * (two[1] - two[0]) / end).toFixed(2) + '%';
  }

  function drawBar(f, elapsed, end) {
    place('watch-gone', [0, elapsed], end);
    place('watch-95', f && f.window_95_s, end);
    place('watch-80', f && f.window_80_s, end);
  }

  // ---- what is said ----

  function smallPrint(f, guide, old) {
    const said = [];
    if (f) said.push(f.moment + ' ' + span(f.window_80_s) + ', ' + from(f));
    if (guide) {
      const at = ['emergence', 'pull'].filter((kind) => isNumber(old[kind])).map((kind) => kind + ' ' + clock(old[kind]));
      said.push(['as print ' + guide, ...at].join(', '));
    }
    if (f) said.push(...list(f.caveats), '95 %: ' + span(f.window_95_s));
    return said.join('; ');
  }

  // The opening is announced once for each print and moment, the seconds never.
  let opened = '';

  function announce(print, f, open) {
    const key = print.id + f.moment;
    if (open && opened !== key) {
      opened = key;
      put($('watch-said'), 'watch now: ' + f.moment + ' expected until ' + up(f.window_80_s[1]));
      document.dispatchEvent(new CustomEvent('tray-window-opened'));
    } else if (!open && opened === key) {
      opened = '';
    }
  }

  function before(s, lost) {
    const f = windowOf(s && s.forecast);
    const refused = s && IN_USE.includes(s.state) ? reasonOf(s.forecast) : '';
    const said = f && !isNumber(f.print) ? f.moment + ' ' + span(f.window_80_s) + ', ' + from(f) : refused;
    outlook(lost ? '' : said, !f);
    hide();
  }

  function outlook(said, refused) {
    put($('outlook'), said);
    $('outlook').classList.toggle('refused', refused);
    show($('outlook'), said !== '');
    body.toggle('outlooked', said !== '' && !pressed());
  }

  function hide() {
    show($('watch'), false);
    show($('print-watch'), false);
    put($('watch-said'), '');
    body.remove('watching', 'opened');
  }

  function during(print, elapsed, s, lost) {
    const said = windowOf(s.forecast);
    const f = said && said.print === print.id ? said : null;
    const guide = s.guide && isNumber(s.guide.print) && s.guide.print !== print.id ? s.guide.print : null;
    const old = guide === null ? null : trayTraces.traceOf(guide);
    const open = f !== null && (f.open === true || (isNumber(elapsed) && elapsed >= Math.floor(f.window_80_s[0])));
    if (f && !lost) announce(print, f, open);
    if (isNumber(elapsed) && !lost) follow(print, elapsed, s);

    // few words for where the bar has no room: beside an alarm, and of what was when nothing is heard
    const few = !f ? '' : (f.moment === 'pull' ? 'pull: ' : '') + (open && !lost ? 'WATCH NOW' : 'watch from ' + down(f.window_80_s[0]));
    put($('print-watch'), few);
    show($('print-watch'), few !== '');
    const refused = f ? '' : reasonOf(s.forecast);
    outlook(!lost ? refused : few && 'last heard: ' + few, refused !== '');

    const drawn = !lost && isNumber(elapsed) && (f !== null || guide !== null);
    show($('watch'), drawn);
    body.toggle('watching', drawn && !pressed());
    body.toggle('opened', drawn && open);
    // where something is to be read below, the trace makes room
    body.toggle('noted', Array.from(document.querySelectorAll('#notes .warn, #withheld')).some((e) => !e.hidden));
    if (!drawn) return;
    show($('watch-block'), f !== null);
    if (f) {
      put($('watch-words'), open ? 'WATCH NOW' : f.start_watching && !f.open ? f.start_watching : 'start watching from ' + down(f.window_80_s[0]));
      put($('watch-what'), open || f.moment === 'pull' ? f.moment : '');
    }
    put($('watch-small'), smallPrint(f, guide, old));
    const last = Math.max(elapsed * 1.05, f ? f.window_95_s[1] * 1.05 : 0, old ? Math.max(old.emergence, old.pull) * 1.05 : 0);
    const end = Math.max(1, Math.ceil(last / AXIS_STEP_S)) * AXIS_STEP_S;
    drawBar(f, elapsed, end);
    drawSheet(end, old);
  }

  document.addEventListener('tray', ({ detail: { status, lost, print, elapsed } }) => {
    if (status && print) during(print, elapsed, status, lost);
    else before(status, lost);
  });
})();
