-- Full-text index over what was said. The words stay in utterance_words; the index holds only where they stand.
-- Turns are paged in order, never ranked, so the lengths that ranking needs are left out.

CREATE VIRTUAL TABLE talk USING fts5 (
  words,
  content = 'utterance_words',
  content_rowid = 'turn',
  columnsize = 0,
  tokenize = 'unicode61 remove_diacritics 2'
);
INSERT INTO talk (talk, rank) VALUES ('hashsize', 8388608);
INSERT INTO talk (talk) VALUES ('rebuild');
