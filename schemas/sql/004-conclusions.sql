-- What was concluded, answered and looked for; numbers that are not certain; the letter-figure scale on entries.

-- Of a number that is not certain: the most; the number itself is then the least.
ALTER TABLE entries ADD COLUMN number_most INTEGER;
-- "B2", a half of it, or empty (FM 2-22.3, appendix B). Of an entry, never of a person.
ALTER TABLE entries ADD COLUMN letter_figure TEXT NOT NULL DEFAULT '';

CREATE TABLE conclusions (
  key TEXT PRIMARY KEY NOT NULL,
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  subject TEXT NOT NULL,                  -- equipment key, or empty
  place TEXT NOT NULL,                    -- place key, or empty
  wording TEXT NOT NULL,
  reasons TEXT NOT NULL,
  author TEXT NOT NULL,
  dated_written TEXT NOT NULL,
  dated TEXT,
  dated_calendar TEXT NOT NULL CHECK (dated_calendar IN ('gregorian', 'julian')),
  evidence TEXT NOT NULL CHECK (evidence GLOB '[[]*]'),  -- known then: keys, and ids of claims
  published TEXT NOT NULL,
  replaces TEXT NOT NULL CHECK (replaces GLOB '[[]*]'),  -- keys of conclusions
  notes TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal
) STRICT;

CREATE TABLE enquiries (
  key TEXT PRIMARY KEY NOT NULL,
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  question TEXT NOT NULL,
  answer TEXT NOT NULL,                   -- as sent
  sent_to TEXT NOT NULL,
  author TEXT NOT NULL,
  dated_written TEXT NOT NULL,
  dated TEXT,
  dated_calendar TEXT NOT NULL CHECK (dated_calendar IN ('gregorian', 'julian')),
  conclusions TEXT NOT NULL CHECK (conclusions GLOB '[[]*]'),
  notes TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal
) STRICT;

-- A look into a source. Silence means something only where one has looked.
CREATE TABLE searches (
  key TEXT PRIMARY KEY NOT NULL,
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  source TEXT NOT NULL REFERENCES sources (key),
  subject TEXT NOT NULL,
  place TEXT NOT NULL,
  looked_through_written TEXT NOT NULL,   -- the time looked through; undated: all of the source
  looked_through TEXT,
  looked_through_calendar TEXT NOT NULL CHECK (looked_through_calendar IN ('gregorian', 'julian')),
  found TEXT NOT NULL CHECK (found IN ('nothing', 'something')),
  author TEXT NOT NULL,
  dated_written TEXT NOT NULL,
  dated TEXT,
  dated_calendar TEXT NOT NULL CHECK (dated_calendar IN ('gregorian', 'julian')),
  notes TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal
) STRICT;
