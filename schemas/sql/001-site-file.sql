-- A site file: everything known of one historic site. SQLite; application_id 0x776d7366 ('wmsf').
--
-- Conventions
--   Keys        are the stable text ids of the spreadsheets. Ids are random 128-bit values made once.
--   Positions   "first" and "past" count code points in one version of a reading text, from 0, past not included.
--   Times       are milliseconds from the start of a recording.
--   Days        are counted from 1970-01-01 in the proleptic Gregorian calendar; negative before.
--   Dates       come in threes: as written, in EDTF (ISO 8601-2, always Gregorian), and the calendar of what is written.
--   Lists       of texts are JSON arrays.
--   Missing     is the empty text where a text may be missing, NULL for everything else.
--   since       is the journal event that brought the row in. Later changes are events of their own.

CREATE TABLE site (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  id BLOB NOT NULL CHECK (length(id) = 16),
  name TEXT NOT NULL,
  created TEXT NOT NULL,                  -- as text for people
  policy TEXT NOT NULL,                   -- name of the date policy
  evidence_event INTEGER NOT NULL         -- last event that changed what claims are weighed against
) STRICT;

-- The decision journal. Rows are only ever added. What an event is about and that it happened stays for good; its
-- content stands apart, so that it can be erased with an interview that was withdrawn.

CREATE TABLE sessions (
  session INTEGER PRIMARY KEY,
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  actor TEXT NOT NULL
) STRICT;

CREATE TABLE journal (
  event INTEGER PRIMARY KEY,              -- order of arrival in this file; means nothing in another
  session INTEGER NOT NULL REFERENCES sessions,
  counter INTEGER NOT NULL CHECK (counter >= 1),
  wall_time TEXT NOT NULL,                -- for people; never used for order
  kind TEXT NOT NULL,
  target_kind TEXT NOT NULL,
  target TEXT NOT NULL,                   -- a key, or an id in hexadecimal
  interview TEXT NOT NULL,                -- key of the interview the content is about, else empty
  content_sha256 BLOB NOT NULL CHECK (length(content_sha256) = 32),
  sha256 BLOB NOT NULL CHECK (length(sha256) = 32),  -- of all of the above but event, and of the events it follows
  UNIQUE (session, counter)
) STRICT;
CREATE INDEX journal_by_target ON journal (target_kind, target);

CREATE TABLE journal_follows (
  event INTEGER NOT NULL REFERENCES journal,
  follows INTEGER NOT NULL REFERENCES journal CHECK (follows < event),
  PRIMARY KEY (event, follows)
) STRICT, WITHOUT ROWID;
CREATE INDEX journal_followed ON journal_follows (follows);

-- Events that no other follows: what the next one will follow.
CREATE TABLE journal_heads (event INTEGER PRIMARY KEY REFERENCES journal) STRICT;

CREATE TABLE journal_content (
  event INTEGER PRIMARY KEY REFERENCES journal,
  before_json TEXT NOT NULL,
  after_json TEXT NOT NULL,
  why TEXT NOT NULL
) STRICT;

-- What was erased for good, and when. The one exception to "nothing is lost".
CREATE TABLE erasures (
  kind TEXT NOT NULL CHECK (kind IN ('interview', 'person')),
  key TEXT NOT NULL,
  erased TEXT NOT NULL,
  event INTEGER NOT NULL REFERENCES journal,
  PRIMARY KEY (kind, key)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER sessions_stay_as_they_are BEFORE UPDATE ON sessions
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER sessions_stay BEFORE DELETE ON sessions
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER sessions_are_new BEFORE INSERT ON sessions
WHEN EXISTS (SELECT 1 FROM sessions WHERE session = NEW.session OR id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER journal_stays_as_it_is BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER journal_stays BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER journal_is_new BEFORE INSERT ON journal
WHEN EXISTS (SELECT 1 FROM journal WHERE event = NEW.event)
  OR EXISTS (SELECT 1 FROM journal WHERE session = NEW.session AND counter = NEW.counter)
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER journal_follows_stays_as_it_is BEFORE UPDATE ON journal_follows
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER journal_follows_stays BEFORE DELETE ON journal_follows
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER journal_content_stays_as_it_is BEFORE UPDATE ON journal_content
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER journal_content_is_new BEFORE INSERT ON journal_content
WHEN EXISTS (SELECT 1 FROM journal_content WHERE event = NEW.event)
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER journal_content_goes_only_with_an_erasure BEFORE DELETE ON journal_content
WHEN NOT EXISTS (
  SELECT 1 FROM journal JOIN erasures
    ON (erasures.kind = 'interview' AND erasures.key = journal.interview)
    OR (erasures.kind = journal.target_kind AND erasures.key = journal.target)
  WHERE journal.event = OLD.event)
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER erasures_stay_as_they_are BEFORE UPDATE ON erasures
BEGIN SELECT RAISE(ABORT, 'an erasure stays on record'); END;
CREATE TRIGGER erasures_stay BEFORE DELETE ON erasures
BEGIN SELECT RAISE(ABORT, 'an erasure stays on record'); END;

-- People and interviews.

CREATE TABLE persons (
  key TEXT PRIMARY KEY NOT NULL,
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  name TEXT NOT NULL,
  pseudonym TEXT NOT NULL,
  birth_written TEXT NOT NULL,
  birth TEXT,
  birth_calendar TEXT NOT NULL CHECK (birth_calendar IN ('gregorian', 'julian')),
  death_written TEXT NOT NULL,
  death TEXT,
  death_calendar TEXT NOT NULL CHECK (death_calendar IN ('gregorian', 'julian')),
  notes TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal
) STRICT;

CREATE TABLE service_periods (
  person TEXT NOT NULL REFERENCES persons (key),
  n INTEGER NOT NULL,
  dated_written TEXT NOT NULL,
  dated TEXT,
  dated_calendar TEXT NOT NULL CHECK (dated_calendar IN ('gregorian', 'julian')),
  role TEXT NOT NULL,
  notes TEXT NOT NULL,
  PRIMARY KEY (person, n)
) STRICT, WITHOUT ROWID;

CREATE TABLE interviews (
  key TEXT PRIMARY KEY NOT NULL,
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  dated_written TEXT NOT NULL,
  dated TEXT,
  dated_calendar TEXT NOT NULL CHECK (dated_calendar IN ('gregorian', 'julian')),
  place TEXT NOT NULL,
  session INTEGER NOT NULL,
  accession TEXT NOT NULL,
  repository TEXT NOT NULL,
  recording TEXT NOT NULL,
  recording_length INTEGER,
  standing TEXT NOT NULL CHECK (standing IN ('draft', 'audited', 'narrator-reviewed')),
  access TEXT NOT NULL CHECK (access IN ('open', 'restricted', 'closed')),
  closed_until TEXT,
  closed_until_event TEXT NOT NULL,
  shown_beforehand TEXT NOT NULL CHECK (shown_beforehand GLOB '[[]*]'),
  transcript_path TEXT NOT NULL,
  transcript_format TEXT NOT NULL,
  notes TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal
) STRICT;

CREATE TABLE interview_people (
  interview TEXT NOT NULL REFERENCES interviews (key),
  role TEXT NOT NULL CHECK (role IN ('narrator', 'interviewer')),
  n INTEGER NOT NULL,
  person TEXT NOT NULL REFERENCES persons (key),
  PRIMARY KEY (interview, role, n)
) STRICT, WITHOUT ROWID;
CREATE INDEX interviews_of_person ON interview_people (person);

-- What a label in a transcript stands for.
CREATE TABLE speakers (
  interview TEXT NOT NULL REFERENCES interviews (key),
  label TEXT NOT NULL,
  person TEXT NOT NULL,                   -- key, or empty when not known
  role TEXT NOT NULL CHECK (role IN ('narrator', 'interviewer', 'other', 'unknown')),
  since INTEGER NOT NULL REFERENCES journal,
  PRIMARY KEY (interview, label)
) STRICT, WITHOUT ROWID;

-- Per narrator and session.
CREATE TABLE releases (
  interview TEXT NOT NULL REFERENCES interviews (key),
  person TEXT NOT NULL REFERENCES persons (key),
  release TEXT NOT NULL CHECK (release IN ('none', 'signed', 'withdrawn')),
  uses TEXT NOT NULL,
  naming TEXT NOT NULL CHECK (naming IN ('name', 'pseudonym')),
  rights_holder TEXT NOT NULL,
  closed_until TEXT,
  closed_until_event TEXT NOT NULL,
  notes TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal,
  PRIMARY KEY (interview, person)
) STRICT, WITHOUT ROWID;

-- Transcripts. The original is kept byte for byte; positions count in a version of the reading text made from it.

CREATE TABLE originals (
  original INTEGER PRIMARY KEY,
  interview TEXT NOT NULL REFERENCES interviews (key),
  name TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  bytes BLOB NOT NULL
) STRICT;
CREATE INDEX originals_of_interview ON originals (interview, sha256);

CREATE TABLE readings (
  reading INTEGER PRIMARY KEY,
  interview TEXT NOT NULL REFERENCES interviews (key),
  version INTEGER NOT NULL CHECK (version >= 1),  -- the highest is the current one
  original INTEGER NOT NULL REFERENCES originals,
  reader TEXT NOT NULL,
  encoding_remark TEXT NOT NULL,
  code_points INTEGER NOT NULL,
  parts_sha256 TEXT NOT NULL,             -- of its turns, sentences, time marks and remarks
  sha256 TEXT NOT NULL,                   -- of the text
  text TEXT NOT NULL,
  UNIQUE (interview, version)
) STRICT;

CREATE TABLE utterances (
  reading INTEGER NOT NULL REFERENCES readings,
  n INTEGER NOT NULL CHECK (n BETWEEN 0 AND 1048575),
  speaker TEXT NOT NULL,                  -- label as written
  first INTEGER NOT NULL,
  past INTEGER NOT NULL,
  time_begin INTEGER,
  time_end INTEGER,
  timing TEXT NOT NULL CHECK (timing IN ('none', 'stated', 'interpolated')),
  PRIMARY KEY (reading, n)
) STRICT, WITHOUT ROWID;

-- Folded for searching (Unicode NFKC_Casefold, plain apostrophes and dashes); the current version only.
CREATE TABLE utterance_words (
  turn INTEGER PRIMARY KEY,               -- 1048576 * reading + n
  words TEXT NOT NULL
) STRICT;

CREATE TABLE sentences (
  reading INTEGER NOT NULL REFERENCES readings,
  n INTEGER NOT NULL,
  utterance_n INTEGER NOT NULL,
  first INTEGER NOT NULL,
  past INTEGER NOT NULL,
  time_begin INTEGER,
  time_end INTEGER,
  timing TEXT NOT NULL CHECK (timing IN ('none', 'stated', 'interpolated')),
  PRIMARY KEY (reading, n)
) STRICT, WITHOUT ROWID;

CREATE TABLE time_marks (
  reading INTEGER NOT NULL REFERENCES readings,
  n INTEGER NOT NULL,
  at INTEGER NOT NULL,
  time INTEGER NOT NULL,
  PRIMARY KEY (reading, n)
) STRICT, WITHOUT ROWID;

-- The transcriber's own words within the text: [laughs], (pause), [sic: 1958].
CREATE TABLE remarks (
  reading INTEGER NOT NULL REFERENCES readings,
  n INTEGER NOT NULL,
  first INTEGER NOT NULL,
  past INTEGER NOT NULL,
  PRIMARY KEY (reading, n)
) STRICT, WITHOUT ROWID;

-- Passages under conditions of their own. Without a place in the current text they stand for all of it.
CREATE TABLE passages (
  interview TEXT NOT NULL REFERENCES interviews (key),
  quote TEXT NOT NULL,
  access TEXT NOT NULL CHECK (access IN ('open', 'restricted', 'closed')),
  closed_until TEXT,
  closed_until_event TEXT NOT NULL,
  reason TEXT NOT NULL,
  reading INTEGER REFERENCES readings,
  first INTEGER,
  past INTEGER,
  since INTEGER NOT NULL REFERENCES journal,
  PRIMARY KEY (interview, quote)
) STRICT, WITHOUT ROWID;

-- The authority lists.

CREATE TABLE terms (
  term INTEGER PRIMARY KEY,               -- also the order of the list
  list TEXT NOT NULL CHECK (list IN ('places', 'equipment')),
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  key TEXT NOT NULL,
  name TEXT NOT NULL,
  broader TEXT NOT NULL,
  number TEXT NOT NULL,
  scheme TEXT NOT NULL CHECK (scheme IN ('none', 'since-1949', 'before-1949', 'local')),
  former_names TEXT NOT NULL CHECK (former_names GLOB '[[]*]'),
  spoken TEXT NOT NULL CHECK (spoken GLOB '[[]*]'),
  place TEXT NOT NULL,
  notes TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal,
  UNIQUE (list, key)
) STRICT;

-- The dated evidence.

CREATE TABLE sources (
  key TEXT PRIMARY KEY NOT NULL,
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  kind TEXT NOT NULL CHECK (kind IN ('physical-trace', 'photograph', 'drawing', 'order', 'log', 'correspondence',
                                     'publication', 'testimony', 'object-record')),
  title TEXT NOT NULL,
  creator TEXT NOT NULL,
  dated_written TEXT NOT NULL,
  dated TEXT,
  dated_calendar TEXT NOT NULL CHECK (dated_calendar IN ('gregorian', 'julian')),
  repository TEXT NOT NULL,
  reference TEXT NOT NULL,
  interview TEXT NOT NULL,
  notes TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal
) STRICT;

CREATE TABLE derivations (
  source TEXT NOT NULL REFERENCES sources (key),
  derives_from TEXT NOT NULL,             -- key of a source or an interview
  how TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal,
  PRIMARY KEY (source, derives_from)
) STRICT, WITHOUT ROWID;

CREATE TABLE entries (
  key TEXT PRIMARY KEY NOT NULL,
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  source TEXT NOT NULL REFERENCES sources (key),
  locator TEXT NOT NULL,
  statement TEXT NOT NULL CHECK (statement IN ('begins', 'ends', 'present', 'absent', 'count', 'attribute', 'happened',
                                               'located')),
  subject TEXT NOT NULL,                  -- equipment key; for located empty for the site, or a person's key
  place TEXT NOT NULL,                    -- place key; for located a location in words
  dated_written TEXT NOT NULL,
  dated TEXT,
  dated_calendar TEXT NOT NULL CHECK (dated_calendar IN ('gregorian', 'julian')),
  reading TEXT NOT NULL CHECK (reading IN ('throughout', 'within')),
  nature TEXT NOT NULL CHECK (nature IN ('done', 'intended')),
  number INTEGER,
  attribute TEXT NOT NULL,
  spot_visible TEXT NOT NULL CHECK (spot_visible IN ('not-stated', 'yes', 'no', 'partly')),
  identification TEXT NOT NULL CHECK (identification IN ('certain', 'probable', 'possible')),
  identification_rests_on TEXT NOT NULL CHECK (identification_rests_on GLOB '[[]*]'),
  date_rests_on TEXT NOT NULL CHECK (date_rests_on GLOB '[[]*]'),
  caption_rests_on TEXT NOT NULL CHECK (caption_rests_on GLOB '[[]*]'),
  lies_over TEXT NOT NULL CHECK (lies_over GLOB '[[]*]'),
  observation TEXT NOT NULL,
  interpretation TEXT NOT NULL,
  observer TEXT NOT NULL,
  fabric TEXT NOT NULL CHECK (fabric IN ('unknown', 'original', 'restored')),
  notes TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal
) STRICT;
CREATE INDEX entries_by_source ON entries (source);

CREATE TABLE stays (
  key TEXT PRIMARY KEY NOT NULL,
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  source TEXT NOT NULL REFERENCES sources (key),
  party TEXT NOT NULL,                    -- empty for the site, or a person's key
  locations TEXT NOT NULL CHECK (locations GLOB '[[]*]'),
  dated_written TEXT NOT NULL,
  dated TEXT,
  dated_calendar TEXT NOT NULL CHECK (dated_calendar IN ('gregorian', 'julian')),
  notes TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal
) STRICT;

CREATE TABLE named_events (
  key TEXT PRIMARY KEY NOT NULL,
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  name TEXT NOT NULL,
  spoken TEXT NOT NULL CHECK (spoken GLOB '[[]*]'),
  dated_written TEXT NOT NULL,
  dated TEXT,
  dated_calendar TEXT NOT NULL CHECK (dated_calendar IN ('gregorian', 'julian')),
  source TEXT NOT NULL,
  notes TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal
) STRICT;

-- Claims. The values are those in force. Where a coder has decided, "proposal" keeps what the program last proposed.

CREATE TABLE claims (
  claim INTEGER PRIMARY KEY,
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  interview TEXT NOT NULL REFERENCES interviews (key),
  speaker TEXT NOT NULL,
  knower TEXT NOT NULL,
  statement TEXT NOT NULL CHECK (statement IN ('begins', 'ends', 'present', 'absent', 'count', 'attribute', 'happened',
                                               'located')),
  subject TEXT NOT NULL,
  subject_words TEXT NOT NULL,
  place TEXT NOT NULL,
  place_words TEXT NOT NULL,
  dated_written TEXT NOT NULL,
  dated TEXT,
  dated_calendar TEXT NOT NULL CHECK (dated_calendar IN ('gregorian', 'julian')),
  reading TEXT NOT NULL CHECK (reading IN ('throughout', 'within')),
  -- The period it was read to: each end lies between two boundaries of days (CIDOC CRM P81, P82).
  period_begin_kind TEXT CHECK (period_begin_kind IN ('known', 'unknown', 'open')),
  period_begin_earliest INTEGER,
  period_begin_latest INTEGER,
  period_end_kind TEXT CHECK (period_end_kind IN ('known', 'unknown', 'open')),
  period_end_earliest INTEGER,
  period_end_latest INTEGER,
  rule TEXT NOT NULL,
  anchor TEXT NOT NULL,
  date_carried INTEGER NOT NULL,
  alternatives TEXT NOT NULL CHECK (alternatives GLOB '[[]*]'),
  quantity_least INTEGER,
  quantity_most INTEGER,
  quantity_written TEXT,
  attribute TEXT NOT NULL,
  basis TEXT NOT NULL CHECK (basis IN ('unstated', 'first-hand', 'told', 'read', 'inferred')),
  firmness TEXT NOT NULL CHECK (firmness IN ('firm', 'hedged', 'guess')),
  polarity TEXT NOT NULL CHECK (polarity IN ('affirmed', 'denied')),
  led INTEGER NOT NULL,
  subject_carried INTEGER NOT NULL,
  place_carried INTEGER NOT NULL,
  withdrawn INTEGER NOT NULL,             -- the narrator corrected it in the same breath
  reason TEXT NOT NULL,
  review_rank INTEGER NOT NULL,
  ordinal INTEGER NOT NULL,
  status TEXT NOT NULL CHECK (status IN ('proposed', 'said-so', 'misread', 'set-aside')),
  -- How it stands in the site file.
  reading_version INTEGER NOT NULL,       -- of the reading text its quotes lie in
  first INTEGER NOT NULL,                 -- the main quote
  past INTEGER NOT NULL,
  by_coder INTEGER NOT NULL,
  decided INTEGER NOT NULL,
  gone INTEGER NOT NULL,
  lost INTEGER NOT NULL,
  proposed_otherwise INTEGER NOT NULL,
  proposal TEXT CHECK (proposal GLOB '{*}'),
  FOREIGN KEY (interview, reading_version) REFERENCES readings (interview, version)
) STRICT;
CREATE INDEX claims_by_position ON claims (interview, first);
CREATE INDEX claims_by_subject ON claims (subject);
CREATE INDEX claims_by_place ON claims (place);

-- Quotes after the main one.
CREATE TABLE claim_quotes (
  claim INTEGER NOT NULL REFERENCES claims ON DELETE CASCADE,
  n INTEGER NOT NULL CHECK (n >= 1),
  first INTEGER NOT NULL,
  past INTEGER NOT NULL,
  PRIMARY KEY (claim, n)
) STRICT, WITHOUT ROWID;

-- The spans it was read from.
CREATE TABLE claim_mentions (
  claim INTEGER NOT NULL REFERENCES claims ON DELETE CASCADE,
  n INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('date', 'place', 'equipment', 'quantity', 'action', 'cue')),
  first INTEGER NOT NULL,
  past INTEGER NOT NULL,
  value TEXT NOT NULL,
  rule TEXT NOT NULL,
  near_match INTEGER NOT NULL,
  PRIMARY KEY (claim, n)
) STRICT, WITHOUT ROWID;

-- What weighing makes. All of it can be made again; the explanations are made when read.

-- Facts about the telling; in whole years.
CREATE TABLE recall (
  claim INTEGER PRIMARY KEY REFERENCES claims ON DELETE CASCADE,
  age_at_interview_least INTEGER,
  age_at_interview_most INTEGER,
  age_at_event_least INTEGER,
  age_at_event_most INTEGER,
  recall_distance_least INTEGER,
  recall_distance_most INTEGER,
  in_service TEXT NOT NULL CHECK (in_service IN ('yes', 'no', 'cannot-tell')),
  partly_in_service INTEGER NOT NULL,
  evidence_event INTEGER NOT NULL         -- site.evidence_event when it was weighed
) STRICT;

-- Numbers for keys of entries and stays, 0 for the silence of the evidence.
CREATE TABLE evidence_numbers (
  number INTEGER PRIMARY KEY,
  key TEXT NOT NULL UNIQUE
) STRICT;
INSERT INTO evidence_numbers (number, key) VALUES (0, '');

CREATE TABLE comparisons (
  claim INTEGER NOT NULL REFERENCES claims ON DELETE CASCADE,
  n INTEGER NOT NULL,
  evidence INTEGER NOT NULL REFERENCES evidence_numbers,
  outcome INTEGER NOT NULL CHECK (outcome BETWEEN 0 AND 4),  -- 0 agrees, 1 compatible, 2 conflicts, 3 cannot tell, 4 silent
  flags INTEGER NOT NULL CHECK (flags BETWEEN 0 AND 3),      -- 1 an intention, 2 circular
  relation INTEGER NOT NULL CHECK (relation BETWEEN 0 AND 8191),  -- possible relations of Allen 1983: bits p m o F D s e S d f O M P
  gap_least INTEGER,                      -- days, for conflicts
  gap_most INTEGER,
  PRIMARY KEY (claim, n)
) STRICT, WITHOUT ROWID;
CREATE INDEX comparisons_by_evidence ON comparisons (evidence, claim);
