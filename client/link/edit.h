// Requests that change one document, read as what they do to a replica.
//
// CreateRecipeRequest, UpdateRecipeRequest and DeleteRecipeRequest differ in
// names only, and so do the other kinds; reports are added to an event's progress.
#pragma once

#include <google/protobuf/message.h>

#include <cstdint>
#include <memory>
#include <string>

#include "client/link/replica.h"

namespace suppertide::link {

struct Edit {
  enum class Act { kOther, kCreate, kUpdate, kDelete, kReport, kShopping };

  Act act = Act::kOther;  // kOther: what it will do is the server's to say
  std::string kind;       // "recipe"; for kReport "progress", for kShopping "shopping"
  std::string id;         // of the document; for these two of the event
  std::string etag;       // what it was made from; empty: whatever is there
};

Edit readEdit(const google::protobuf::Message& request);

// The document that a request to create carries; null for other requests.
google::protobuf::Message* mutableDocument(google::protobuf::Message& createRequest);
// Of a request to create or update; null for others.
const google::protobuf::Message* documentOf(const google::protobuf::Message& request);

// Of an answer to a request for such a document; null when it carries none.
const google::protobuf::Message* answeredDocument(const google::protobuf::Message& answer,
                                                  const std::string& kind);

// The revision that an answer says it made; 0 when it says none.
std::int64_t revisionOf(const google::protobuf::Message& answer);

// The replica's; null when it has none.
const google::protobuf::Message* documentOf(const Replica& replica, const std::string& kind,
                                            const std::string& id);
// A document's etag; empty when it was never stored.
std::string etagOf(const google::protobuf::Message& document);
// The household's revision that it was written in last; 0 when it was never stored.
std::int64_t documentRevisionOf(const google::protobuf::Message& document);
// Who wrote it last.
std::string writerOf(const google::protobuf::Message& document);
// Makes `request` apply to the document with that etag.
void aimAt(google::protobuf::Message& request, const std::string& etag);

// Gives `request` a fresh request id: it means the same, told once more.
void renew(google::protobuf::Message& request);

// What the replica will be once the server has taken `request`, as far as that can be foreseen.
// Reports and ticks that name nobody are `memberId`'s. Does nothing to documents that are not there.
void foresee(const google::protobuf::Message& request, const std::string& memberId, Replica& replica);

// Puts the document that the server answered `request` with into the replica. False: it answered with none.
bool showAnswer(const google::protobuf::Message& request, const google::protobuf::Message& answer,
                Replica& replica);

// The request that takes `request` back, with a fresh request id and no etag; `before` is the replica that it
// was made from. Null when there is no way back.
std::unique_ptr<google::protobuf::Message> inverseOf(const google::protobuf::Message& request,
                                                     const Replica& before);

}  // namespace suppertide::link
