#include "client/kitchen/document_kind.h"

#include <google/protobuf/descriptor.h>
#include <google/protobuf/util/field_mask_util.h>

#include <QtCore/qcoreapplication.h>

#include "client/link/edit.h"
#include "client/link/request_id.h"
#include "client/link/session.h"

namespace suppertide {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::FieldMask;
using google::protobuf::Message;
using google::protobuf::util::FieldMaskUtil;

std::string freshId(const std::string& prefix) {
  return prefix + "-" + link::newRequestId().substr(0, 8);
}

std::string stringOf(const Message& message, const char* name) {
  const FieldDescriptor* field = message.GetDescriptor()->FindFieldByName(name);
  return field == nullptr ? std::string() : message.GetReflection()->GetString(message, field);
}

v1::DocumentMeta metaOf(const Message& document) {
  const FieldDescriptor* field = document.GetDescriptor()->FindFieldByName("meta");
  v1::DocumentMeta meta;
  if (field != nullptr) meta.CopyFrom(document.GetReflection()->GetMessage(document, field));
  return meta;
}

QString tr(const char* text) {
  return QCoreApplication::translate("suppertide::Document", text);
}

void fill(v1::Kitchen& kitchen) {
  kitchen.set_burner_count(4);
  fillUsual(*kitchen.add_ovens(), kitchen);
  kitchen.mutable_ovens(0)->set_display_name(
      tr(QT_TRANSLATE_NOOP("suppertide::Document", "Oven")).toStdString());
  struct Usual {
    const char* id;
    const char* name;
    v1::PlaceKind kind;
    double celsius;
  };
  for (const Usual& usual :
       {Usual{"counter", QT_TRANSLATE_NOOP("suppertide::Document", "Counter"), v1::PLACE_KIND_COUNTER, 21},
        Usual{"fridge", QT_TRANSLATE_NOOP("suppertide::Document", "Fridge"), v1::PLACE_KIND_FRIDGE, 4},
        Usual{"freezer", QT_TRANSLATE_NOOP("suppertide::Document", "Freezer"), v1::PLACE_KIND_FREEZER,
              -18}}) {
    v1::Place& place = *kitchen.add_places();
    place.set_id(usual.id);
    place.set_display_name(tr(usual.name).toStdString());
    place.set_kind(usual.kind);
    place.mutable_temperature()->add_celsius(usual.celsius);
  }
}

template <class Request, class Doc>
DocumentPtr create(const Message& document, Doc* (Request::*mutableDoc)(), bool validateOnly) {
  auto request = std::make_unique<Request>();
  (request.get()->*mutableDoc)()->CopyFrom(document);
  request->set_validate_only(validateOnly);
  return request;
}

template <class Request, class Doc>
DocumentPtr update(const Message& document, Doc* (Request::*mutableDoc)(), const QStringList& fields,
                   bool validateOnly) {
  auto request = std::make_unique<Request>();
  (request.get()->*mutableDoc)()->CopyFrom(document);
  for (const QString& field : fields) request->mutable_update_mask()->add_paths(field.toStdString());
  request->set_validate_only(validateOnly);
  return request;
}

DocumentPtr remove(DocumentPtr request, const char* idField, const std::string& id, const std::string& etag) {
  const auto* type = request->GetDescriptor();
  request->GetReflection()->SetString(request.get(), type->FindFieldByName(idField), id);
  request->GetReflection()->SetString(request.get(), type->FindFieldByName("etag"), etag);
  return request;
}

}  // namespace

DocumentPtr makeDocument(Document::Kind kind) {
  switch (kind) {
    case Document::Kitchen:
      return std::make_unique<v1::Kitchen>();
    case Document::Starter:
      return std::make_unique<v1::Starter>();
    case Document::Recipe:
      break;
  }
  return std::make_unique<v1::Recipe>();
}

DocumentPtr newDocument(Document::Kind kind) {
  DocumentPtr document = makeDocument(kind);
  if (auto* recipe = dynamic_cast<v1::Recipe*>(document.get())) {
    recipe->set_id(freshId("recipe"));
    recipe->set_serving_count(8);
  } else if (auto* starter = dynamic_cast<v1::Starter*>(document.get())) {
    starter->set_id(freshId("starter"));
    starter->set_hydration_percent(100);
    starter->set_condition(v1::STARTER_CONDITION_MATURE);
    starter->set_vigour(1);
  } else {
    auto& kitchen = static_cast<v1::Kitchen&>(*document);
    kitchen.set_id(freshId("kitchen"));
    fill(kitchen);
  }
  return document;
}

void fillUsual(Message& member, const Message& document) {
  if (auto* oven = dynamic_cast<v1::Oven*>(&member)) {
    oven->set_id(freshId("oven"));
    oven->set_min_setpoint_celsius(50);
    oven->set_max_setpoint_celsius(250);
    oven->set_setpoint_step_celsius(5);
    for (int rack = 0; rack < 3; ++rack) oven->add_rack_clear_height_mm(90);
    oven->set_shelf_width_mm(440);
    oven->set_shelf_depth_mm(360);
  } else if (auto* place = dynamic_cast<v1::Place*>(&member)) {
    place->set_id(freshId("place"));
    place->set_kind(v1::PLACE_KIND_COUNTER);
    place->mutable_temperature()->add_celsius(21);
  } else if (auto* equipment = dynamic_cast<v1::Equipment*>(&member)) {
    equipment->set_id(freshId("thing"));
    equipment->set_count(1);
  } else if (auto* step = dynamic_cast<v1::Step*>(&member)) {
    step->set_id(freshId("step"));
    step->set_kind(v1::STEP_KIND_HANDS_ON);
    step->mutable_duration()->mutable_likely()->set_seconds(600);
  } else if (auto* use = dynamic_cast<v1::EquipmentUse*>(&member)) {
    use->set_count(1);
  } else if (auto* reading = dynamic_cast<v1::HeatReading*>(&member)) {
    reading->set_celsius(21);
  } else if (auto* after = dynamic_cast<v1::After*>(&member)) {
    const auto* recipe = dynamic_cast<const v1::Recipe*>(&document);
    if (recipe != nullptr && recipe->steps_size() > 0) after->set_step_id(recipe->steps(0).id());
  }
}

const Message* findDocument(const link::Replica& replica, Document::Kind kind, const std::string& id) {
  const auto find = [&](const auto& documents) -> const Message* {
    const auto found = documents.find(id);
    return found == documents.end() ? nullptr : &found->second;
  };
  switch (kind) {
    case Document::Recipe:
      return find(replica.recipes);
    case Document::Kitchen:
      return find(replica.kitchens);
    case Document::Starter:
      return find(replica.starters);
  }
  return nullptr;
}

std::string idOf(const Message& document) {
  return stringOf(document, "id");
}

std::string nameOf(const Message& document) {
  return stringOf(document, "display_name");
}

std::string etagOf(const Message& document) {
  return metaOf(document).etag();
}

std::string writerOf(const Message& document) {
  return metaOf(document).updated_by_member_id();
}

void copyField(const Message& from, const std::string& name, Message& to) {
  const FieldDescriptor* field = to.GetDescriptor()->FindFieldByName(name);
  if (field == nullptr) return;
  const DocumentPtr copy(from.New());
  copy->CopyFrom(from);
  to.GetReflection()->SwapFields(&to, copy.get(), {field});
}

QStringList differingFields(const Message& a, const Message& b) {
  QStringList names;
  for (int i = 0; i < a.GetDescriptor()->field_count(); ++i) {
    const FieldDescriptor* field = a.GetDescriptor()->field(i);
    if (field->name() == "id" || field->name() == "meta") continue;
    const DocumentPtr onlyA(a.New()), onlyB(a.New());
    copyField(a, field->name(), *onlyA);
    copyField(b, field->name(), *onlyB);
    if (onlyA->SerializeAsString() != onlyB->SerializeAsString())
      names += QString::fromStdString(field->name());
  }
  return names;
}

DocumentPtr createRequest(Document::Kind kind, const Message& document, bool validateOnly) {
  switch (kind) {
    case Document::Kitchen:
      return create(document, &v1::CreateKitchenRequest::mutable_kitchen, validateOnly);
    case Document::Starter:
      return create(document, &v1::CreateStarterRequest::mutable_starter, validateOnly);
    case Document::Recipe:
      break;
  }
  return create(document, &v1::CreateRecipeRequest::mutable_recipe, validateOnly);
}

DocumentPtr updateRequest(Document::Kind kind, const Message& document, const QStringList& fields,
                          bool validateOnly) {
  switch (kind) {
    case Document::Kitchen:
      return update(document, &v1::UpdateKitchenRequest::mutable_kitchen, fields, validateOnly);
    case Document::Starter:
      return update(document, &v1::UpdateStarterRequest::mutable_starter, fields, validateOnly);
    case Document::Recipe:
      break;
  }
  return update(document, &v1::UpdateRecipeRequest::mutable_recipe, fields, validateOnly);
}

QStringList maskedFields(const Message& request) {
  const auto* mask = request.GetDescriptor()->FindFieldByName("update_mask");
  QStringList fields;
  if (mask != nullptr) {
    FieldMask wanted;
    wanted.CopyFrom(request.GetReflection()->GetMessage(request, mask));
    for (const std::string& path : wanted.paths()) fields += QString::fromStdString(path);
  }
  const Message* document = link::documentOf(request);
  if (!fields.isEmpty() || document == nullptr) return fields;
  const DocumentPtr nothing(document->New());
  return differingFields(*nothing, *document);
}

std::optional<Document::Kind> kindOf(const Message& request) {
  const std::string kind = link::readEdit(request).kind;
  if (kind == "recipe") return Document::Recipe;
  if (kind == "kitchen") return Document::Kitchen;
  if (kind == "starter") return Document::Starter;
  return std::nullopt;
}

DocumentPtr deleteRequest(Document::Kind kind, const std::string& id, const std::string& etag) {
  switch (kind) {
    case Document::Kitchen:
      return remove(std::make_unique<v1::DeleteKitchenRequest>(), "kitchen_id", id, etag);
    case Document::Starter:
      return remove(std::make_unique<v1::DeleteStarterRequest>(), "starter_id", id, etag);
    case Document::Recipe:
      break;
  }
  return remove(std::make_unique<v1::DeleteRecipeRequest>(), "recipe_id", id, etag);
}

}  // namespace suppertide
