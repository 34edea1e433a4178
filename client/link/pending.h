// Own changes that are shown ahead of the server: those that wait, and those that
// it took but that the replica does not hold yet. Not thread-safe.
#pragma once

#include <google/protobuf/message.h>

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "client/link/replica.h"

namespace suppertide::link {

class Pending {
 public:
  // `number` as in the outbox.
  void add(std::int64_t number, std::shared_ptr<const google::protobuf::Message> request);
  // The server took it and gave this answer.
  void taken(std::int64_t number, std::shared_ptr<const google::protobuf::Message> answer);
  // It is not to be shown any more.
  void drop(std::int64_t number);

  // `replica` with all of them on top; itself when there are none. Those that it holds are
  // forgotten. Copies the replica. Reports that name nobody are `memberId`'s.
  std::shared_ptr<const Replica> over(const std::shared_ptr<const Replica>& replica,
                                      const std::string& memberId);

  // Not taken yet.
  int waitingCount() const;
  // Whether the report, the tick of the shopping line or an edit of the document of that id has not reached
  // the server.
  bool waits(const std::string& id) const;

 private:
  struct Change {
    std::int64_t number = 0;
    std::shared_ptr<const google::protobuf::Message> request;
    std::shared_ptr<const google::protobuf::Message> answer{};  // null: waits
    std::int64_t revision = 0;                                  // that the answer made
  };
  std::vector<Change> changes_;  // oldest first
};

}  // namespace suppertide::link
