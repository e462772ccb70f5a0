-- What weighing makes, kept so that a site file of a hundred thousand claims stays small. All of it can be made again;
-- the explanations are made when read. What older versions kept is weighed anew.

DROP TABLE comparisons;
DROP TABLE recall;

-- Facts about the telling, in whole years, and how the claim stands against the evidence.
CREATE TABLE weighings (
  claim INTEGER PRIMARY KEY REFERENCES claims ON DELETE CASCADE,
  age_at_interview_least INTEGER,
  age_at_interview_most INTEGER,
  age_at_event_least INTEGER,
  age_at_event_most INTEGER,
  recall_distance_least INTEGER,
  recall_distance_most INTEGER,
  in_service TEXT NOT NULL CHECK (in_service IN ('yes', 'no', 'cannot-tell')),
  partly_in_service INTEGER NOT NULL,
  foremost INTEGER NOT NULL CHECK (foremost BETWEEN 0 AND 4),  -- 0 agrees, 1 compatible, 2 conflicts, 3 cannot tell, 4 silent
  -- How many comparisons came out so.
  agrees INTEGER NOT NULL,
  compatible INTEGER NOT NULL,
  conflicts INTEGER NOT NULL,
  cannot_tell INTEGER NOT NULL,
  silent INTEGER NOT NULL,
  intentions INTEGER NOT NULL             -- how many are with an intention
) STRICT;

-- All comparisons of a claim, one after another. Each: the number of its evidence less that of the one before it, zigzag;
-- outcome + 8 an intention + 16 circular + 32 has a least gap + 64 has a most gap + 128 * relation (possible relations of
-- Allen 1983: bits p m o F D s e S d f O M P); the least gap in days, zigzag; the most less the least, zigzag. Numbers are
-- in groups of seven bits, the lowest first, with the high bit where another follows.
CREATE TABLE comparisons (
  claim INTEGER PRIMARY KEY REFERENCES claims ON DELETE CASCADE,
  packed BLOB NOT NULL
) STRICT;

-- What the weighings rest on, as hashes: when one is another, the claims it bears on are weighed anew.
CREATE TABLE grounds (
  kind TEXT NOT NULL CHECK (kind IN ('rules', 'subject', 'itinerary', 'place', 'interview', 'person')),
  key TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  PRIMARY KEY (kind, key)
) STRICT, WITHOUT ROWID;
-- site.evidence_event when they were last looked at.
ALTER TABLE site ADD COLUMN grounds_event INTEGER NOT NULL DEFAULT -1;
