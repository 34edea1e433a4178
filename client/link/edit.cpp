#include "client/link/edit.h"

#include <google/protobuf/descriptor.h>
#include <google/protobuf/util/field_mask_util.h>

#include <algorithm>

#include "absl/strings/ascii.h"
#include "client/link/replica_changes.h"
#include "client/link/request_id.h"
#include "client/link/shopping_edit.h"
#include "suppertide/v1/progress_service.pb.h"
#include "suppertide/v1/sync_service.pb.h"

namespace suppertide::link {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

const FieldDescriptor* fieldOf(const Message& message, const std::string& name) {
  return message.GetDescriptor()->FindFieldByName(name);
}

std::string textOf(const Message& message, const std::string& name) {
  const FieldDescriptor* field = fieldOf(message, name);
  const bool text = field != nullptr && field->cpp_type() == FieldDescriptor::CPPTYPE_STRING;
  return text && !field->is_repeated() ? message.GetReflection()->GetString(message, field) : std::string();
}

void setText(Message& message, const std::string& name, const std::string& value) {
  const FieldDescriptor* field = fieldOf(message, name);
  if (field != nullptr) message.GetReflection()->SetString(&message, field, value);
}

const Message* partOf(const Message& message, const std::string& name) {
  const FieldDescriptor* field = fieldOf(message, name);
  const bool part = field != nullptr && field->cpp_type() == FieldDescriptor::CPPTYPE_MESSAGE;
  return part && !field->is_repeated() && message.GetReflection()->HasField(message, field)
             ? &message.GetReflection()->GetMessage(message, field)
             : nullptr;
}

Message* mutablePartOf(Message& message, const std::string& name) {
  return message.GetReflection()->MutableMessage(&message, fieldOf(message, name));
}

bool takeAffix(std::string& name, const std::string& front, const std::string& back) {
  if (name.rfind(front, 0) != 0 || name.size() < front.size() + back.size()) return false;
  if (name.compare(name.size() - back.size(), back.size(), back) != 0) return false;
  name = name.substr(front.size(), name.size() - front.size() - back.size());
  return true;
}

// Whether replicas have such documents.
bool isKind(const std::string& kind) {
  const FieldDescriptor* field = v1::Change::descriptor()->FindFieldByName(kind);
  return field != nullptr && kind != "deleted";
}

template <class Documents>
const Message* find(const Documents& documents, const std::string& id) {
  const auto found = documents.find(id);
  return found == documents.end() ? nullptr : &found->second;
}

void put(const std::string& kind, const Message& document, Replica& replica) {
  v1::Change change;
  mutablePartOf(change, kind)->CopyFrom(document);
  applyChange(change, replica);
}

void erase(const Edit& edit, Replica& replica) {
  v1::Change change;
  change.mutable_deleted()->set_kind(edit.kind);
  change.mutable_deleted()->set_id(edit.id);
  applyChange(change, replica);
}

// As the server merges: fields of the mask replace, `id` and `meta` stay.
void merge(const Message& request, const Message& document, Message& merged) {
  google::protobuf::FieldMask taken;
  if (const Message* mask = partOf(request, "update_mask"); mask != nullptr) taken.CopyFrom(*mask);
  if (taken.paths().empty()) {
    const std::unique_ptr<Message> meta(partOf(merged, "meta") == nullptr ? nullptr
                                                                          : partOf(merged, "meta")->New());
    if (meta != nullptr) meta->CopyFrom(*partOf(merged, "meta"));
    merged.CopyFrom(document);
    if (meta != nullptr) mutablePartOf(merged, "meta")->CopyFrom(*meta);
    return;
  }
  auto* paths = taken.mutable_paths();
  paths->erase(std::remove_if(paths->begin(), paths->end(),
                              [](const std::string& path) {
                                return path == "id" || path == "meta" || path.rfind("meta.", 0) == 0;
                              }),
               paths->end());
  google::protobuf::util::FieldMaskUtil::MergeOptions options;
  options.set_replace_message_fields(true);
  options.set_replace_repeated_fields(true);
  google::protobuf::util::FieldMaskUtil::MergeMessageTo(document, taken, options, &merged);
}

void addReports(const v1::AddReportsRequest& request, const std::string& memberId, Replica& replica) {
  if (replica.events.count(request.event_id()) == 0) return;
  v1::Progress& progress = replica.progresses[request.event_id()];
  progress.set_id(request.event_id());
  for (const v1::Report& report : request.reports()) {
    const bool known = std::any_of(progress.reports().begin(), progress.reports().end(),
                                   [&](const v1::Report& other) { return other.id() == report.id(); });
    if (known) continue;
    v1::Report& added = *progress.add_reports();
    added = report;
    if (added.member_id().empty()) added.set_member_id(memberId);
  }
}

std::unique_ptr<Message> newRequest(const std::string& act, const std::string& kind) {
  std::string noun = kind;
  noun[0] = absl::ascii_toupper(static_cast<unsigned char>(noun[0]));
  const auto* type = google::protobuf::DescriptorPool::generated_pool()->FindMessageTypeByName(
      "suppertide.v1." + act + noun + "Request");
  if (type == nullptr) return nullptr;
  std::unique_ptr<Message> request(
      google::protobuf::MessageFactory::generated_factory()->GetPrototype(type)->New());
  setText(*request, "request_id", newRequestId());
  return request;
}

// Writes a whole document back, with `act` Create or Update.
std::unique_ptr<Message> wholeDocument(const std::string& act, const std::string& kind,
                                       const Message& document, const std::string& householdId) {
  auto request = newRequest(act, kind);
  if (request == nullptr) return nullptr;
  mutablePartOf(*request, kind)->CopyFrom(document);
  Message& copy = *mutablePartOf(*request, kind);
  copy.GetReflection()->ClearField(&copy, fieldOf(copy, "meta"));
  setText(*request, "household_id", householdId);
  return request;
}

// Writes back the fields that `request` changes.
std::unique_ptr<Message> formerFields(const Message& request, const std::string& kind,
                                      const Message& document, const std::string& householdId) {
  auto undo = wholeDocument("Update", kind, document, householdId);
  const Message* mask = partOf(request, "update_mask");
  if (undo != nullptr && mask != nullptr) mutablePartOf(*undo, "update_mask")->CopyFrom(*mask);
  return undo;
}

std::unique_ptr<Message> undoneReports(const v1::AddReportsRequest& request) {
  auto undo = std::make_unique<v1::AddReportsRequest>();
  undo->set_household_id(request.household_id());
  undo->set_event_id(request.event_id());
  undo->set_request_id(newRequestId());
  for (auto report = request.reports().rbegin(); report != request.reports().rend(); ++report) {
    if (report->what_case() == v1::Report::kUndoneReportId) return nullptr;
    v1::Report& back = *undo->add_reports();
    back.set_id(newRequestId());
    back.set_dish_id(report->dish_id());
    back.set_step_id(report->step_id());
    back.set_member_id(report->member_id());
    *back.mutable_happen_time() = report->happen_time();
    back.set_undone_report_id(report->id());
  }
  return undo;
}

}  // namespace

Edit readEdit(const Message& request) {
  Edit edit;
  if (const auto* reports = dynamic_cast<const v1::AddReportsRequest*>(&request); reports != nullptr) {
    edit.act = Edit::Act::kReport;
    edit.kind = "progress";
    edit.id = reports->event_id();
    return edit;
  }
  if (const auto* shopping = dynamic_cast<const v1::EditShoppingRequest*>(&request); shopping != nullptr) {
    edit.act = Edit::Act::kShopping;
    edit.kind = "shopping";
    edit.id = shopping->event_id();
    return edit;
  }
  const std::string type = request.GetDescriptor()->name();
  const auto reads = [&](const char* front, Edit::Act act) {
    std::string kind = type;
    if (!takeAffix(kind, front, "Request")) return false;
    absl::AsciiStrToLower(&kind);
    const bool deletes = act == Edit::Act::kDelete;
    if (!isKind(kind) || fieldOf(request, deletes ? kind + "_id" : kind) == nullptr) return false;
    edit.act = act;
    edit.kind = kind;
    if (deletes) {
      edit.id = textOf(request, kind + "_id");
      edit.etag = textOf(request, "etag");
    } else if (const Message* document = partOf(request, kind); document != nullptr) {
      edit.id = textOf(*document, "id");
      edit.etag = etagOf(*document);
    }
    return true;
  };
  if (reads("Create", Edit::Act::kCreate) || reads("Update", Edit::Act::kUpdate) ||
      reads("Delete", Edit::Act::kDelete))
    return edit;
  return {};
}

Message* mutableDocument(Message& createRequest) {
  const Edit edit = readEdit(createRequest);
  return edit.act == Edit::Act::kCreate ? mutablePartOf(createRequest, edit.kind) : nullptr;
}

const Message* documentOf(const Message& request) {
  const Edit edit = readEdit(request);
  return edit.act == Edit::Act::kCreate || edit.act == Edit::Act::kUpdate ? partOf(request, edit.kind)
                                                                          : nullptr;
}

const Message* answeredDocument(const Message& answer, const std::string& kind) {
  return partOf(answer, kind);
}

std::int64_t revisionOf(const Message& answer) {
  const auto* field = answer.GetDescriptor()->FindFieldByName("revision");
  const bool number = field != nullptr && field->cpp_type() == FieldDescriptor::CPPTYPE_INT64;
  return number ? answer.GetReflection()->GetInt64(answer, field) : 0;
}

const Message* documentOf(const Replica& replica, const std::string& kind, const std::string& id) {
  if (kind == "household") return replica.household.id() == id ? &replica.household : nullptr;
  if (kind == "kitchen") return find(replica.kitchens, id);
  if (kind == "starter") return find(replica.starters, id);
  if (kind == "recipe") return find(replica.recipes, id);
  if (kind == "event") return find(replica.events, id);
  if (kind == "plan") return find(replica.plans, id);
  if (kind == "progress") return find(replica.progresses, id);
  if (kind == "shopping") return find(replica.shoppings, id);
  return nullptr;
}

std::string etagOf(const Message& document) {
  const Message* meta = partOf(document, "meta");
  return meta == nullptr ? std::string() : textOf(*meta, "etag");
}

std::int64_t documentRevisionOf(const Message& document) {
  const Message* meta = partOf(document, "meta");
  return meta == nullptr ? 0 : revisionOf(*meta);
}

std::string writerOf(const Message& document) {
  const Message* meta = partOf(document, "meta");
  return meta == nullptr ? std::string() : textOf(*meta, "updated_by_member_id");
}

void aimAt(Message& request, const std::string& etag) {
  const Edit edit = readEdit(request);
  if (edit.act == Edit::Act::kDelete) setText(request, "etag", etag);
  if (edit.act != Edit::Act::kUpdate) return;
  Message& document = *mutablePartOf(request, edit.kind);
  setText(*mutablePartOf(document, "meta"), "etag", etag);
}

void renew(Message& request) {
  setText(request, "request_id", newRequestId());
}

void foresee(const Message& request, const std::string& memberId, Replica& replica) {
  const Edit edit = readEdit(request);
  if (edit.act == Edit::Act::kReport)
    addReports(static_cast<const v1::AddReportsRequest&>(request), memberId, replica);
  if (edit.act == Edit::Act::kShopping && replica.events.count(edit.id) > 0)
    editShopping(static_cast<const v1::EditShoppingRequest&>(request), memberId, replica.shoppings[edit.id]);
  if (edit.act == Edit::Act::kDelete) erase(edit, replica);
  const Message* document = documentOf(request);
  if (document == nullptr) return;
  const Message* there = documentOf(replica, edit.kind, edit.id);
  if (edit.act == Edit::Act::kCreate && there == nullptr) put(edit.kind, *document, replica);
  if (edit.act != Edit::Act::kUpdate || there == nullptr) return;
  const std::unique_ptr<Message> merged(there->New());
  merged->CopyFrom(*there);
  merge(request, *document, *merged);
  put(edit.kind, *merged, replica);
}

bool showAnswer(const Message& request, const Message& answer, Replica& replica) {
  const Edit edit = readEdit(request);
  const Message* document = answeredDocument(answer, edit.kind);
  if (document == nullptr || !isKind(edit.kind)) return false;
  put(edit.kind, *document, replica);
  return true;
}

std::unique_ptr<Message> inverseOf(const Message& request, const Replica& before) {
  const Edit edit = readEdit(request);
  const std::string householdId = textOf(request, "household_id");
  const Message* there = documentOf(before, edit.kind, edit.id);
  switch (edit.act) {
    case Edit::Act::kReport:
      return undoneReports(static_cast<const v1::AddReportsRequest&>(request));
    case Edit::Act::kUpdate:
      return there == nullptr ? nullptr : formerFields(request, edit.kind, *there, householdId);
    case Edit::Act::kDelete:
      return there == nullptr ? nullptr : wholeDocument("Create", edit.kind, *there, householdId);
    case Edit::Act::kCreate: {
      auto undo = newRequest("Delete", edit.kind);
      if (undo == nullptr) return nullptr;
      setText(*undo, edit.kind + "_id", edit.id);
      setText(*undo, "household_id", householdId);
      return undo;
    }
    case Edit::Act::kShopping:
      return inverseShopping(static_cast<const v1::EditShoppingRequest&>(request),
                             static_cast<const v1::Shopping*>(there));
    case Edit::Act::kOther:
      return nullptr;
  }
  return nullptr;
}

}  // namespace suppertide::link
