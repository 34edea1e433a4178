#include "client/session/undo_stack.h"

#include <algorithm>

namespace suppertide {
namespace {

constexpr std::size_t kMostSteps = 20;

}  // namespace

void UndoStack::push(Step step) {
  steps_.push_back(std::move(step));
  if (steps_.size() > kMostSteps) steps_.erase(steps_.begin());
}

void UndoStack::add(std::int64_t number, const google::protobuf::Message& request,
                    const link::Replica& before, const QString& text) {
  auto inverse = link::inverseOf(request, before);
  if (inverse == nullptr) return;
  Step step;
  step.number = number;
  step.edit = link::readEdit(request);
  step.inverse = std::move(inverse);
  step.text = text;
  push(std::move(step));
}

void UndoStack::add(const QString& text, std::int64_t revision, Documents touched,
                    std::function<void()> back) {
  Step step;
  step.text = text;
  step.revision = revision;
  step.touched = std::move(touched);
  step.back = std::move(back);
  step.taken = true;
  push(std::move(step));
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

bool UndoStack::isStale(const Step& step, const link::Replica& base) const {
  using Act = link::Edit::Act;
  if (!step.taken || base.revision < step.revision) return false;
  if (step.back != nullptr)
    return std::any_of(step.touched.begin(), step.touched.end(), [&](const auto& key) {
      const auto* there = link::documentOf(base, key.first, key.second);
      return there == nullptr || link::documentRevisionOf(*there) > step.revision;
    });
  // These join what others told.
  if (step.edit.act == Act::kReport || step.edit.act == Act::kShopping) return false;
  const auto* there = link::documentOf(base, step.edit.kind, step.edit.id);
  if (step.edit.act == Act::kDelete) return there != nullptr;
  if (there == nullptr) return true;
  // The versions that later changes of ours made are ours, too.
  return std::none_of(steps_.begin(), steps_.end(), [&](const Step& other) {
    return other.edit.kind == step.edit.kind && other.edit.id == step.edit.id &&
           (other.etag == link::etagOf(*there) || other.edit.etag == link::etagOf(*there));
  });
}

void UndoStack::check(const link::Replica& base) {
  std::vector<bool> stale;
  for (const Step& step : steps_) stale.push_back(isStale(step, base));
  for (std::size_t i = stale.size(); i-- > 0;)
    if (stale[i]) steps_.erase(steps_.begin() + static_cast<std::ptrdiff_t>(i));
}

std::unique_ptr<google::protobuf::Message> UndoStack::take(const link::Replica& shown) {
  if (steps_.empty()) return nullptr;
  Step step = std::move(steps_.back());
  steps_.pop_back();
  if (step.back != nullptr) {
    step.back();
    return nullptr;
  }
  if (const auto* there = link::documentOf(shown, step.edit.kind, step.edit.id); there != nullptr)
    link::aimAt(*step.inverse, link::etagOf(*there));
  return std::move(step.inverse);
}

}  // namespace suppertide
