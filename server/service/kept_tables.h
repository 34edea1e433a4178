// What corrections of running plans worked out of their doughs, kept from one to the next.
#pragma once

#include <deque>
#include <memory>
#include <mutex>
#include <string>
#include <utility>

namespace suppertide::compose {
class BreadTables;
}

namespace suppertide::service {

// About a megabyte an event with breads, of the events corrected last. For any threads; an event's tables are
// with one correction at a time, and another one that comes meanwhile has new ones.
class KeptTables {
 public:
  using Key = std::pair<std::string, std::string>;  // household and event
  KeptTables();
  ~KeptTables();

  std::unique_ptr<compose::BreadTables> take(const Key& key);
  void keep(const Key& key, std::unique_ptr<compose::BreadTables> tables);

 private:
  std::mutex mutex_;
  std::deque<std::pair<Key, std::unique_ptr<compose::BreadTables>>>
      kept_;  // guarded by mutex_; the last last
};

// Of all servers of this process.
KeptTables& keptTables();

}  // namespace suppertide::service
