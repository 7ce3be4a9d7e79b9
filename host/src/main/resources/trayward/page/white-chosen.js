// The prints chosen for comparison, kept while the pages are open.

export const COMPARED_MAX = 4; // more lines over each other can not be told apart

const ids = new Set();

export const chosen = {
  all: () => [...ids].sort((a, b) => a - b),
  has: (id) => ids.has(id),
  /** Says whether it is chosen now as asked; a fifth is not taken. */
  set(id, wanted) {
    if (wanted && ids.size >= COMPARED_MAX) return false;
    if (wanted) ids.add(id);
    else ids.delete(id);
    return true;
  },
};
