#include "client/session/undo_stack.h"

#include <algorithm>

namespace suppertide {
namespace {

constexpr std::size_t kMostSteps = 20;

}  // namespace

void UndoStack::add(std::int64_t number, const google::protobuf::Message& request,
                    const link::Replica& before, const QString& text) {
  auto inverse = link::inverseOf(request, before);
  if (inverse == nullptr) return;
  Step step;
  step.number = number;
  step.edit = link::readEdit(request);
  step.inverse = std::move(inverse);
  step.text = text;
  steps_.push_back(std::move(step));
  if (steps_.size() > kMostSteps) steps_.erase(steps_.begin());
}

void UndoStack::taken(std::int64_t number, const google::protobuf::Message& answer) {
  for (Step& step : steps_) {
    if (step.number != number) continue;
    step.taken = true;
    const auto* document = link::answeredDocument(answer, step.edit.kind);
    if (document != nullptr) step.etag = link::etagOf(*document);
    step.revision = link::revisionOf(answer);
  }
}

void UndoStack::drop(std::int64_t number) {
  steps_.erase(
      std::remove_if(steps_.begin(), steps_.end(), [&](const Step& step) { return step.number == number; }),
      steps_.end());
}

void UndoStack::check(const link::Replica& base) {
  using Act = link::Edit::Act;
  // The versions that later changes of ours made are ours, too.
  const auto isOurs = [&](const Step& step, const std::string& etag) {
    return std::any_of(steps_.begin(), steps_.end(), [&](const Step& other) {
      return other.edit.kind == step.edit.kind && other.edit.id == step.edit.id &&
             (other.etag == etag || other.edit.etag == etag);
    });
  };
  std::vector<std::int64_t> stale;
  for (const Step& step : steps_) {
    const bool joins = step.edit.act == Act::kReport || step.edit.act == Act::kShopping;
    if (joins || !step.taken || base.revision < step.revision) continue;
    const auto* there = link::documentOf(base, step.edit.kind, step.edit.id);
    const bool same = step.edit.act == Act::kDelete ? there == nullptr
                                                    : there != nullptr && isOurs(step, link::etagOf(*there));
    if (!same) stale.push_back(step.number);
  }
  for (const std::int64_t number : stale) drop(number);
}

std::unique_ptr<google::protobuf::Message> UndoStack::take(const link::Replica& shown) {
  if (steps_.empty()) return nullptr;
  Step step = std::move(steps_.back());
  steps_.pop_back();
  if (const auto* there = link::documentOf(shown, step.edit.kind, step.edit.id); there != nullptr)
    link::aimAt(*step.inverse, link::etagOf(*there));
  return std::move(step.inverse);
}

}  // namespace suppertide
