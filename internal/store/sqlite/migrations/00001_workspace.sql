-- Drafts, the commands that made them, versions, records. The same text serves
-- PostgreSQL: times are RFC 3339 UTC text of one length, JSON is text, and
-- BYTEA, which SQLite doesn't know, keeps bytes as they are.

-- +goose Up
CREATE TABLE drafts (
    id       TEXT PRIMARY KEY,
    code     TEXT NOT NULL,
    name     TEXT NOT NULL,
    product  TEXT NOT NULL,
    search   TEXT NOT NULL, -- code and name, folded in Go
    revision BIGINT NOT NULL,
    created  TEXT NOT NULL,
    changed  TEXT NOT NULL
);
CREATE INDEX drafts_changed ON drafts (changed);

-- Apart from drafts, so that a list of ten thousand reads no documents.
CREATE TABLE documents (
    draft TEXT PRIMARY KEY REFERENCES drafts (id) ON DELETE CASCADE,
    body  TEXT NOT NULL
);

-- state: done can be undone, undone can be done again, spent can be neither.
-- sent is a hash of what was sent, by which the same command is known again.
CREATE TABLE commands (
    id       TEXT PRIMARY KEY,
    draft    TEXT NOT NULL REFERENCES drafts (id) ON DELETE CASCADE,
    revision BIGINT NOT NULL,
    state    TEXT NOT NULL CHECK (state IN ('done', 'undone', 'spent')),
    sent     TEXT NOT NULL,
    command  TEXT NOT NULL,
    inverse  TEXT NOT NULL,
    UNIQUE (draft, revision)
);
CREATE INDEX commands_state ON commands (draft, state, revision);

-- A version outlives its draft.
CREATE TABLE versions (
    id         TEXT PRIMARY KEY,
    draft      TEXT NOT NULL,
    number     BIGINT NOT NULL,
    revision   BIGINT NOT NULL,
    reason     TEXT NOT NULL,
    author     TEXT NOT NULL,
    made       TEXT NOT NULL,
    document   TEXT NOT NULL,
    materials  TEXT NOT NULL,
    assessment TEXT NOT NULL,
    program    TEXT NOT NULL,
    refdata    TEXT NOT NULL,
    UNIQUE (draft, number)
);

CREATE TABLE records (
    seq          BIGINT PRIMARY KEY,
    id           TEXT NOT NULL UNIQUE,
    kind         TEXT NOT NULL,
    subject_kind TEXT NOT NULL,
    subject_key  TEXT NOT NULL,
    body         BYTEA NOT NULL,
    author       TEXT NOT NULL,
    why          TEXT NOT NULL,
    made         TEXT NOT NULL,
    corrects     TEXT NOT NULL,
    prev         TEXT NOT NULL,
    hash         TEXT NOT NULL
);
CREATE INDEX records_subject ON records (subject_kind, subject_key, seq);

-- The last record of the chain, so that one taken from its end is missed.
CREATE TABLE chain (
    name TEXT PRIMARY KEY,
    seq  BIGINT NOT NULL,
    hash TEXT NOT NULL
);

-- +goose Down
DROP TABLE chain;
DROP TABLE records;
DROP TABLE versions;
DROP TABLE commands;
DROP TABLE documents;
DROP TABLE drafts;
