#include "server/storage/store.h"

#include <utility>

#include "server/storage/open_file.h"
#include "server/storage/sqlite_store.h"

namespace suppertide::storage {

absl::StatusOr<std::unique_ptr<Store>> Store::open(const std::string& path, const Options& options,
                                                   const Clock& clock) {
  const bool inMemory = path == ":memory:";
  std::optional<FileLock> lock;
  if (!inMemory) {
    absl::StatusOr<FileLock> acquired = FileLock::acquire(path + ".lock");
    if (!acquired.ok()) return acquired.status();
    lock.emplace(*std::move(acquired));
  }
  absl::StatusOr<std::unique_ptr<Database>> database = openFile(path, options);
  if (!database.ok()) return database.status();
  auto writer = std::make_unique<Connection>(*std::move(database));
  std::unique_ptr<Connection> reader;
  if (!inMemory) {
    absl::StatusOr<std::unique_ptr<Database>> second = Database::open(path, Database::Mode::kReadOnly);
    if (!second.ok()) return second.status();
    reader = std::make_unique<Connection>(*std::move(second));
  }
  return std::make_unique<SqliteStore>(std::move(lock), std::move(writer), std::move(reader), options, clock);
}

}  // namespace suppertide::storage
