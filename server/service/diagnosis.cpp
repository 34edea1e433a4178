#include "server/service/diagnosis.h"

#include <google/protobuf/unknown_field_set.h>

#include <memory>

#include "absl/strings/str_cat.h"
#include "server/compose/validate.h"
#include "server/service/documents.h"

namespace suppertide::service {
namespace {

// One household's documents on their way into a bundle.
class Examination {
 public:
  explicit Examination(Diagnosis& diagnosis) : diagnosis_(diagnosis) {}

  void look(const std::string& householdId, const storage::Document& document) {
    if (householdId != householdId_) finish();
    householdId_ = householdId;
    const std::string& kind = document.key.kind;
    if (kind == "household") return take(document, bundle_.mutable_household());
    if (kind == "kitchen") return take(document, bundle_.add_kitchens());
    if (kind == "starter") return take(document, bundle_.add_starters());
    if (kind == "recipe") return take(document, bundle_.add_recipes());
    if (kind == "event") return take(document, bundle_.add_events());
    if (kind == "plan") return take(document, bundle_.add_plans());
    if (kind == "progress") return take(document, bundle_.add_progresses());
    if (kind == "review") return take(document, bundle_.add_reviews());
    if (kind == "plan_proposal") return read<v1::PlanProposal>(document);
    if (kind == "reminder_log") return read<v1::ReminderLog>(document);
    if (kind == "calendar_address") return read<v1::CalendarAddress>(document);
    if (kind == "shopping") return take(document, bundle_.add_shoppings());
    say(document, "is of a kind that this program does not know");
  }

  // The household as a whole: what its documents say of each other.
  void finish() {
    if (householdId_.empty()) return;
    diagnosis_.householdNames[householdId_] = bundle_.household().display_name();
    for (const v1::FieldViolation& violation : compose::validate(bundle_, false))
      diagnosis_.documents.push_back(absl::StrCat("household ", householdId_, ": ", violation.field_path(),
                                                  " (", violation.value(), ") ", violation.description()));
    bundle_.Clear();
    householdId_.clear();
  }

 private:
  template <typename Message>
  void take(const storage::Document& document, Message* into) {
    if (!into->ParseFromString(document.bytes)) return say(document, "cannot be read");
    if (into->id() != document.key.id) say(document, absl::StrCat("calls itself ", into->id()));
    if (!into->GetReflection()->GetUnknownFields(*into).empty())
      say(document, "holds something that only a newer program knows");
  }
  // A document that no other refers to.
  template <typename Message>
  void read(const storage::Document& document) {
    Message message;
    take(document, &message);
  }
  void say(const storage::Document& document, const std::string& what) {
    diagnosis_.documents.push_back(
        absl::StrCat("household ", householdId_, ": ", document.key.kind, " ", document.key.id, " ", what));
  }

  Diagnosis& diagnosis_;
  std::string householdId_;
  v1::Bundle bundle_;
};

}  // namespace

absl::StatusOr<Diagnosis> diagnose(const std::string& dataFile) {
  auto inspection = storage::inspect(dataFile);
  if (!inspection.ok()) return inspection.status();
  Diagnosis diagnosis;
  diagnosis.file = *std::move(inspection);
  Examination examination(diagnosis);
  const absl::Status status = storage::forEachDocument(
      dataFile, [&](const std::string& householdId, const storage::Document& document) {
        examination.look(householdId, document);
      });
  examination.finish();
  // What is too damaged to be read was found by the inspection already.
  if (!status.ok() && diagnosis.file.damages.empty()) return status;
  return diagnosis;
}

}  // namespace suppertide::service
