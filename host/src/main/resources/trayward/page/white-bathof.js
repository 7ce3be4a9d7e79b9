// The bath a print went into, as the program kept it then, with the name it has now.
import { ask } from './white-http.js';

/** { id, name, held } or null where no bath was in the tray. */
export async function bathOf(print) {
  if (!print.bath) return null;
  const answer = await ask('GET', '/api/baths/' + print.bath.bath);
  return { id: print.bath.bath, name: answer.ok ? answer.body.name : 'bath ' + print.bath.bath, held: print.bath };
}
