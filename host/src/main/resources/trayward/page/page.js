'use strict';
// The dark page. It shows what the controller says, never more: what has not been heard for LOST_MS is not shown as now.
(() => {
  const LOST_MS = 2500;
  const REOPEN_MS = 4000;
  const PRESENCE_MS = 60000;
  const STOP_ANSWER_MS = 1500;
  const ANSWER_MS = 5000;
  const STOP_TRIES = 10;
  const MESSAGE_MS = 9000;
  const LATE_MS = 500; // the record is written within a tenth of a second
  const DRIFT_S = 60;
  const DRIFT_MIN_S = 20;
  const STEADY_K_PER_MIN = 0.1;
  const TRACE_S = 1200;
  const TRACE_STEP_S = 4;
  const MARKS = ['in', 'emergence', 'pull'];
  const IN_USE = ['READY', 'HEATING', 'HOLDING'];
  const ALARM_WORDS = {
    UNACKNOWLEDGED: 'not acknowledged',
    ACKNOWLEDGED: 'acknowledged',
    RETURNED_UNACKNOWLEDGED: 'gone, not acknowledged',
    LATCHED_UNACKNOWLEDGED: 'gone, not acknowledged',
    LATCHED_ACKNOWLEDGED: 'acknowledged, gone: reset',
  };

  const $ = (id) => document.getElementById(id);
  const seconds = () => performance.now() / 1000;
  const isNumber = (x) => typeof x === 'number' && Number.isFinite(x);
  const list = (x) => (Array.isArray(x) ? x : []);
  const words = (code) => String(code).replace(/_/g, ' ');
  const fixed = (x, n) => (Math.abs(x) < 0.5 * 10 ** -n ? (0).toFixed(n) : x.toFixed(n).replace('-', '−'));
  const one = (x) => fixed(x, 1);

  // Decimals that a reading deserves: the last digit is no finer than a tenth of its uncertainty, nor than the probe's
  // own steps of 1/16 K, which keep every uncertainty above 0.05 K: the second decimal waits for a better probe.
  const decimals = (u) => (!isNumber(u) ? 1 : u < 0.05 ? 2 : u <= 1 ? 1 : 0);
  const reading = (c, u) => fixed(c, decimals(u));

  // The uncertainty to the same place, rounded up where rounding would make it smaller by more than a twentieth.
  function doubt(u) {
    if (!isNumber(u)) return '';
    const place = 10 ** decimals(u);
    const near = Math.round(u * place) / place;
    return '± ' + fixed(near < 0.95 * u ? Math.ceil(u * place) / place : near, decimals(u));
  }

  // Touches the page only where something changed, so that a reader hears news and not repeats.
  function put(element, text) {
    if (element.textContent !== text) element.textContent = text;
  }
  function show(element, visible) {
    if (element.hidden === visible) element.hidden = !visible;
  }
  function putCelsius(element, value) {
    put(element.children[0], isNumber(value) ? one(value) : '–');
    put(element.children[1], isNumber(value) ? ' °C' : '');
  }
  function putReading(element, c, u) {
    put(element.children[0], isNumber(c) ? reading(c, u) : '–');
    put(element.children[1], isNumber(c) ? ' °C' : '');
    put(element.children[2], isNumber(c) ? doubt(u) : '');
  }
  function clock(s) {
    const whole = Math.max(0, Math.floor(s));
    return Math.floor(whole / 60) + ':' + String(whole % 60).padStart(2, '0');
  }

  let status = null;      // the last status heard
  let heardAt = null;     // when, in this page's own seconds
  let lost = false;
  const openedAt = seconds();

  // ---- temperature: drift and trace ----

  const recent = [];      // {t, c} of the last DRIFT_S
  const trace = [];       // {t, c or null, set or null} every TRACE_STEP_S

  function remember(s) {
    const t = seconds();
    const c = isNumber(s.bath_c) ? s.bath_c : null;
    if (c === null) recent.length = 0;
    else recent.push({ t, c });
    while (recent.length && recent[0].t < t - DRIFT_S) recent.shift();
    const last = trace[trace.length - 1];
    if (!last || t - last.t >= TRACE_STEP_S) {
      trace.push({ t, c, set: isNumber(s.set_c) ? s.set_c : null });
      while (trace.length && trace[0].t < t - TRACE_S) trace.shift();
      drawTrace(t);
    }
  }

  // Slope of a least-squares line through the last minute, K/min; null where there is too little to say.
  function drift() {
    const n = recent.length;
    if (n < 8 || recent[n - 1].t - recent[0].t < DRIFT_MIN_S) return null;
    let t = 0;
    let c = 0;
    for (const r of recent) { t += r.t / n; c += r.c / n; }
    let up = 0;
    let down = 0;
    for (const r of recent) { up += (r.t - t) * (r.c - c); down += (r.t - t) ** 2; }
    return (up / down) * 60;
  }

  function driftWords() {
    const k = drift();
    if (k === null) return 'drift unknown';
    if (Math.abs(k) < STEADY_K_PER_MIN) return 'steady';
    return (k > 0 ? 'rising ' : 'falling ') + Math.abs(k).toFixed(1) + ' K/min';
  }

  function drawTrace(now) {
    const values = [];
    for (const p of trace) {
      if (p.c !== null) values.push(p.c);
      if (p.set !== null) values.push(p.set);
    }
    const labels = $('trace-y').children;
    if (!values.length) return;
    let low = Math.floor(Math.min(...values) * 2 - 0.4) / 2;
    let high = Math.ceil(Math.max(...values) * 2 + 0.4) / 2;
    if (high - low < 2) { low -= 0.5; high += 0.5; }
    put(labels[0], one(high));
    put(labels[1], one(low));
    const line = (key) => {
      let d = '';
      let before = null;
      for (const p of trace) {
        if (p[key] === null) { before = null; continue; }
        const joined = before !== null && p.t - before < 3 * TRACE_STEP_S;
        const x = (TRACE_S - (now - p.t)).toFixed(1);
        d += (joined ? 'L' : 'M') + x + ' ' + (100 * (high - p[key]) / (high - low)).toFixed(1);
        before = p.t;
      }
      return d;
    };
    $('trace-bath').setAttribute('d', line('c'));
    $('trace-set').setAttribute('d', line('set'));
    $('trace').setAttribute('aria-label', 'bath temperature of the last 20 minutes and the set temperature, scale '
      + one(low) + ' to ' + one(high) + ' °C');
  }

  // ---- the print in progress ----

  let shownPrint = null;
  let shownSeconds = 0;

  const markOf = (print, kind) => list(print && print.marks).find((m) => m && m.kind === kind && isNumber(m.elapsed_s));

  function nextMark() {
    const print = status && status.current_print;
    if (!print) return 'in';
    return MARKS.find((kind) => !markOf(print, kind)) || 'in';
  }

  function showMarks(print, origin) {
    // before the bath is in use no mark is called for
    const next = print || (status && IN_USE.includes(status.state)) ? nextMark() : null;
    for (const kind of MARKS) {
      const mark = markOf(print, kind);
      put($(kind).querySelector('.at'), mark ? clock(mark.elapsed_s - origin) : '');
      $(kind).classList.toggle('next', kind === next);
    }
  }

  function showPrint() {
    const print = status && status.current_print;
    if (!print) {
      shownPrint = null;
      put($('elapsed'), '–');
      const past = status && status.last_print;
      const pulled = past && markOf(past, 'pull');
      const from = past && markOf(past, 'in');
      put($('print'), pulled && from
        ? 'print ' + past.id + ' pulled at ' + clock(pulled.elapsed_s - from.elapsed_s) : 'no print');
      put($('print-more'), '');
      showMarks(null, 0);
      tell(null, null);
      return;
    }
    const from = markOf(print, 'in');
    const pulled = markOf(print, 'pull');
    const origin = from ? from.elapsed_s : 0;
    let whole = null;
    if (pulled) {
      whole = Math.floor(pulled.elapsed_s - origin);
    } else if (isNumber(print.elapsed_s)) {
      whole = Math.floor(print.elapsed_s - origin + seconds() - heardAt);
      // events jitter; the shown second does not run back for it
      if (shownPrint === print.id && whole === shownSeconds - 1) whole = shownSeconds;
    }
    shownPrint = print.id;
    shownSeconds = whole;
    put($('elapsed'), whole === null ? '–' : clock(whole));
    put($('print'), 'print ' + (print.id ?? ''));
    put($('print-more'), pulled ? ' pulled' : lost ? ', counted here' : ' in developer');
    showMarks(print, origin);
    tell(pulled ? null : print, whole);
  }

  // What only helps stands in files of its own and listens here: where one of them fails, stop and alarms do not.
  function tell(print, elapsed) {
    document.body.classList.toggle('in-print', print !== null);
    document.dispatchEvent(new CustomEvent('tray', { detail: { status, lost: lost || !status, print, elapsed } }));
  }

  // ---- status to page ----

  let shownAlarm = null; // the one that the button silences

  function showAlarm(s) {
    const alarms = list(s.alarms).filter(Boolean);
    const first = alarms.find((a) => a.cause === s.first_out) || alarms[0] || (s.first_out ? { cause: s.first_out } : null);
    const latched = alarms.filter((a) => a.latched);
    const calling = alarms.some((a) => /UNACKNOWLEDGED/.test(a.state));
    // a level that was acknowledged is asked about below: the question stands for the alarm
    const asked = first !== null && !calling && !s.first_out && alarms.length === 1 && /^LEVEL_/.test(first.cause) && (s.level === 'LOW' || s.level === 'UNSURE');
    show($('alarm'), first !== null && !asked);
    $('alarm').classList.toggle('unseen-yet', calling);
    document.body.classList.toggle('alarmed', first !== null && !asked);
    // nobody has seen it, or it waits for a reset: it has the whole screen, but for the stop and what answers it
    document.body.classList.toggle('whole', first !== null && (calling || Boolean(s.first_out)));
    document.body.classList.toggle('calling', calling);
    shownAlarm = first && /UNACKNOWLEDGED/.test(first.state) ? first.cause : (alarms.find((a) => /UNACKNOWLEDGED/.test(a.state)) || {}).cause || null;
    const others = alarms.filter((a) => a !== first);
    document.body.classList.toggle('several', others.length > 0);
    if (first) {
      put($('first-out'), words(first.cause));
      $('first-out').dataset.cause = first.cause;
      put($('alarm-priority'), first.priority_words || '');
      put($('alarm-state'), (first.cause === s.first_out ? 'first-out, ' : '') + (ALARM_WORDS[first.state] || words(first.state || '').toLowerCase()));
      put($('alarm-meaning'), [first.requirement ? first.requirement + '.' : '', first.meaning, first.why].filter(Boolean).join(' '));
      put($('alarm-action'), first.action || '');
      put($('alarm-more'), levelWords(s) + others
        .map((a) => 'also ' + words(a.cause) + (a.priority_words ? ', ' + a.priority_words : '')
          + (others.length > 1 ? '.' : a.action ? ': ' + a.action : '')).join(' '));
    } else {
      put($('first-out'), '');
      delete $('first-out').dataset.cause;
    }
    $('acknowledge').classList.toggle('act', calling);
    $('reset').classList.toggle('act', first !== null && latched.length > 0 && latched.every((a) => a.state === 'LATCHED_ACKNOWLEDGED'));
    $('start').classList.toggle('next', !s.first_out && (s.state === 'OFF' || s.state === 'AFTER_RUN'));
  }

  // What an alarm about the level needs to know, where the question about it has no room.
  function levelWords(s) {
    const asks = s.level === 'LOW' || s.level === 'UNSURE';
    return asks && isNumber(s.add_l) && s.add_l > 0 ? 'add about ' + s.add_l.toFixed(2) + ' L of water. ' : '';
  }

  // The record of alarms is asked for when an alarm moved, and a moment later: it is written after the scan.
  let lateKey = null;

  function followLate(s) {
    const key = JSON.stringify(list(s.alarms).map((a) => [a.cause, a.state]));
    if (key === lateKey) return;
    lateKey = key;
    setTimeout(showLate, LATE_MS);
  }

  async function showLate() {
    const record = await fetch('/api/alarms?most=100', { cache: 'no-store' }).then((a) => a.json()).catch(() => null);
    const came = list(record && record.steps).filter((step) => step.state === 'UNACKNOWLEDGED').slice(0, 3);
    $('late').querySelector('ul').replaceChildren(...came.map((step) => {
      const li = document.createElement('li');
      li.textContent = words(step.name).toLowerCase() + ' ' + new Date(step.at).toLocaleString([], { dateStyle: 'short', timeStyle: 'short' });
      return li;
    }));
    show($('late'), came.length > 0);
  }

  function showPresence(s) {
    const due = s.presence_due_s;
    show($('presence'), isNumber(due) && due < 300);
    if (!isNumber(due)) return;
    const minutes = Math.ceil(due / 60);
    put($('presence'), due <= 0 ? 'presence due: touch the page'
      : minutes <= 1 ? 'presence due within 1 min: touch the page'
        : 'presence due in ' + minutes + ' min: touch the page');
  }

  // The liquid, and what a person can say of it. What was poured is told to the hundredth of a litre.
  let toAdd = 0;

  function showLevel(s) {
    // what the warm-up saw, beside what is counted since
    const seen = s.tray_seen ? ', warm-up saw ' + s.tray_seen
      + (isNumber(s.litres_seen_uncertainty) ? ' ± ' + Math.max(0.1, Math.ceil(s.litres_seen_uncertainty * 10 - 0.5) / 10).toFixed(1) + ' L' : '') : '';
    put($('liquid'), (isNumber(s.liquid_l) ? 'liquid about ' + s.liquid_l.toFixed(2) + ' L' : '') + seen);
    put($('reach'), s.out_of_reach || '');
    show($('reach'), Boolean(s.out_of_reach));
    const asks = s.level === 'LOW' || s.level === 'UNSURE';
    toAdd = isNumber(s.add_l) ? Math.round(s.add_l * 100) / 100 : 0;
    const add = toAdd > 0 ? 'add about ' + toAdd.toFixed(2) + ' L of water' : 'look at the tray';
    put($('level-words'), asks ? 'level ' + s.level.toLowerCase() + ': ' + add : '');
    show($('poured'), toAdd > 0);
    show($('level'), asks);
  }

  function showUpkeep(s) {
    const overdue = list(s.upkeep_overdue);
    put($('upkeep'), overdue.length ? 'overdue: ' + overdue.join(', ') : '');
    show($('upkeep'), overdue.length > 0 && $('confirm').hidden); // the question says it too
    if (!['OFF', 'AFTER_RUN'].includes(s.state)) show($('confirm'), false);
  }

  // ---- calibration of the probes, at rest only ----

  const DOUBTS = [0.05, 0.1, 0.2, 0.5];
  let probes = [];        // as last heard, while the form is open
  let chosen = 0;
  let referenceC = null;  // what the thermometer shows
  let doubtAt = 1;
  let probesAt = -Infinity;

  const atRest = (s) => ['OFF', 'AFTER_RUN'].includes(s.state);

  function showProbes(s) {
    show($('calibration'), s.calibration_record_ok === false);
    if (!atRest(s)) show($('probes'), false);
    show($('probes-open'), atRest(s));
    document.body.classList.toggle('probing', !$('probes').hidden && !document.body.classList.contains('alarmed'));
    if (!$('probes').hidden && seconds() - probesAt > 1) hearProbes();
  }

  async function hearProbes() {
    probesAt = seconds();
    const answer = await fetch('/api/probes', { cache: 'no-store' }).then((a) => a.json()).catch(() => null);
    probes = list(answer && answer.probes);
    chosen = probes.length ? chosen % probes.length : 0;
    const p = probes[chosen];
    if (p && referenceC === null) {
      const c = isNumber(p.corrected_c) ? p.corrected_c : p.raw_c;
      referenceC = isNumber(c) ? Math.round(c * 10) / 10 : null;
    }
    put($('probe-words'), p ? probeWords(p) : 'no probe heard');
    showReference();
  }

  function probeWords(p) {
    const said = [words(p.role) + ' probe reads ' + (isNumber(p.raw_c) ? one(p.raw_c) + ' °C' : 'nothing')];
    if (p.calibrated && isNumber(p.corrected_c)) said.push('corrected ' + reading(p.corrected_c, p.uncertainty_k) + ' °C');
    said.push(doubt(p.uncertainty_k) + (p.calibrated
      ? ', ' + list(p.points).map((at) => at.point).join(' and ') + (p.date ? ' ' + p.date : '') : ' as bought'));
    if (p.record_of_another_probe) said.push('the record is of another probe');
    return said.join(', ') + '. ' + (p.not_still ? 'Not now: ' + p.not_still : 'It stands still') + '.';
  }

  function showReference() {
    put($('reference'), isNumber(referenceC) ? 'thermometer ' + one(referenceC) + ' °C' : 'no reading');
    put($('reference-doubt').firstElementChild, '± ' + DOUBTS[doubtAt]);
  }

  function nudgeReference(by) {
    if (isNumber(referenceC)) referenceC = Math.round((referenceC + by) * 10) / 10;
    showReference();
  }

  function openProbes(open) {
    show($('probes'), open);
    document.body.classList.toggle('probing', open);
    referenceC = null;
    if (open) hearProbes();
  }

  async function calibrate(method, body, done) {
    const p = probes[chosen];
    if (!p) return;
    const wrong = await ask(method, '/api/probes/' + p.role + '/calibration', body, ANSWER_MS);
    say(wrong ? 'not taken: ' + wrong : words(p.role) + ' probe: ' + done);
    if (!wrong) recent.length = 0; // the step of a new correction is no drift
    setTimeout(hearProbes, 300); // the scan applies it a moment later
  }

  function showWithheld(s) {
    const reasons = list(s.withheld_words).length ? s.withheld_words : list(s.withheld).map((w) => words(w).toLowerCase());
    const ul = $('withheld').querySelector('ul');
    const key = JSON.stringify(reasons);
    if (ul.dataset.key !== key) {
      ul.dataset.key = key;
      ul.replaceChildren(...reasons.map((text) => {
        const li = document.createElement('li');
        li.textContent = text;
        return li;
      }));
    }
    show($('withheld'), reasons.length > 0 && $('confirm').hidden);
  }

  function heatWords(s) {
    const parts = [];
    if (typeof s.heater_on === 'boolean') parts.push(s.heater_on ? 'heater on' : 'heater off');
    if (isNumber(s.duty)) parts.push('duty ' + Math.round(s.duty * 100) + ' %');
    if (isNumber(s.plate_c)) parts.push('plate ' + reading(s.plate_c, s.plate_uncertainty_k) + ' °C ' + doubt(s.plate_uncertainty_k));
    if (isNumber(s.second_bath_c)) parts.push('second probe ' + reading(s.second_bath_c, s.second_bath_uncertainty_k) + ' °C ' + doubt(s.second_bath_uncertainty_k));
    return parts.join(', ');
  }

  function stateWords(s) {
    return s.state_words || (s.state ? words(s.state).toLowerCase() : '–');
  }

  function render(s) {
    const body = document.body.classList;
    const left = isNumber(s.remaining_s) && s.remaining_s > 0 ? ' ' + clock(Math.ceil(s.remaining_s)) : '';
    // the words are announced, the running seconds are not
    put($('state'), stateWords(s));
    if (left) $('state').dataset.left = left;
    else delete $('state').dataset.left;
    putReading($('bath'), s.bath_c, s.bath_uncertainty_k);
    put($('drift'), isNumber(s.bath_c) ? driftWords() : 'reading not valid');
    putCelsius($('set'), s.set_c);
    put($('fan'), s.fan_proven === true ? 'fan proven' : 'fan not proven');
    put($('fan-small'), (s.fan_commanded === false ? 'off, ' : '')
      + (isNumber(s.fan_rpm) ? Math.round(s.fan_rpm) + ' rpm' : 'rpm –'));
    body.toggle('proven', s.fan_proven === true);
    body.toggle('no-air', s.fan_proven !== true && s.fan_commanded === true && s.state !== 'PROVING');
    put($('heat'), heatWords(s));
    showWithheld(s);
    showAlarm(s);
    followLate(s);
    showPresence(s);
    showLevel(s);
    showUpkeep(s);
    showProbes(s);
    show($('simulated'), s.simulated === true);
    show($('invented'), s.demo === true);
    show($('log'), s.log_ok === false);
    show($('alarm-record'), s.alarm_record_ok === false);
    const notices = [s.log_ok === false, isNumber(s.presence_due_s) && s.presence_due_s < 300, list(s.withheld).some((w) => w !== 'NOT_RUNNING')];
    body.toggle('asking', !$('level').hidden || !$('confirm').hidden);
    body.toggle('resting', atRest(s) && !['alarmed', 'asking', 'stop-lost'].some((c) => body.contains(c)));
    body.toggle('crowded', notices.filter(Boolean).length > 1);
  }

  function setLost(now) {
    lost = true;
    const body = document.body.classList;
    body.add('lost');
    body.remove('proven', 'no-air');
    put($('connection'), 'connection lost');
    putReading($('bath'), null);
    put($('fan'), 'fan not heard');
    if (!status) {
      put($('drift'), 'nothing heard yet');
      return;
    }
    const ago = now - heardAt;
    const since = ago < 60 ? Math.floor(ago) + ' s ago' : Math.floor(ago / 60) + ' min ago';
    put($('drift'), isNumber(status.bath_c) ? 'was ' + reading(status.bath_c, status.bath_uncertainty_k) + ' °C, ' + since : 'nothing heard for ' + since.replace(' ago', ''));
    put($('state'), 'was ' + stateWords(status));
    delete $('state').dataset.left;
    put($('fan-small'), '');
    put($('heat'), 'heater not heard, fan was ' + (status.fan_proven === true ? 'proven' : 'not proven'));
    show($('withheld'), false);
    show($('presence'), false);
    show($('level'), false);
    show($('confirm'), false);
    show($('probes'), false);
    body.remove('probing');
  }

  function heard(event) {
    let s;
    try {
      s = JSON.parse(event.data);
    } catch {
      return;
    }
    if (s === null || typeof s !== 'object') return;
    status = s;
    heardAt = seconds();
    remember(s);
    lost = false;
    render(s);
    document.body.classList.remove('lost', 'unheard');
    put($('connection'), 'connected');
    showPrint();
  }

  function tick() {
    const now = seconds();
    if ((now - (heardAt ?? openedAt)) * 1000 > LOST_MS) {
      setLost(now);
      if ((now - streamAt) * 1000 > REOPEN_MS) openStream();
    }
    showPrint();
  }

  let stream = null;
  let streamAt = 0;

  function openStream() {
    streamAt = seconds();
    if (stream) stream.close();
    stream = new EventSource('/api/stream');
    stream.addEventListener('status', heard);
  }

  // ---- asking ----

  let messageTimer = 0;

  function say(text) {
    put($('message'), text);
    clearTimeout(messageTimer);
    messageTimer = setTimeout(() => put($('message'), ''), MESSAGE_MS);
  }

  // Sends one request. Returns null where it was carried out, else the words to show.
  async function ask(method, path, body, waitMs, confirming, answered) {
    const gate = new AbortController();
    const timer = setTimeout(() => gate.abort(), waitMs);
    try {
      const answer = await fetch(path, {
        method,
        cache: 'no-store',
        credentials: 'same-origin',
        signal: gate.signal,
        headers: body === undefined ? {} : { 'Content-Type': 'application/json' },
        body: body === undefined ? undefined : JSON.stringify(body),
      });
      if (answer.ok) {
        answered?.(await answer.json().catch(() => null));
        return null;
      }
      const problem = await answer.json().catch(() => null);
      if (problem && problem.confirm) confirming?.(problem.detail);
      return (problem && (problem.detail || problem.title)) || 'refused (' + answer.status + ')';
    } catch {
      return 'not delivered, no answer';
    } finally {
      clearTimeout(timer);
    }
  }

  async function command(name) {
    const wrong = await ask('POST', '/api/commands/' + name, undefined, ANSWER_MS);
    if (wrong) say(name + ': ' + wrong);
  }

  // A start that is refused for upkeep shows why, and can be asked again by a button of its own.
  async function start(confirmed) {
    show($('confirm'), false);
    const body = confirmed ? { confirmed: true } : undefined;
    let asks = false;
    const wrong = await ask('POST', '/api/commands/start', body, ANSWER_MS, (why) => {
      asks = true;
      put($('confirm-words'), why);
    });
    show($('confirm'), asks);
    if (!wrong) stopShown(false);
    else if (!asks) say('start: ' + wrong);
  }

  async function confirmLevel() {
    const wrong = await ask('POST', '/api/commands/confirm-level', undefined, ANSWER_MS);
    say(wrong ? 'level not confirmed: ' + wrong : 'level confirmed');
  }

  async function poured() {
    const litres = toAdd;
    const wrong = await ask('POST', '/api/top-ups', { litres }, ANSWER_MS);
    say(wrong ? 'pour not told: ' + wrong : litres.toFixed(2) + ' L poured');
  }

  // A telephone in the hand confirms by itself; the buzzer at the tray does so for everyone.
  function buzz() {
    try { navigator.vibrate?.(60); } catch { /* nothing to feel */ }
  }

  // One alarm, the one that is shown; whatever comes after it sounds.
  async function silence() {
    const cause = shownAlarm;
    if (!cause) {
      say('nothing to silence');
      return;
    }
    const wrong = await ask('POST', '/api/alarms/' + encodeURIComponent(cause) + '/silence', undefined, ANSWER_MS);
    say(wrong ? 'not silenced: ' + wrong : words(cause).toLowerCase() + ' silenced for two minutes');
  }

  async function mark(kind) {
    const wrong = await ask('POST', '/api/marks', { kind, by: 'page' }, ANSWER_MS);
    if (!wrong) buzz();
    say(wrong ? kind + ' not marked: ' + wrong : kind + ' marked');
  }

  // Stop: shown at once where it did not get through, and tried again a few times meanwhile.
  let stopRound = 0;

  function stopShown(failed) {
    show($('stop-failed'), failed);
    document.body.classList.toggle('stop-lost', failed);
    if (!failed) stopRound++;
  }

  async function stop() {
    const round = ++stopRound;
    for (let tries = 1; tries <= STOP_TRIES; tries++) {
      const wrong = await ask('POST', '/api/commands/stop', undefined, STOP_ANSWER_MS);
      if (round !== stopRound) return;
      if (!wrong) {
        say('stop delivered');
        stopShown(false);
        return;
      }
      put($('stop-again'), tries < STOP_TRIES ? 'Trying again.' : 'Not delivered in ' + STOP_TRIES + ' tries.');
      stopShown(true);
      await new Promise((done) => setTimeout(done, 1000));
      if (round !== stopRound) return;
    }
  }

  // Set temperature: one request under way at a time; taps meanwhile add up.
  let wanted = null;
  let setting = false;

  async function nudge(step) {
    if (lost || !status || !isNumber(status.set_c)) {
      say('set temperature not changed: it is not known here');
      return;
    }
    wanted = Math.round(((wanted ?? status.set_c) + step) * 10) / 10;
    put($('set-asked'), 'asked ' + one(wanted));
    if (setting) return;
    setting = true;
    let sent;
    let wrong;
    do {
      sent = wanted;
      wrong = await ask('PUT', '/api/set-temperature', { celsius: sent }, ANSWER_MS);
    } while (!wrong && wanted !== sent);
    // the next events bring the set temperature the controller really has
    if (!wrong) await new Promise((done) => setTimeout(done, 600));
    setting = false;
    if (!wrong && wanted !== sent) {
      const rest = wanted - sent;
      wanted = sent;
      nudge(rest);
      return;
    }
    wanted = null;
    put($('set-asked'), '');
    if (wrong) say('set temperature not changed: ' + wrong);
  }

  // Any touch says that somebody is here.
  let presenceAt = -Infinity;

  function present() {
    if (performance.now() - presenceAt < PRESENCE_MS) return;
    presenceAt = performance.now();
    setTimeout(() => ask('POST', '/api/commands/presence', undefined, ANSWER_MS), 0); // after the press itself
  }

  // ---- hands ----

  const actions = {
    x: stop,
    s: () => start(false),
    a: () => command('acknowledge'),
    r: () => command('reset'),
    q: silence,
    i: () => mark('in'),
    e: () => mark('emergence'),
    p: () => mark('pull'),
    n: () => mark(nextMark()),
    '+': () => nudge(0.5),
    '=': () => nudge(0.5),
    '-': () => nudge(-0.5),
    '−': () => nudge(-0.5),
  };
  const press = { start: 's', acknowledge: 'a', silence: 'q', reset: 'r', in: 'i', emergence: 'e', pull: 'p', 'raise-set': '+', 'lower-set': '-' };
  for (const [id, key] of Object.entries(press)) $(id).addEventListener('click', () => actions[key]());

  $('start-anyway').addEventListener('click', () => start(true));
  $('level-right').addEventListener('click', confirmLevel);
  $('poured').addEventListener('click', poured);
  $('probes-open').addEventListener('click', () => openProbes(true));
  $('probes-close').addEventListener('click', () => openProbes(false));
  $('probe-next').addEventListener('click', () => { chosen++; referenceC = null; hearProbes(); });
  $('probe-ice').addEventListener('click', () => calibrate('POST', { point: 'ice' }, 'ice point taken'));
  $('probe-forget').addEventListener('click', () => calibrate('DELETE', undefined, 'forgotten, as bought'));
  $('reference-down').addEventListener('click', () => nudgeReference(-0.1));
  $('reference-up').addEventListener('click', () => nudgeReference(0.1));
  $('reference-doubt').addEventListener('click', () => { doubtAt = (doubtAt + 1) % DOUBTS.length; showReference(); });
  $('reference-take').addEventListener('click', () => calibrate('POST',
    { point: 'reference', celsius: referenceC, uncertainty_k: DOUBTS[doubtAt] }, 'reference taken'));

  // A stop acts on touch, not on release: a wet finger slides.
  let stopTouched = false;
  $('stop').addEventListener('pointerdown', () => { stopTouched = true; stop(); });
  $('stop').addEventListener('click', (event) => {
    if (!(stopTouched && event.detail > 0)) stop();
    stopTouched = false;
  });

  // on a keyboard of another script the place of the key counts
  function keyOf(event) {
    const place = /^Key[A-Z]$/.test(event.code) && event.key.charCodeAt(0) > 127 ? event.code[3] : event.key;
    return place.toLowerCase();
  }

  document.addEventListener('keydown', (event) => {
    if (event.repeat || event.ctrlKey || event.altKey || event.metaKey) return;
    const action = actions[keyOf(event)];
    if (!action) return;
    event.preventDefault();
    action();
  });
  for (const kind of ['pointerdown', 'keydown', 'click']) document.addEventListener(kind, present, true);
  // a native menu or a drag image would be white
  for (const kind of ['contextmenu', 'dragstart', 'selectstart']) document.addEventListener(kind, (e) => e.preventDefault());
  document.addEventListener('visibilitychange', tick);

  window.tray = Object.freeze({
    $, seconds, isNumber, list, fixed, one, put, show, clock, markOf, MARKS, IN_USE, ask, say, buzz, keyOf, keys: actions, ANSWER_MS,
  });
  openStream();
  setInterval(tick, 200);
})();
