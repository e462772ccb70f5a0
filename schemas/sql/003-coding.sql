-- Coding: acts of several events, undoing, what coders write beside the claims, and copies brought together.

-- The act an event is part of: the number, in its session, of the act's first event; 0 for that one itself.
ALTER TABLE journal ADD COLUMN act INTEGER NOT NULL DEFAULT 0 CHECK (act >= 0 AND act < counter);
-- Of an event that undoes or redoes: the first event of the act it is about, as "session:counter".
ALTER TABLE journal ADD COLUMN reverses TEXT NOT NULL DEFAULT '';
-- Decided while proposals were hidden.
ALTER TABLE journal ADD COLUMN blind INTEGER NOT NULL DEFAULT 0 CHECK (blind IN (0, 1));
-- Came from another copy: it tells what was done there. What it changed here is in events of this file.
ALTER TABLE journal ADD COLUMN imported INTEGER NOT NULL DEFAULT 0 CHECK (imported IN (0, 1));
CREATE INDEX journal_reversing ON journal (reverses) WHERE reverses <> '';
CREATE INDEX journal_of_interview ON journal (interview);

CREATE TABLE notes (
  id BLOB PRIMARY KEY NOT NULL CHECK (length(id) = 16),
  interview TEXT NOT NULL REFERENCES interviews (key),
  claim BLOB NOT NULL CHECK (length(claim) = 16),  -- all zero when it is about no claim
  version INTEGER NOT NULL,               -- of the reading text its passage lies in; 0 when it is about none
  first INTEGER NOT NULL,
  past INTEGER NOT NULL,
  text TEXT NOT NULL,
  author TEXT NOT NULL,
  written TEXT NOT NULL                   -- when, as text for people
) STRICT, WITHOUT ROWID;
CREATE INDEX notes_of_interview ON notes (interview, first);
CREATE INDEX notes_of_claim ON notes (claim);

-- What a coder says of a claim and an entry of the evidence: that it speaks to the claim, or that it does not.
CREATE TABLE entry_links (
  claim BLOB NOT NULL CHECK (length(claim) = 16),
  entry TEXT NOT NULL,
  interview TEXT NOT NULL REFERENCES interviews (key),
  verdict TEXT NOT NULL CHECK (verdict IN ('linked', 'ruled-out')),
  why TEXT NOT NULL,
  author TEXT NOT NULL,
  PRIMARY KEY (claim, entry)
) STRICT, WITHOUT ROWID;
CREATE INDEX entry_links_by_entry ON entry_links (entry);
CREATE INDEX entry_links_of_interview ON entry_links (interview);

-- A quote compared with the recording.
CREATE TABLE quote_checks (
  claim BLOB NOT NULL CHECK (length(claim) = 16),
  coder TEXT NOT NULL,
  interview TEXT NOT NULL REFERENCES interviews (key),
  checked TEXT NOT NULL,                  -- when, as text for people
  result TEXT NOT NULL,
  PRIMARY KEY (claim, coder)
) STRICT, WITHOUT ROWID;
CREATE INDEX quote_checks_of_interview ON quote_checks (interview);

-- What of a version of a reading text a coder has read.
CREATE TABLE passages_read (
  interview TEXT NOT NULL REFERENCES interviews (key),
  coder TEXT NOT NULL,
  version INTEGER NOT NULL,
  ranges TEXT NOT NULL CHECK (ranges GLOB '[[]*]'),  -- [first, past] in order, without overlap
  PRIMARY KEY (interview, coder, version)
) STRICT, WITHOUT ROWID;

-- Where a claim came from, or went, when coders split and merged.
CREATE TABLE claim_origins (
  claim BLOB NOT NULL CHECK (length(claim) = 16),
  relation TEXT NOT NULL CHECK (relation IN ('absorbed-into', 'split-from')),
  other BLOB NOT NULL CHECK (length(other) = 16),
  interview TEXT NOT NULL REFERENCES interviews (key),
  PRIMARY KEY (claim, relation)
) STRICT, WITHOUT ROWID;
CREATE INDEX claim_origins_by_other ON claim_origins (other);
CREATE INDEX claim_origins_of_interview ON claim_origins (interview);

-- Targets on which this copy and another had both decided when they were brought together.
CREATE TABLE double_decisions (
  event INTEGER PRIMARY KEY REFERENCES journal,  -- that noted it
  target_kind TEXT NOT NULL,
  target TEXT NOT NULL,
  interview TEXT NOT NULL,
  alike INTEGER NOT NULL CHECK (alike IN (0, 1)),
  row_json TEXT NOT NULL CHECK (row_json GLOB '{*}'),  -- both versions: who, when, why, and what is then so
  settled INTEGER REFERENCES journal      -- the event that settled it; NULL while a person has to
) STRICT;
CREATE INDEX double_decisions_by_target ON double_decisions (target_kind, target);
CREATE INDEX double_decisions_of_interview ON double_decisions (interview);

-- Where each coder stood. Not in the journal.
CREATE TABLE workplaces (
  coder TEXT PRIMARY KEY NOT NULL,
  json TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Pages of claims in review order.
CREATE INDEX claims_in_review_order ON claims (review_rank, interview, first, claim, status, statement, speaker,
  subject, place);
CREATE INDEX claims_of_interview_in_review_order ON claims (interview, review_rank, first, claim);
CREATE INDEX claims_by_status ON claims (status, review_rank, interview, first, claim);
CREATE INDEX claims_by_speaker ON claims (speaker, review_rank, interview, first, claim);
CREATE INDEX claims_counted ON claims (interview, status, statement);
DROP INDEX claims_by_subject;
DROP INDEX claims_by_place;
CREATE INDEX claims_by_subject ON claims (subject, review_rank, interview, first, claim);
CREATE INDEX claims_by_place ON claims (place, review_rank, interview, first, claim);
