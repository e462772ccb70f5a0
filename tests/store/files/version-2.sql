PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE site (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  id BLOB NOT NULL CHECK (length(id) = 16),
  name TEXT NOT NULL,
  created TEXT NOT NULL,                  -- as text for people
  policy TEXT NOT NULL,                   -- name of the date policy
  evidence_event INTEGER NOT NULL         -- last event that changed what claims are weighed against
) STRICT;
INSERT INTO site VALUES(1,X'c15c0289ec2d0a9167ec8e65a18debbe','Tender Guillemot','2031','built-in',8);
CREATE TABLE sessions (
  session INTEGER PRIMARY KEY,
  id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  actor TEXT NOT NULL
) STRICT;
INSERT INTO sessions VALUES(1,X'5e5532fbeea293f80bc942ee9086c171','A. Coder');
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
INSERT INTO journal VALUES(1,1,1,'2031-05-04T10:00:00Z','created','site','c15c0289ec2d0a9167ec8e65a18debbe','',X'2f461344fa90f44453c0bd67425df7ef036e590b2be119f89c4b83004e1e38eb',X'5211bd4aa54159c4f82691ebf09314c6b9d1a90775ed7e21896736f0e9e18556');
INSERT INTO journal VALUES(2,1,2,'2031-05-04T10:00:00Z','taken-in','person','aske','',X'3c6667964e9f347d02ff6d9fbba84c5d19e28cd01d0a0027e7c06ec87ada9911',X'52d4ae1882c8af5b87a8bfcca4a9e38c88276d5927e02e058817a3a7a5c3fcce');
INSERT INTO journal VALUES(3,1,3,'2031-05-04T10:00:00Z','taken-in','person','brandt','',X'7164c7ba16b4e6f3ed0acd378168f58c422f6c0b5384f4c7bebbda82da412183',X'd8fa3b2e40076b506f74d6efa089a052911d673779ee70377ad99dc318e7956b');
INSERT INTO journal VALUES(4,1,4,'2031-05-04T10:00:00Z','taken-in','interview','aske-1','aske-1',X'502293c255c242ba58bf3e59f7e18b6d4ffd087ed36c9ea06d28d2d01ebecf2b',X'f1473aeb408a350449e2da1e84a027ea0813a25c5704ecaa86a34ed08d2526d4');
INSERT INTO journal VALUES(5,1,5,'2031-05-04T10:00:00Z','taken-in','interview','aske-2','aske-2',X'0f53f519069b51bcd7845480a08dbca1cd024fa120e89b86611a34f2eecea5ec',X'ec3ab9c753b91ba0cdf512df49acdc75cd732746d0dfd35f3a62a87bf1d3432e');
INSERT INTO journal VALUES(6,1,6,'2031-05-04T10:00:00Z','transcript-read','interview','aske-1','aske-1',X'851ebe47519df64dedb18fe2b40dc749f8b35cb0889ed6de4985c0488e732389',X'e988de49649126f23d3cb241ca9e73a2bb3bf5cc9cbc309dae02fb53e49b7fc8');
INSERT INTO journal VALUES(7,1,7,'2031-05-04T10:00:00Z','taken-in','evidence','','',X'd2641813bc1a1ad80bdeee0307ddbb0cd8c96e1f09df85b1be32b6417d5f2eb1',X'33407d02a5ca536cd95c3863b8991d8b4571d12b523e181ff9a47dcfe0eac7fb');
INSERT INTO journal VALUES(8,1,8,'2031-05-04T10:00:00Z','taken-in','list','places','',X'895ce213867331c02912e9564d0cde858ab38a2505f63cbf845c0520361a0517',X'446891cbe5ce7227459b1fb64ab3f2a1534d9e682588d71c3b002e1e9d03ee12');
INSERT INTO journal VALUES(9,1,9,'2031-05-04T10:00:00Z','proposed','interview','aske-1','aske-1',X'ac3d40c576b1e498ca871ba34f6f2b669d8387c3982bce49b958d93fbf174086',X'699ef8b21f0a1ab135098a22a1a769cbb6a99aaae98970eac070251f9e5ec106');
INSERT INTO journal VALUES(10,1,10,'2031-05-04T10:00:00Z','decided','claim','27cd5b444516330b8a770919e8676cff','aske-1',X'bf2e8de978d31b20d2082ba75d979351aafed5d62d1e29580ed453bc62fdc338',X'a0b396dcd09cbc3030d3fd465a311b0ecb07ffea7777b3eae7d3dfb36ce5cf37');
INSERT INTO journal VALUES(11,1,11,'2031-05-04T10:00:00Z','added','claim','17fcf32e4e82d6400cfffe56222e9e87','aske-1',X'c9ed906893f9a654da47c3f34ad430a3792a2f5bf511977c9bcc9ce32c750ed7',X'080307c2e5dde0d19c23cf24c188d396f4203113c4f3241a0023f8ae5f786270');
CREATE TABLE journal_follows (
  event INTEGER NOT NULL REFERENCES journal,
  follows INTEGER NOT NULL REFERENCES journal CHECK (follows < event),
  PRIMARY KEY (event, follows)
) STRICT, WITHOUT ROWID;
INSERT INTO journal_follows VALUES(2,1);
INSERT INTO journal_follows VALUES(3,2);
INSERT INTO journal_follows VALUES(4,3);
INSERT INTO journal_follows VALUES(5,4);
INSERT INTO journal_follows VALUES(6,5);
INSERT INTO journal_follows VALUES(7,6);
INSERT INTO journal_follows VALUES(8,7);
INSERT INTO journal_follows VALUES(9,8);
INSERT INTO journal_follows VALUES(10,9);
INSERT INTO journal_follows VALUES(11,10);
CREATE TABLE journal_heads (event INTEGER PRIMARY KEY REFERENCES journal) STRICT;
INSERT INTO journal_heads VALUES(11);
CREATE TABLE journal_content (
  event INTEGER PRIMARY KEY REFERENCES journal,
  before_json TEXT NOT NULL,
  after_json TEXT NOT NULL,
  why TEXT NOT NULL
) STRICT;
INSERT INTO journal_content VALUES(1,'','{"name":"Tender Guillemot","created":"2031","policy":"built-in"}','');
INSERT INTO journal_content VALUES(2,'','{"person":1,"sha256":"f158dd5a6a569b8e63f16bf7e0675cf8cafb6dcb0d321429470d9dc6228a099e"}','');
INSERT INTO journal_content VALUES(3,'','{"person":1,"sha256":"ab5ee71b2a64a0233a885c70d4d2b2231e50b77e946f6b37ae8c0a1b290b248c"}','');
INSERT INTO journal_content VALUES(4,'','{"interview":1,"passage":1,"release":1,"speaker":2,"sha256":"e716fcab55ea3cb6dc88874e88908058c96b5e21f91e4545def8a740b5b0ca22"}','');
INSERT INTO journal_content VALUES(5,'','{"interview":1,"sha256":"c83aa2275c59135b0506417545bfbd618f25236cab547f03517d10492a835e67"}','');
INSERT INTO journal_content VALUES(6,'','{"version":1,"original_sha256":"65d6a13797b5d1a92e59171565f35c0d0b1eb631681e781a3ce06398042c064d","text_sha256":"842f152c39d44d83d15688ff4a46b9eeffa5cff1bd9eaf0893cc7e49d71d30bd","parts_sha256":"aa1b49f6c712305550e4eb7ebf8242197f2d3af6b688d7b3b7e1ef4adef20541"}','');
INSERT INTO journal_content VALUES(7,'','{"derivation":1,"entry":2,"named-event":1,"source":2,"stay":1,"sha256":"4dd319c6d6d4d9a1ea5a76bc9d09c1c1f18a76ca75260997ee87a8219404eb0d"}','');
INSERT INTO journal_content VALUES(8,'','{"term":2,"sha256":"702ff7f89504e86b7deef9aa1e6f6e7bf13982e2511cb3c9c7fa76f6661910eb"}','');
INSERT INTO journal_content VALUES(9,'','{"version":1,"added":3,"gone":0,"gone_kept":0,"changed":0,"unchanged":0,"proposals_sha256":"a4d8eff123c57e26732ac3b15e3caab22e4b7344921c596fbb8243e9e7b37aaf"}','');
INSERT INTO journal_content VALUES(10,'{"id":"27cd5b444516330b8a770919e8676cff","interview":"aske-1","speaker":"aske","knower":"the bosun","statement":"ends","subject":"crane","subject_words":"the crane","place":"foredeck","place_words":"on the foredeck","dated":{"written":"in sixty-two","edtf":"1962"},"reading":"within","period":[["known",-2922,-2922],["known",-2557,-2557]],"rule":"spoken-year","anchor":"the interview","date_carried":true,"alternatives":["1862","196X"],"quantity":{"least":1,"most":2,"written":"one or two"},"attribute":"colour: buff","basis":"told","firmness":"hedged","polarity":"denied","led":true,"subject_carried":true,"place_carried":true,"withdrawn":true,"quotes":[[0,16],[78,86]],"mentions":[{"kind":"equipment","first":11,"past":16,"value":"crane","rule":"list","near_match":true},{"kind":"cue","first":33,"past":38,"value":"until","rule":"cue"}],"reason":"ends: \"took it off\"","review_rank":3,"ordinal":0,"status":"proposed","version":1}','{"subject":"derrick","status":"said-so"}','heard');
INSERT INTO journal_content VALUES(11,'','{"id":"17fcf32e4e82d6400cfffe56222e9e87","interview":"aske-1","speaker":"aske","knower":"the bosun","statement":"happened","subject":"crane","subject_words":"the crane","place":"foredeck","place_words":"on the foredeck","dated":{"written":"in sixty-two","edtf":"1962"},"reading":"within","period":[["known",-2922,-2922],["known",-2557,-2557]],"rule":"spoken-year","anchor":"the interview","date_carried":true,"alternatives":["1862","196X"],"quantity":{"least":1,"most":2,"written":"one or two"},"attribute":"colour: buff","basis":"told","firmness":"hedged","polarity":"denied","led":true,"subject_carried":true,"place_carried":true,"withdrawn":true,"quotes":[[140,158],[78,86]],"mentions":[{"kind":"equipment","first":11,"past":16,"value":"crane","rule":"list","near_match":true},{"kind":"cue","first":33,"past":38,"value":"until","rule":"cue"}],"reason":"ends: \"took it off\"","review_rank":3,"ordinal":0,"status":"proposed","version":1}','mine');
CREATE TABLE erasures (
  kind TEXT NOT NULL CHECK (kind IN ('interview', 'person')),
  key TEXT NOT NULL,
  erased TEXT NOT NULL,
  event INTEGER NOT NULL REFERENCES journal,
  PRIMARY KEY (kind, key)
) STRICT, WITHOUT ROWID;
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
INSERT INTO persons VALUES('aske',X'b9b501d1d854bb7180021590ff0b4dc3','Marit Aske','','','1931','gregorian','',NULL,'gregorian','',2);
INSERT INTO persons VALUES('brandt',X'a53c36d76cec99e0758527120fbbe785','Ole Brandt','','',NULL,'gregorian','',NULL,'gregorian','',3);
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
INSERT INTO service_periods VALUES('aske',0,'','1952-03/1958','gregorian','deckhand','');
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
INSERT INTO interviews VALUES('aske-1',X'a83d7e35de181749966761748e5c43cb','','1998-05-04','gregorian','',1,'','','',3600000,'draft','open',NULL,'','["album"]','','','',4);
INSERT INTO interviews VALUES('aske-2',X'614f560177dc7567fe8bcf144dd4fc9a','','1998-05-04','gregorian','',2,'','','',NULL,'draft','closed','2040','until her death','["album"]','','','',5);
CREATE TABLE interview_people (
  interview TEXT NOT NULL REFERENCES interviews (key),
  role TEXT NOT NULL CHECK (role IN ('narrator', 'interviewer')),
  n INTEGER NOT NULL,
  person TEXT NOT NULL REFERENCES persons (key),
  PRIMARY KEY (interview, role, n)
) STRICT, WITHOUT ROWID;
INSERT INTO interview_people VALUES('aske-1','narrator',0,'aske');
INSERT INTO interview_people VALUES('aske-2','narrator',0,'aske');
INSERT INTO interview_people VALUES('aske-1','interviewer',0,'brandt');
INSERT INTO interview_people VALUES('aske-2','interviewer',0,'brandt');
CREATE TABLE speakers (
  interview TEXT NOT NULL REFERENCES interviews (key),
  label TEXT NOT NULL,
  person TEXT NOT NULL,                   -- key, or empty when not known
  role TEXT NOT NULL CHECK (role IN ('narrator', 'interviewer', 'other', 'unknown')),
  since INTEGER NOT NULL REFERENCES journal,
  PRIMARY KEY (interview, label)
) STRICT, WITHOUT ROWID;
INSERT INTO speakers VALUES('aske-1','AT','aske','narrator',4);
INSERT INTO speakers VALUES('aske-1','OB','brandt','interviewer',4);
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
INSERT INTO releases VALUES('aske-1','aske','signed','research','pseudonym','','2035','','',4);
CREATE TABLE originals (
  original INTEGER PRIMARY KEY,
  interview TEXT NOT NULL REFERENCES interviews (key),
  name TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  bytes BLOB NOT NULL
) STRICT;
INSERT INTO originals VALUES(1,'aske-1','aske-1.txt','65d6a13797b5d1a92e59171565f35c0d0b1eb631681e781a3ce06398042c064d',X'efbbbf57652068616420746865206372616e65206f6e2074686520666f72656465636b20756e74696c20746865207961726420746f6f6b206974206f666620696e2073697874792d74776f2e0a416e6420746865206c616d703f0a546865206c616d70207761732062726173732e204f6e636520746865206d61746520776173206472756e6b2c20616e642069742077656e74206f7665722074686520736964652e0a576173207468617420617420436166c3a920536b6167656ee280997320717561793f0a');
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
INSERT INTO readings VALUES(1,'aske-1',1,1,'text','UTF-8',192,'aa1b49f6c712305550e4eb7ebf8242197f2d3af6b688d7b3b7e1ef4adef20541','842f152c39d44d83d15688ff4a46b9eeffa5cff1bd9eaf0893cc7e49d71d30bd',replace('We had the crane on the foredeck until the yard took it off in sixty-two.\nAnd the lamp?\nThe lamp was brass. Once the mate was drunk, and it went over the side.\nWas that at Café Skagen’s quay?\n','\n',char(10)));
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
INSERT INTO utterances VALUES(1,0,'AT',0,73,0,10000,'stated');
INSERT INTO utterances VALUES(1,1,'OB',74,87,10000,20000,'stated');
INSERT INTO utterances VALUES(1,2,'AT',88,159,20000,30000,'stated');
INSERT INTO utterances VALUES(1,3,'OB',160,191,30000,40000,'stated');
CREATE TABLE utterance_words (
  turn INTEGER PRIMARY KEY,               -- 1048576 * reading + n
  words TEXT NOT NULL
) STRICT;
INSERT INTO utterance_words VALUES(1048576,'we had the crane on the foredeck until the yard took it off in sixty-two.');
INSERT INTO utterance_words VALUES(1048577,'and the lamp?');
INSERT INTO utterance_words VALUES(1048578,'the lamp was brass. once the mate was drunk, and it went over the side.');
INSERT INTO utterance_words VALUES(1048579,'was that at café skagen''s quay?');
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
INSERT INTO sentences VALUES(1,0,0,0,73,0,10000,'interpolated');
INSERT INTO sentences VALUES(1,1,1,74,87,10000,20000,'interpolated');
INSERT INTO sentences VALUES(1,2,2,88,159,20000,30000,'interpolated');
INSERT INTO sentences VALUES(1,3,3,160,191,30000,40000,'interpolated');
CREATE TABLE time_marks (
  reading INTEGER NOT NULL REFERENCES readings,
  n INTEGER NOT NULL,
  at INTEGER NOT NULL,
  time INTEGER NOT NULL,
  PRIMARY KEY (reading, n)
) STRICT, WITHOUT ROWID;
INSERT INTO time_marks VALUES(1,0,0,0);
INSERT INTO time_marks VALUES(1,1,74,10000);
INSERT INTO time_marks VALUES(1,2,88,20000);
INSERT INTO time_marks VALUES(1,3,160,30000);
CREATE TABLE remarks (
  reading INTEGER NOT NULL REFERENCES readings,
  n INTEGER NOT NULL,
  first INTEGER NOT NULL,
  past INTEGER NOT NULL,
  PRIMARY KEY (reading, n)
) STRICT, WITHOUT ROWID;
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
INSERT INTO passages VALUES('aske-1','the mate was drunk','restricted',NULL,'','a living person',NULL,NULL,NULL,4);
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
INSERT INTO terms VALUES(1,'places',X'9fb9aad1c5057349f7b677c17d40430c','ship','The tender','','','none','[]','[]','','',8);
INSERT INTO terms VALUES(2,'places',X'35714a86a71cf983abf72d0defaeb9b6','foredeck','Foredeck','ship','01','local','[{"name":"Well deck","dated":{"edtf":"1938/1951"}}]','["up forward"]','','',8);
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
INSERT INTO sources VALUES('album',X'c05daa4b8acf76748aa2d790d641b387','photograph','Crew album','','','1961~','gregorian','','','','',7);
INSERT INTO sources VALUES('log-1962',X'a8574c6fae6d9b6f3b4a79a517cec22a','log','Deck log','','',NULL,'gregorian','','','','',7);
CREATE TABLE derivations (
  source TEXT NOT NULL REFERENCES sources (key),
  derives_from TEXT NOT NULL,             -- key of a source or an interview
  how TEXT NOT NULL,
  since INTEGER NOT NULL REFERENCES journal,
  PRIMARY KEY (source, derives_from)
) STRICT, WITHOUT ROWID;
INSERT INTO derivations VALUES('album','aske-1','captions',7);
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
INSERT INTO entries VALUES('e1',X'630bfdb7a6a634a5f1aa2b57dad0bad0','album','','present','crane','foredeck','summer 61','1961-22','julian','throughout','done',2,'','partly','probable','["e2"]','["crane"]','["aske-1"]','["e2"]','','','','restored','',7);
INSERT INTO entries VALUES('e2',X'ee89af30963784ae0865ef73371863e2','log-1962','','present','','','',NULL,'gregorian','within','intended',NULL,'','not-stated','certain','[]','[]','[]','[]','','','','unknown','',7);
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
INSERT INTO stays VALUES('s1',X'4687e96568c4e2109c442a5c3c97d714','log-1962','','["Skagen","the Skaw"]','','1962-08/1962-09','gregorian','',7);
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
INSERT INTO named_events VALUES('yard',X'cd8f54d10efdf17eac06f33e6310841f','Yard period','["the yard"]','','1962','gregorian','','',7);
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
INSERT INTO claims VALUES(1,X'27cd5b444516330b8a770919e8676cff','aske-1','aske','the bosun','ends','derrick','the crane','foredeck','on the foredeck','in sixty-two','1962','gregorian','within','known',-2922,-2922,'known',-2557,-2557,'spoken-year','the interview',1,'["1862","196X"]',1,2,'one or two','colour: buff','told','hedged','denied',1,1,1,1,'ends: "took it off"',3,0,'said-so',1,0,16,0,1,0,0,0,'{"id":"27cd5b444516330b8a770919e8676cff","interview":"aske-1","speaker":"aske","knower":"the bosun","statement":"ends","subject":"crane","subject_words":"the crane","place":"foredeck","place_words":"on the foredeck","dated":{"written":"in sixty-two","edtf":"1962"},"reading":"within","period":[["known",-2922,-2922],["known",-2557,-2557]],"rule":"spoken-year","anchor":"the interview","date_carried":true,"alternatives":["1862","196X"],"quantity":{"least":1,"most":2,"written":"one or two"},"attribute":"colour: buff","basis":"told","firmness":"hedged","polarity":"denied","led":true,"subject_carried":true,"place_carried":true,"withdrawn":true,"quotes":[[0,16],[78,86]],"mentions":[{"kind":"equipment","first":11,"past":16,"value":"crane","rule":"list","near_match":true},{"kind":"cue","first":33,"past":38,"value":"until","rule":"cue"}],"reason":"ends: \"took it off\"","review_rank":3,"ordinal":0,"status":"proposed","version":1}');
INSERT INTO claims VALUES(2,X'84d0c5120bd70c99ba8907c967192b96','aske-1','aske','the bosun','ends','crane','the crane','foredeck','on the foredeck','in sixty-two','1962','gregorian','within','known',-2922,-2922,'known',-2557,-2557,'spoken-year','the interview',1,'["1862","196X"]',1,2,'one or two','colour: buff','told','hedged','denied',1,1,1,1,'ends: "took it off"',3,0,'proposed',1,88,106,0,0,0,0,0,NULL);
INSERT INTO claims VALUES(3,X'6d2c075a68e2ac651ce0dc482f6f6170','aske-1','aske','the bosun','ends','crane','the crane','foredeck','on the foredeck','in sixty-two','1962','gregorian','within','known',-2922,-2922,'known',-2557,-2557,'spoken-year','the interview',1,'["1862","196X"]',1,2,'one or two','colour: buff','told','hedged','denied',1,1,1,1,'ends: "took it off"',3,0,'proposed',1,137,158,0,0,0,0,0,NULL);
INSERT INTO claims VALUES(4,X'17fcf32e4e82d6400cfffe56222e9e87','aske-1','aske','the bosun','happened','crane','the crane','foredeck','on the foredeck','in sixty-two','1962','gregorian','within','known',-2922,-2922,'known',-2557,-2557,'spoken-year','the interview',1,'["1862","196X"]',1,2,'one or two','colour: buff','told','hedged','denied',1,1,1,1,'ends: "took it off"',3,0,'proposed',1,140,158,1,1,0,0,0,NULL);
CREATE TABLE claim_quotes (
  claim INTEGER NOT NULL REFERENCES claims ON DELETE CASCADE,
  n INTEGER NOT NULL CHECK (n >= 1),
  first INTEGER NOT NULL,
  past INTEGER NOT NULL,
  PRIMARY KEY (claim, n)
) STRICT, WITHOUT ROWID;
INSERT INTO claim_quotes VALUES(1,1,78,86);
INSERT INTO claim_quotes VALUES(2,1,78,86);
INSERT INTO claim_quotes VALUES(3,1,78,86);
INSERT INTO claim_quotes VALUES(4,1,78,86);
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
INSERT INTO claim_mentions VALUES(1,0,'equipment',11,16,'crane','list',1);
INSERT INTO claim_mentions VALUES(1,1,'cue',33,38,'until','cue',0);
INSERT INTO claim_mentions VALUES(2,0,'equipment',11,16,'crane','list',1);
INSERT INTO claim_mentions VALUES(2,1,'cue',33,38,'until','cue',0);
INSERT INTO claim_mentions VALUES(3,0,'equipment',11,16,'crane','list',1);
INSERT INTO claim_mentions VALUES(3,1,'cue',33,38,'until','cue',0);
INSERT INTO claim_mentions VALUES(4,0,'equipment',11,16,'crane','list',1);
INSERT INTO claim_mentions VALUES(4,1,'cue',33,38,'until','cue',0);
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
CREATE TABLE evidence_numbers (
  number INTEGER PRIMARY KEY,
  key TEXT NOT NULL UNIQUE
) STRICT;
INSERT INTO evidence_numbers VALUES(0,'');
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
CREATE TABLE IF NOT EXISTS 'talk_data'(id INTEGER PRIMARY KEY, block BLOB);
INSERT INTO talk_data VALUES(1,X'0429');
INSERT INTO talk_data VALUES(10,X'000000010101010001010101');
INSERT INTO talk_data VALUES(137438953473,X'0000014b0430616e64c08001020201020b020174c08003020401056272617373c080020205010463616665c080030205020472616e65c08000020501056472756e6bc08002020a0108666f72656465636bc0800002080103686164c0800002030102696ec08000020f020174c08000020d02020c01046c616d70c08001020401020301046d617465c08002020801036f6666c08000020e02016ec08000020603026365c0800202060203766572c08002020e010471756179c080030208010173c0800302070203696465c0800202100303787479c08000021002056b6167656ec080030206010474686174c080030203030165c0800006040505010203010602070a02036f6f6bc08000020c0202776fc0800002110105756e74696cc0800002090103776173c08002040407010202020165c08000020203026e74c08002020d010479617264c08000020b040d080c0b0b0c0f0a090b0e0b0a08090a0b080a0a0c0b120a090c0e0809');
CREATE TABLE IF NOT EXISTS 'talk_idx'(segid, term, pgno, PRIMARY KEY(segid, term)) WITHOUT ROWID;
INSERT INTO talk_idx VALUES(1,X'',2);
CREATE TABLE IF NOT EXISTS 'talk_config'(k PRIMARY KEY, v) WITHOUT ROWID;
INSERT INTO talk_config VALUES('hashsize',8388608);
INSERT INTO talk_config VALUES('version',4);
PRAGMA writable_schema=ON;
INSERT INTO sqlite_schema(type,name,tbl_name,rootpage,sql)VALUES('table','talk','talk',0,'CREATE VIRTUAL TABLE talk USING fts5 (
  words,
  content = ''utterance_words'',
  content_rowid = ''turn'',
  columnsize = 0,
  tokenize = ''unicode61 remove_diacritics 2''
)');
CREATE INDEX journal_by_target ON journal (target_kind, target);
CREATE INDEX journal_followed ON journal_follows (follows);
CREATE INDEX interviews_of_person ON interview_people (person);
CREATE INDEX originals_of_interview ON originals (interview, sha256);
CREATE INDEX entries_by_source ON entries (source);
CREATE INDEX claims_by_position ON claims (interview, first);
CREATE INDEX claims_by_subject ON claims (subject);
CREATE INDEX claims_by_place ON claims (place);
CREATE INDEX comparisons_by_evidence ON comparisons (evidence, claim);
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
PRAGMA writable_schema=OFF;
COMMIT;
PRAGMA application_id = 2003661670; PRAGMA user_version = 2;
