// Following a household live, a line a change.
#include <chrono>
#include <condition_variable>
#include <deque>
#include <mutex>
#include <utility>

#include <nlohmann/json.hpp>

#include "absl/strings/str_cat.h"
#include "client/link/link.h"
#include "client/terminal/change_text.h"
#include "client/terminal/commands.h"
#include "client/terminal/connection.h"
#include "client/terminal/report.h"
#include "client/terminal/text.h"
#include "client/terminal/time_text.h"

namespace suppertide::terminal {
namespace {

// Hands what the link tells to the command's own thread.
class Mailbox : public link::LinkListener {
 public:
  struct Letter {
    std::shared_ptr<const link::Replica> replica;  // null: a state
    std::string memberId;
    link::LinkState state = link::LinkState::kStopped;
    std::string why;
  };

  void linkStateChanged(link::LinkState state, const std::string& why) override {
    put({nullptr, "", state, why});
  }
  void replicaChanged(std::shared_ptr<const link::Replica> replica, const std::string& memberId) override {
    put({std::move(replica), memberId, link::LinkState::kLive, ""});
  }

  // False when nothing came for a moment.
  bool take(Letter& letter) {
    std::unique_lock<std::mutex> lock(mutex_);
    // Short enough for Ctrl-C to feel immediate.
    if (!arrived_.wait_for(lock, std::chrono::milliseconds(100), [this] { return !letters_.empty(); }))
      return false;
    letter = std::move(letters_.front());
    letters_.pop_front();
    return true;
  }

 private:
  void put(Letter letter) {
    const std::lock_guard<std::mutex> lock(mutex_);
    letters_.push_back(std::move(letter));
    arrived_.notify_one();
  }

  std::mutex mutex_;
  std::condition_variable arrived_;
  std::deque<Letter> letters_;
};

std::string memberName(const link::Replica& replica, const std::string& memberId) {
  if (memberId.empty()) return "The server";
  for (const v1::Member& member : replica.household.members()) {
    if (member.id() == memberId) return plainLine(member.display_name());
  }
  return plainLine(memberId);
}

class Watcher {
 public:
  Watcher(const WatchCommand& command, Environment& environment)
      : command_(command), environment_(environment) {}

  // False when this was the last change wanted.
  bool take(const Mailbox::Letter& letter) {
    const auto before = std::exchange(shown_, letter.replica);
    if (before == nullptr) {
      if (!command_.json) {
        environment_.out << "Watching " << plainLine(shown_->household.display_name()) << ". Ctrl-C ends it."
                         << std::endl;
      }
      return true;
    }
    for (const ChangeLine& change : changesBetween(*before, *shown_)) {
      print(change, memberName(*shown_, letter.memberId));
      if (++printed_ == command_.changes) return false;
    }
    return true;
  }

  void tellState(const Mailbox::Letter& letter) {
    if (letter.state == link::LinkState::kConnecting && !letter.why.empty() && !lost_) {
      lost_ = true;
      environment_.err << "Connection lost (" << plainLine(letter.why) << "); trying again." << std::endl;
    } else if (letter.state == link::LinkState::kLive && lost_) {
      lost_ = false;
      environment_.err << "Connected again." << std::endl;
    }
  }

 private:
  void print(const ChangeLine& change, const std::string& who) {
    if (command_.json) {
      const nlohmann::ordered_json json = {{"revision", shown_->revision},
                                           {"member", who},
                                           {"kind", change.kind},
                                           {"id", change.id},
                                           {"change", change.text}};
      environment_.out << json.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace)
                       << std::endl;
      return;
    }
    const Clock clock(shown_->household.time_zone());
    environment_.out << clock.hour(absl::Now()) << "  " << who << " " << change.text << "." << std::endl;
  }

  const WatchCommand& command_;
  Environment& environment_;
  std::shared_ptr<const link::Replica> shown_;
  int printed_ = 0;
  bool lost_ = false;
};

}  // namespace

int runWatch(const WatchCommand& command, Environment& environment) {
  const auto known = knownServer(environment, command.server);
  if (!known.ok()) return reportFailure(environment, known.status(), command.json);
  // Asked once, so that a server that is not there is said at once instead of being tried for ever.
  const auto self = openKnown(*known).session->whoAmI();
  if (!self.ok()) return reportFailure(environment, self.status(), command.json);
  Mailbox mailbox;
  link::LinkOptions options;
  options.target = known->target;
  options.householdId = known->householdId;
  options.deviceToken = known->deviceToken;
  options.certificatePem = known->certificatePem;
  options.fingerprint = known->fingerprint;
  link::Link link(options, mailbox);
  link.start();
  Watcher watcher(command, environment);
  while (!environment.wasInterrupted()) {
    Mailbox::Letter letter;
    if (!mailbox.take(letter)) continue;
    if (letter.replica != nullptr) {
      if (!watcher.take(letter)) return kOk;
    } else if (letter.state == link::LinkState::kRefused) {
      return reportFailure(environment, absl::PermissionDeniedError(letter.why), command.json);
    } else {
      watcher.tellState(letter);
    }
  }
  return kOk;
}

}  // namespace suppertide::terminal
