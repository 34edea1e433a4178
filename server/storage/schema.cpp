// The schema, as the steps that lead to it.
#include "server/storage/migrations.h"

namespace suppertide::storage {

namespace {

// Version 1. Times are seconds since 1970. A changed document's writer and time
// are its change's. documents holds the present, changed_documents what the log
// tells; the bytes are in both so that trimming the log never moves one.
constexpr char kFirst[] = R"sql(
CREATE TABLE households (
  id TEXT PRIMARY KEY,
  revision INTEGER NOT NULL,
  trimmed_revision INTEGER NOT NULL,  -- changes up to and with it are gone
  document_count INTEGER NOT NULL,    -- without tombstones
  request_count INTEGER NOT NULL      -- ever recorded
) STRICT, WITHOUT ROWID;

CREATE TABLE documents (
  household_id TEXT NOT NULL REFERENCES households (id),
  kind TEXT NOT NULL,
  id TEXT NOT NULL,
  bytes BLOB NOT NULL,
  etag TEXT NOT NULL,
  revision INTEGER NOT NULL,
  create_time INTEGER NOT NULL,
  update_time INTEGER NOT NULL,
  member_id TEXT NOT NULL,
  deleted INTEGER NOT NULL,
  PRIMARY KEY (household_id, kind, id)
) STRICT;
CREATE INDEX tombstones ON documents (household_id, revision) WHERE deleted;

CREATE TABLE changes (
  household_id TEXT NOT NULL REFERENCES households (id),
  revision INTEGER NOT NULL,
  member_id TEXT NOT NULL,
  commit_time INTEGER NOT NULL,
  PRIMARY KEY (household_id, revision)
) STRICT, WITHOUT ROWID;

CREATE TABLE changed_documents (
  household_id TEXT NOT NULL,
  revision INTEGER NOT NULL,
  position INTEGER NOT NULL,
  kind TEXT NOT NULL,
  id TEXT NOT NULL,
  bytes BLOB NOT NULL,
  etag TEXT NOT NULL,
  create_time INTEGER NOT NULL,
  deleted INTEGER NOT NULL,
  PRIMARY KEY (household_id, revision, position),
  FOREIGN KEY (household_id, revision) REFERENCES changes (household_id, revision) ON DELETE CASCADE
) STRICT;

CREATE TABLE requests (
  household_id TEXT NOT NULL,     -- empty for the making of a household
  request_id TEXT NOT NULL,
  number INTEGER NOT NULL,        -- households.request_count when recorded
  fingerprint BLOB NOT NULL,
  revision INTEGER NOT NULL,
  document_keys TEXT NOT NULL,    -- a line each: kind/id
  device_id TEXT NOT NULL,        -- made with a household, else empty
  PRIMARY KEY (household_id, request_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX request_numbers ON requests (household_id, number);

CREATE TABLE devices (
  id TEXT PRIMARY KEY,
  household_id TEXT NOT NULL REFERENCES households (id),
  member_id TEXT NOT NULL,
  display_name TEXT NOT NULL,
  create_time INTEGER NOT NULL,
  last_seen_time INTEGER NOT NULL,
  revoked INTEGER NOT NULL,
  token_hash BLOB NOT NULL UNIQUE
) STRICT, WITHOUT ROWID;
CREATE INDEX household_devices ON devices (household_id);

CREATE TABLE codes (
  hash BLOB PRIMARY KEY,
  purpose INTEGER NOT NULL,       -- 0 host, 1 invitation
  household_id TEXT NOT NULL,
  member_id TEXT NOT NULL,
  role INTEGER NOT NULL,
  expire_time INTEGER             -- NULL: never
) STRICT, WITHOUT ROWID;
)sql";

// Version 2: what each household's log weighs, so that it can be kept small.
constexpr char kLogBytes[] = R"sql(
ALTER TABLE households ADD COLUMN log_bytes INTEGER NOT NULL DEFAULT 0;
UPDATE households SET log_bytes = (SELECT coalesce(sum(length(bytes)), 0) FROM changed_documents
  WHERE household_id = households.id);
)sql";

// Version 3: fewer pages in each commit. A changed document has its change's writer and time beside
// it, and requests are no longer indexed by number: they are forgotten seldom, many at once.
constexpr char kFewerPages[] = R"sql(
CREATE TABLE log (
  household_id TEXT NOT NULL REFERENCES households (id),
  revision INTEGER NOT NULL,
  position INTEGER NOT NULL,      -- in its change
  member_id TEXT NOT NULL,
  commit_time INTEGER NOT NULL,
  kind TEXT NOT NULL,
  id TEXT NOT NULL,
  bytes BLOB NOT NULL,
  etag TEXT NOT NULL,
  create_time INTEGER NOT NULL,
  deleted INTEGER NOT NULL,
  PRIMARY KEY (household_id, revision, position)
) STRICT;
INSERT INTO log SELECT d.household_id, d.revision, d.position, c.member_id, c.commit_time, d.kind, d.id, d.bytes,
  d.etag, d.create_time, d.deleted FROM changed_documents d JOIN changes c USING (household_id, revision)
  ORDER BY d.rowid;
DROP TABLE changed_documents;
DROP TABLE changes;
ALTER TABLE log RENAME TO changed_documents;
DROP INDEX request_numbers;
)sql";

}  // namespace

const std::vector<std::string>& migrations() {
  static const auto& steps = *new std::vector<std::string>{kFirst, kLogBytes, kFewerPages};
  return steps;
}

}  // namespace suppertide::storage
