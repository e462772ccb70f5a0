-- One changed claim is held against the entries on its thing without reading the others.
CREATE INDEX entries_by_subject ON entries (subject);
