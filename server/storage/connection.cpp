#include "server/storage/connection.h"

#include <utility>

namespace suppertide::storage {

Connection::Connection(std::unique_ptr<Database> opened)
    : database(std::move(opened)),
      households(*database),
      documents(*database),
      changes(*database),
      requests(*database),
      devices(*database),
      codes(*database) {}

}  // namespace suppertide::storage
