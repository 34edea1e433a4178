#include "server/service/documents.h"

namespace suppertide::service {

v1::DocumentMeta metaOf(const storage::Document& document) {
  v1::DocumentMeta meta;
  meta.set_etag(document.etag);
  meta.set_revision(document.revision);
  meta.mutable_create_time()->set_seconds(document.createTime.time_since_epoch().count());
  meta.mutable_update_time()->set_seconds(document.updateTime.time_since_epoch().count());
  meta.set_updated_by_member_id(document.memberId);
  return meta;
}

const v1::Member* memberOf(const v1::Household& household, const std::string& id) {
  for (const v1::Member& member : household.members())
    if (member.id() == id) return &member;
  return nullptr;
}

v1::Change changeOf(const storage::Document& document) {
  v1::Change change;
  const std::string& kind = document.key.kind;
  if (document.deleted) {
    change.mutable_deleted()->set_kind(kind);
    change.mutable_deleted()->set_id(document.key.id);
  } else if (kind == "household") {
    *change.mutable_household() = read<v1::Household>(document);
  } else if (kind == "kitchen") {
    *change.mutable_kitchen() = read<v1::Kitchen>(document);
  } else if (kind == "starter") {
    *change.mutable_starter() = read<v1::Starter>(document);
  } else if (kind == "recipe") {
    *change.mutable_recipe() = read<v1::Recipe>(document);
  } else if (kind == "event") {
    *change.mutable_event() = read<v1::Event>(document);
  } else if (kind == "plan") {
    *change.mutable_plan() = read<v1::Plan>(document);
  } else if (kind == "progress") {
    *change.mutable_progress() = read<v1::Progress>(document);
  } else if (kind == "plan_proposal") {
    *change.mutable_plan_proposal() = read<v1::PlanProposal>(document);
  } else if (kind == "reminder_log") {
    *change.mutable_reminder_log() = read<v1::ReminderLog>(document);
  } else if (kind == "review") {
    *change.mutable_review() = read<v1::Review>(document);
  } else if (kind == "calendar_address") {
    *change.mutable_calendar_address() = read<v1::CalendarAddress>(document);
    change.mutable_calendar_address()->clear_secret_hash();
  } else if (kind == "shopping") {
    *change.mutable_shopping() = read<v1::Shopping>(document);
  }
  return change;
}

}  // namespace suppertide::service
