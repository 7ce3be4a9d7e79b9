// Which bath a print was made in, and what it held then: the book has a line for each print.
import { list } from './white-dom.js';
import { get } from './white-http.js';

const BATHS_LOOKED_AT = 12; // a print was made in one of the newest baths made before it

/** { id, name, after } as the book has it at the print, or null. */
export async function bathOf(print) {
  const baths = await get('/api/baths?limit=200');
  const before = baths.filter((b) => !(Date.parse(b.made) > Date.parse(print.started))).slice(0, BATHS_LOOKED_AT);
  for (const bath of before) {
    const whole = await get('/api/baths/' + bath.id);
    const line = list(whole.book).find((l) => l.kind === 'printed' && l.print === print.id);
    if (line && line.after) return { id: bath.id, name: bath.name, after: line.after };
  }
  return null;
}
