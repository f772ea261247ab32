-- A database file as the first schema made it, with a little of the invented gym in it.
PRAGMA application_id = 0x52707774;
PRAGMA user_version = 1;
CREATE TABLE part (
  kind TEXT PRIMARY KEY CHECK (kind IN ('people', 'hall', 'house', 'movements')),
  version INTEGER NOT NULL CHECK (version > 0),
  text TEXT NOT NULL, saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL
) STRICT;
CREATE TABLE board (id TEXT PRIMARY KEY) STRICT;
CREATE TABLE board_text (
  board TEXT NOT NULL REFERENCES board (id),
  version INTEGER NOT NULL CHECK (version > 0),
  text TEXT NOT NULL, saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL,
  PRIMARY KEY (board, version)
) STRICT;
CREATE TABLE class (
  id TEXT PRIMARY KEY,
  board TEXT REFERENCES board (id),
  version INTEGER NOT NULL CHECK (version > 0),
  text TEXT NOT NULL, saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL
) STRICT;
CREATE TABLE score (number INTEGER PRIMARY KEY AUTOINCREMENT) STRICT;
CREATE TABLE score_line (
  score INTEGER NOT NULL REFERENCES score (number),
  version INTEGER NOT NULL CHECK (version > 0),
  day TEXT NOT NULL, class TEXT NOT NULL, board TEXT NOT NULL, piece TEXT NOT NULL, person TEXT NOT NULL,
  entry TEXT NOT NULL, movement_version TEXT NOT NULL,
  effort REAL CHECK (effort BETWEEN 0 AND 10),
  flag INTEGER NOT NULL CHECK (flag BETWEEN 0 AND 3),
  entered_by TEXT NOT NULL, saved_by TEXT NOT NULL, saved_at INTEGER NOT NULL,
  PRIMARY KEY (score, version)
) STRICT;
INSERT INTO part VALUES ('people', 3, 'id,name,sex
a04,Ravindra Coelho-Munk,m
', 'Kim', 1810000000);
INSERT INTO part VALUES ('hall', 1, '{"name": "The Lock Shed (invented)", "floor_m2": 216}', 'Kim', 1810000000);
INSERT INTO part VALUES ('house', 1, '{}', 'Kim', 1810000000);
INSERT INTO board VALUES ('thursday');
INSERT INTO board_text VALUES ('thursday', 1, '5 RFT
9 pull-ups
', 'Kim', 1810000000);
INSERT INTO board_text VALUES ('thursday', 2, '3 RFT
9 pull-ups
', 'Kim', 1810000060);
INSERT INTO class VALUES ('thu-6', 'thursday', 1, '{"id": "thu-6", "date": "2027-05-13", "start": "06:00", "minutes": 60, "board_id": "thursday", "booked": ["a04"]}', 'Kim', 1810000000);
INSERT INTO score VALUES (1);
INSERT INTO score_line VALUES (1, 1, '2027-05-13', 'thu-6', 'thursday', '', 'a04', '22:10', '', 7.0, 0, 'Kim', 'Kim', 1810000000);
