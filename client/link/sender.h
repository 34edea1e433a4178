// Sends what waits in an outbox, in order, one after the other, whenever the server can be reached.
#pragma once

#include <google/protobuf/message.h>

#include <functional>
#include <memory>

#include "client/link/outbox.h"

namespace suppertide::link {

class Session;

// Told on the sender's thread, when the outbox has it.
class SenderListener {
 public:
  virtual ~SenderListener() = default;
  virtual void requestTaken(const Outbox::Entry& entry,
                            std::shared_ptr<const google::protobuf::Message> answer) = 0;
  virtual void requestRefused(const Outbox::Entry& entry, const absl::Status& why) = 0;
};

class Sender {
 public:
  // All outlive the sender.
  Sender(Session& session, Outbox& outbox, SenderListener& listener);
  ~Sender();  // waits for the call under way: cancel the session's calls first

  // Whether the server answers, as the live link knows it.
  void setReachable(bool reachable);
  // Something was added.
  void wake();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace suppertide::link
