// A page that shows itself anew after something was saved keeps what stands unsaved in its other forms, what was opened, and the focus.

const now = (control) => (control.type === 'checkbox' ? control.checked : control.value);

/** Where a form stands: its section, and which of that section's forms it is. */
function placeOf(form, content) {
  const section = form.closest('section[aria-label]') || content;
  return (section.getAttribute('aria-label') || '') + '|' + [...section.querySelectorAll('form')].indexOf(form);
}

function formAt(place, content) {
  const at = place.lastIndexOf('|');
  const label = place.slice(0, at);
  const section = label ? [...content.querySelectorAll('section[aria-label]')].find((s) => s.getAttribute('aria-label') === label) : content;
  return section ? section.querySelectorAll('form')[Number(place.slice(at + 1))] : undefined;
}

const titleOf = (fold) => fold.querySelector('summary').textContent;

/** What is to be kept of a page; a form that was just sent is not. */
export function kept(content) {
  const forms = [...content.querySelectorAll('form')];
  const unsaved = forms.filter((f) => !f.sent).flatMap((f) => [...f.elements]
    .filter((e) => e.name && e.first !== undefined && now(e) !== e.first)
    .map((e) => ({ place: placeOf(f, content), name: e.name, value: now(e) })));
  const open = [...content.querySelectorAll('details[open]')].filter((d) => !forms.some((f) => f.sent && d.contains(f))).map(titleOf);
  const active = content.contains(document.activeElement) ? document.activeElement : null;
  const form = active && active.closest('form');
  return { unsaved, open, focus: active && { place: form ? placeOf(form, content) : '', name: active.name || '' } };
}

export function putBack(content, { unsaved, open, focus }) {
  for (const fold of content.querySelectorAll('details')) if (open.includes(titleOf(fold))) fold.fill();
  for (const { place, name, value } of unsaved) {
    const control = [...(formAt(place, content)?.elements || [])].find((e) => e.name === name);
    if (!control) continue;
    if (control.type === 'checkbox') control.checked = value;
    else control.value = value;
    control.dispatchEvent(new Event('change'));
  }
  if (!focus) return;
  const form = focus.place && formAt(focus.place, content);
  const target = form ? [...form.elements].find((e) => (focus.name ? e.name === focus.name : e.type === 'submit')) : null;
  (target || content).focus({ preventScroll: true });
}
