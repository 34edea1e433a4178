#include "client/link/pending.h"

#include <algorithm>

#include "client/link/edit.h"
#include "client/link/shopping_edit.h"
#include "suppertide/v1/progress_service.pb.h"
#include "suppertide/v1/shopping_service.pb.h"

namespace suppertide::link {
namespace {

using google::protobuf::Message;

bool isLine(const Message& request, const std::string& id) {
  const auto* shopping = dynamic_cast<const v1::EditShoppingRequest*>(&request);
  return shopping != nullptr &&
         std::any_of(shopping->edits().begin(), shopping->edits().end(),
                     [&](const v1::ShoppingEdit& edit) { return concernsItem(edit, id); });
}

bool isReport(const Message& request, const std::string& id) {
  const auto* reports = dynamic_cast<const v1::AddReportsRequest*>(&request);
  return reports != nullptr && std::any_of(reports->reports().begin(), reports->reports().end(),
                                           [&](const v1::Report& report) { return report.id() == id; });
}

}  // namespace

void Pending::add(std::int64_t number, std::shared_ptr<const Message> request) {
  changes_.push_back({number, std::move(request)});
}

void Pending::taken(std::int64_t number, std::shared_ptr<const Message> answer) {
  for (Change& change : changes_) {
    if (change.number != number) continue;
    change.revision = revisionOf(*answer);
    change.answer = std::move(answer);
  }
}

void Pending::drop(std::int64_t number) {
  changes_.erase(
      std::remove_if(changes_.begin(), changes_.end(), [&](const Change& c) { return c.number == number; }),
      changes_.end());
}

std::shared_ptr<const Replica> Pending::over(const std::shared_ptr<const Replica>& replica,
                                             const std::string& memberId) {
  changes_.erase(std::remove_if(changes_.begin(), changes_.end(),
                                [&](const Change& change) {
                                  return change.answer != nullptr && change.revision <= replica->revision;
                                }),
                 changes_.end());
  if (changes_.empty()) return replica;
  auto shown = std::make_shared<Replica>(*replica);
  for (const Change& change : changes_) {
    if (change.answer == nullptr || !showAnswer(*change.request, *change.answer, *shown))
      foresee(*change.request, memberId, *shown);
  }
  return shown;
}

int Pending::waitingCount() const {
  return static_cast<int>(
      std::count_if(changes_.begin(), changes_.end(), [](const Change& c) { return c.answer == nullptr; }));
}

bool Pending::waits(const std::string& id) const {
  return std::any_of(changes_.begin(), changes_.end(), [&](const Change& change) {
    if (change.answer != nullptr) return false;
    const Edit edit = readEdit(*change.request);
    if (edit.act == Edit::Act::kReport) return isReport(*change.request, id);
    if (edit.act == Edit::Act::kShopping) return isLine(*change.request, id);
    return edit.act != Edit::Act::kOther && edit.id == id;
  });
}

}  // namespace suppertide::link
