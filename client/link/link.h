// The live connection to a server: follows Watch, keeps the replica, comes back
// by itself after a cut.
//
// Losing the connection is a state, not an error. Callbacks run on the thread
// that `post` chooses; the window posts to its event loop, the terminal runs
// them at once on the link's own thread. No Qt here.
#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <string>

#include "client/link/replica.h"

namespace suppertide::link {

enum class LinkState {
  kStopped,
  kConnecting,  // first time, or again after a cut; the replica stays readable
  kLive,        // everything up to the last bookmark is here
  kRefused,     // the server knows us no more, or the household is another's; does not retry
};

class LinkListener {
 public:
  virtual ~LinkListener() = default;
  // `why` is empty when live; else what the server or the network said, for people.
  virtual void linkStateChanged(LinkState /*state*/, const std::string& /*why*/) {}
  // After each commit, and once after a snapshot. `memberId`: who wrote; empty for snapshot and server.
  virtual void replicaChanged(std::shared_ptr<const Replica> /*replica*/, const std::string& /*memberId*/) {}
};

struct LinkOptions {
  std::string target;  // "unix:/..." or "127.0.0.1:40123"
  std::string householdId;
  std::string deviceToken;
  std::string certificatePem;                 // trusted over a network; empty: the system's authorities
  std::string fingerprint{};                  // of the only certificate accepted; empty: see openChannel()
  std::chrono::milliseconds firstRetry{200};  // doubles up to lastRetry, with a random part
  std::chrono::milliseconds lastRetry{10'000};
  // A stream silent for longer counts as cut: a living server sends a bookmark every 10 seconds.
  std::chrono::milliseconds longestSilence{35'000};
  std::function<void(std::function<void()>)> post;  // absent: call at once
  // What was kept of an earlier day, to continue from; null: nothing. Not told to the listener.
  std::shared_ptr<const Replica> known{};
};

class Link {
 public:
  // `listener` outlives the link.
  Link(LinkOptions options, LinkListener& listener);
  ~Link();  // stops and waits; no callback runs afterwards

  // Nothing happens when it runs already. After kRefused or stop() it begins anew.
  void start();
  // Waits for the link's own thread unless called on it. The last state told is kStopped.
  void stop();
  // The last replica, never null. Any thread.
  std::shared_ptr<const Replica> replica() const;

 private:
  struct State;
  std::shared_ptr<State> state_;
};

}  // namespace suppertide::link
