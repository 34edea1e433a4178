// One connection with its tables, and the mutex that makes it one caller's at a time.
#pragma once

#include <memory>
#include <mutex>

#include "server/storage/changes_table.h"
#include "server/storage/codes_table.h"
#include "server/storage/database.h"
#include "server/storage/devices_table.h"
#include "server/storage/documents_table.h"
#include "server/storage/households_table.h"
#include "server/storage/requests_table.h"

namespace suppertide::storage {

struct Connection {
  explicit Connection(std::unique_ptr<Database> opened);

  std::mutex mutex;  // guards all below
  std::unique_ptr<Database> database;
  HouseholdsTable households;
  DocumentsTable documents;
  ChangesTable changes;
  RequestsTable requests;
  DevicesTable devices;
  CodesTable codes;
};

}  // namespace suppertide::storage
