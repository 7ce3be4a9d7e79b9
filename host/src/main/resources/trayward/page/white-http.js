// Requests to the program, and what it refuses (RFC 9457).

const ANSWER_MS = 15000;

/** Sends one request: { ok, status, body } or { ok: false, status, problem }. */
export async function ask(method, path, body, type = 'application/json', waitMs = ANSWER_MS) {
  const gate = new AbortController();
  const timer = setTimeout(() => gate.abort(), waitMs);
  const sent = body === undefined || body instanceof Blob ? body : JSON.stringify(body);
  try {
    const answer = await fetch(path, {
      method,
      cache: 'no-store',
      credentials: 'same-origin',
      signal: gate.signal,
      headers: sent === undefined ? {} : { 'Content-Type': type },
      body: sent,
    });
    const text = await answer.text();
    const read = /json/.test(answer.headers.get('Content-Type') || '') ? JSON.parse(text) : text;
    return answer.ok
      ? { ok: true, status: answer.status, body: read }
      : { ok: false, status: answer.status, problem: problemOf(read, answer.status) };
  } catch {
    return { ok: false, status: 0, problem: { detail: 'not delivered: the program does not answer' } };
  } finally {
    clearTimeout(timer);
  }
}

function problemOf(read, status) {
  return read && typeof read === 'object' ? read : { detail: 'refused (' + status + ')' };
}

/** What is wrong, in words. */
export const wrong = (problem) => problem.detail || problem.title || 'refused';

/** Reads something; throws what is wrong, for the page to show in place of itself. */
export async function get(path) {
  const answer = await ask('GET', path);
  if (!answer.ok) throw Object.assign(new Error(wrong(answer.problem)), { status: answer.status });
  return answer.body;
}
