// What was typed on a board and never saved is kept in this browser.
const drafts = "boardwright.draft.";

export const readDraft = board => localStorage.getItem(drafts + board);

export const writeDraft = (board, text) => localStorage.setItem(drafts + board, text);

export const dropDraft = board => localStorage.removeItem(drafts + board);
