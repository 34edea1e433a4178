// One cook's device: the real link and session, with reports that wait while it is off.
#pragma once

#include <condition_variable>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "client/link/link.h"
#include "client/link/session.h"

namespace suppertide::evening {

class CookClient : public link::LinkListener {
 public:
  CookClient(std::string memberId, const link::LinkOptions& options);
  ~CookClient() override;

  const std::string& memberId() const { return memberId_; }
  bool online() const { return link_ != nullptr; }
  void dropOff();
  void comeBack();

  // As last seen; also while off.
  std::shared_ptr<const link::Replica> replica() const;
  // Waits until everything up to the revision is there; false after half a minute.
  bool waitFor(std::int64_t revision);

  // Tells it now, or once the device is back; keeps the report's time either way. The revision it made; 0
  // while it waits. A refusal is said in `refused`.
  std::int64_t tell(const std::string& eventId, const v1::Report& report, std::string& refused);
  // What waited. As tell().
  std::int64_t tellWaiting(const std::string& eventId, std::string& refused);

  link::Session& session() { return session_; }

 private:
  void replicaChanged(std::shared_ptr<const link::Replica> replica, const std::string& memberId) override;
  std::int64_t send(const std::string& eventId, const std::vector<v1::Report>& reports, std::string& refused);

  const std::string memberId_;
  const link::LinkOptions options_;
  link::Session session_;
  std::vector<v1::Report> waiting_;

  mutable std::mutex mutex_;
  std::condition_variable changed_;
  std::shared_ptr<const link::Replica> replica_;  // guarded by mutex_
  std::unique_ptr<link::Link> link_;              // last: it calls until it is gone
};

}  // namespace suppertide::evening
