// Document messages against the bytes that storage keeps: `meta` is stamped on
// reading from storage's columns and never stored.
#pragma once

#include <memory>
#include <string>
#include <utility>

#include "server/storage/store.h"
#include "suppertide/v1/bundle.pb.h"
#include "suppertide/v1/sync_service.pb.h"

namespace suppertide::service {

inline const char* kindOf(const v1::Household&) {
  return "household";
}
inline const char* kindOf(const v1::Kitchen&) {
  return "kitchen";
}
inline const char* kindOf(const v1::Starter&) {
  return "starter";
}
inline const char* kindOf(const v1::Recipe&) {
  return "recipe";
}
inline const char* kindOf(const v1::Event&) {
  return "event";
}
inline const char* kindOf(const v1::Plan&) {
  return "plan";
}
inline const char* kindOf(const v1::Progress&) {
  return "progress";
}
inline const char* kindOf(const v1::PlanProposal&) {
  return "plan_proposal";
}
inline const char* kindOf(const v1::ReminderLog&) {
  return "reminder_log";
}
inline const char* kindOf(const v1::Review&) {
  return "review";
}
inline const char* kindOf(const v1::CalendarAddress&) {
  return "calendar_address";
}
inline const char* kindOf(const v1::Shopping&) {
  return "shopping";
}

// How many a household may have of a kind.
inline constexpr int kMostKitchens = 10;
inline constexpr int kMostStarters = 20;
inline constexpr int kMostRecipes = 1000;
inline constexpr int kMostEvents = 200;

v1::DocumentMeta metaOf(const storage::Document& document);

template <typename Message>
Message read(const storage::Document& document) {
  Message message;
  message.ParseFromString(document.bytes);
  *message.mutable_meta() = metaOf(document);
  return message;
}

template <typename Message>
storage::Put putOf(const Message& message, storage::Expect expect = storage::Expect::kAnything) {
  Message stripped = message;
  stripped.clear_meta();
  return {
      {kindOf(message), message.id()}, stripped.SerializeAsString(), expect, message.meta().etag(), false};
}

// As putOf(), without a copy.
template <typename Message>
storage::Put putOfOwn(Message& message, storage::Expect expect) {
  storage::Put put{{kindOf(message), message.id()}, "", expect, message.meta().etag(), false};
  const std::unique_ptr<v1::DocumentMeta> meta(message.release_meta());
  put.bytes = message.SerializeAsString();
  if (meta != nullptr) *message.mutable_meta() = std::move(*meta);
  return put;
}

// Null when the household has no such member.
const v1::Member* memberOf(const v1::Household& household, const std::string& id);

// For a watcher; a tombstone becomes DeletedDocument.
v1::Change changeOf(const storage::Document& document);

}  // namespace suppertide::service
