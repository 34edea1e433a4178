#include "client/kitchen/starter_controller.h"

#include "client/kitchen/document_words.h"
#include "client/words/time_words.h"

namespace suppertide {

void StarterController::setDraft(Draft* draft) {
  if (draft == draft_) return;
  if (draft_ != nullptr) draft_->disconnect(this);
  draft_ = draft;
  if (draft_ != nullptr) connect(draft_, &Draft::changed, this, &StarterController::changed);
  Q_EMIT changed();
}

const v1::Starter* StarterController::starter() const {
  return draft_ == nullptr ? nullptr : dynamic_cast<const v1::Starter*>(&draft_->document());
}

QString StarterController::lastFed() const {
  if (starter() == nullptr || !starter()->has_last_fed_time() || draft_->session() == nullptr) return {};
  const auto& replica = draft_->session()->replica();
  const TimeWords times(replica == nullptr ? std::string() : replica->household.time_zone());
  const Instant fed = toInstant(starter()->last_fed_time());
  return tr("%1, %2").arg(times.day(fed), times.clock(fed));
}

QStringList StarterController::learned() const {
  QStringList sentences;
  if (starter() == nullptr) return sentences;
  if (starter()->has_learned_vigour()) sentences += LearnedWords::sentence(starter()->learned_vigour());
  if (starter()->has_learned_waking()) sentences += LearnedWords::sentence(starter()->learned_waking());
  return sentences;
}

void StarterController::setFed(std::int64_t seconds) {
  if (starter() == nullptr) return;
  draft_->edit(QStringLiteral("lastFedTime"), [seconds](google::protobuf::Message& document) {
    static_cast<v1::Starter&>(document).mutable_last_fed_time()->set_seconds(seconds);
  });
}

void StarterController::fedAgo(int minutes) {
  if (draft_ == nullptr || draft_->session() == nullptr) return;
  const std::int64_t now = draft_->session()->now().time_since_epoch().count();
  setFed(now - now % 60 - minutes * 60);
}

void StarterController::fedEarlier(int minutes) {
  if (starter() != nullptr && starter()->has_last_fed_time())
    setFed(starter()->last_fed_time().seconds() - minutes * 60);
}

}  // namespace suppertide
