// Get, list, create, update and delete for one kind of document; the four
// document services differ only in names.
#pragma once

#include <google/protobuf/util/field_mask_util.h>

#include <algorithm>
#include <string>
#include <vector>

#include "absl/strings/str_cat.h"
#include "server/base/ids.h"
#include "server/service/backend.h"

namespace suppertide::service {

inline constexpr int kUsualPage = 100;
inline constexpr int kMostPage = 500;

// The page size to use; 0 and above; negative ones are the caller's mistake.
inline int pageSize(int asked) {
  return asked == 0 ? kUsualPage : std::min(asked, kMostPage);
}

// A request id of 1 to 100 characters is required on every write.
inline Failure checkRequestId(const std::string& requestId) {
  if (!requestId.empty() && requestId.size() <= 100) return {};
  return invalidField("requestId", requestId.substr(0, 40),
                      "must be given, at most 100 characters, fresh for each thing meant");
}

inline storage::WriteRequest writeRequest(const Caller& caller, const std::string& method,
                                          const std::string& requestId,
                                          const google::protobuf::Message& content, bool validateOnly) {
  storage::WriteRequest write;
  write.householdId = caller.householdId;
  write.memberId = caller.memberId;
  write.requestId = requestId;
  write.fingerprint = fingerprintOf(method, content.SerializeAsString());
  write.validateOnly = validateOnly;
  return write;
}

template <typename Document>
class DocumentCalls {
 public:
  // `service` as in "RecipeService".
  DocumentCalls(Backend& backend, std::string service) : backend_(backend), service_(std::move(service)) {}

  template <typename Request>
  grpc::ServerUnaryReactor* get(grpc::CallbackServerContext* context, const Request* request,
                                const std::string& id, const char* call, Document* answer) {
    return serve(backend_, context, request, method(call), request->household_id(),
                 [this, id, answer](const Caller& caller, const Request&, const Finish& finish) {
                   const auto found = backend_.store().get(caller.householdId, {kindOf(Document()), id});
                   if (!found.ok()) return finish(notFound(found.status(), id));
                   *answer = read<Document>(*found);
                   finish({});
                 });
  }

  // `answer` has next_page_token and revision; `add` appends one document.
  template <typename Request, typename Answer, typename Add>
  grpc::ServerUnaryReactor* list(grpc::CallbackServerContext* context, const Request* request,
                                 const char* call, Answer* answer, Add add) {
    return serve(
        backend_, context, request, method(call), request->household_id(),
        [this, answer, add](const Caller& caller, const Request& asked, const Finish& finish) {
          if (asked.page_size() < 0)
            return finish(invalidField("pageSize", absl::StrCat(asked.page_size()), "must be 0 or more"));
          const auto revision = backend_.store().revision(caller.householdId);
          if (!revision.ok()) return finish(fromStorage(revision.status()));
          const int size = pageSize(asked.page_size());
          const auto found =
              backend_.store().list(caller.householdId, kindOf(Document()), asked.page_token(), size + 1);
          if (!found.ok()) return finish(fromStorage(found.status()));
          const std::size_t shown = std::min(found->size(), static_cast<std::size_t>(size));
          for (std::size_t i = 0; i < shown; ++i) add(answer, read<Document>((*found)[i]));
          if (found->size() > shown) answer->set_next_page_token((*found)[shown - 1].key.id);
          answer->set_revision(*revision);
          finish({});
        });
  }

  template <typename Request, typename Answer>
  grpc::ServerUnaryReactor* create(grpc::CallbackServerContext* context, const Request* request,
                                   const Document& given, const char* call, Answer* answer,
                                   Document* answered) {
    return serve(backend_, context, request, method(call), request->household_id(),
                 [this, given, call, answer, answered](const Caller& caller, const Request& asked,
                                                       const Finish& finish) {
                   if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed())
                     return finish(wrong);
                   Document document = given;
                   document.clear_meta();
                   if (document.id().empty()) document.set_id(newId());
                   if (const auto wrong = compose::validate(document); !wrong.empty())
                     return finish(invalid(wrong));
                   auto write =
                       writeRequest(caller, method(call), asked.request_id(), asked, asked.validate_only());
                   write.puts.push_back(putOf(document, storage::Expect::kAbsent));
                   submit(std::move(write), answer, answered, document, finish);
                 });
  }

  template <typename Request, typename Answer>
  grpc::ServerUnaryReactor* update(grpc::CallbackServerContext* context, const Request* request,
                                   const Document& given, const char* call, Answer* answer,
                                   Document* answered) {
    return serve(backend_, context, request, method(call), request->household_id(),
                 [this, given, call, answer, answered](const Caller& caller, const Request& asked,
                                                       const Finish& finish) {
                   if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed())
                     return finish(wrong);
                   Document document = given;
                   if (const Failure wrong = merge(caller, asked.update_mask(), document); wrong.failed())
                     return finish(wrong);
                   if (const auto wrong = compose::validate(document); !wrong.empty())
                     return finish(invalid(wrong));
                   auto write =
                       writeRequest(caller, method(call), asked.request_id(), asked, asked.validate_only());
                   write.puts.push_back(putOf(document, storage::Expect::kPresent));
                   submit(std::move(write), answer, answered, document, finish);
                 });
  }

  // `also`: kinds with the same id that go with it.
  template <typename Request, typename Answer>
  grpc::ServerUnaryReactor* remove(grpc::CallbackServerContext* context, const Request* request,
                                   const std::string& id, const char* call, Answer* answer,
                                   const std::vector<std::string>& also = {}) {
    return serve(
        backend_, context, request, method(call), request->household_id(),
        [this, id, call, answer, also](const Caller& caller, const Request& asked, const Finish& finish) {
          if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
          auto write = writeRequest(caller, method(call), asked.request_id(), asked, asked.validate_only());
          write.puts.push_back(
              {{kindOf(Document()), id}, "", storage::Expect::kAnything, asked.etag(), true});
          for (const std::string& kind : also)
            write.puts.push_back({{kind, id}, "", storage::Expect::kAnything, "", true});
          backend_.queue().submit(std::move(write),
                                  [answer, finish](absl::StatusOr<storage::WriteResult> result) {
                                    if (!result.ok()) return finish(fromStorage(result.status()));
                                    answer->set_revision(result->revision);
                                    finish({});
                                  });
        });
  }

  // Writes, then answers with the document as it is stored; with validate_only, as it would be.
  template <typename Answer>
  void submit(storage::WriteRequest write, Answer* answer, Document* answered, Document document,
              Finish finish) {
    const bool only = write.validateOnly;
    backend_.queue().submit(std::move(write), [answer, answered, document, finish,
                                               only](absl::StatusOr<storage::WriteResult> result) {
      if (!result.ok()) return finish(fromStorage(result.status()));
      *answered = only || result->documents.empty() ? document : read<Document>(result->documents.front());
      answer->set_revision(result->revision);
      finish({});
    });
  }

  // Fills `document`, of which the mask's fields were given, from what is stored.
  Failure merge(const Caller& caller, const google::protobuf::FieldMask& mask, Document& document) {
    if (mask.paths().empty()) return {};
    if (!google::protobuf::util::FieldMaskUtil::IsValidFieldMask<Document>(mask))
      return invalidField("updateMask", google::protobuf::util::FieldMaskUtil::ToString(mask),
                          "names a field that the document does not have");
    const auto found = backend_.store().get(caller.householdId, {kindOf(Document()), document.id()});
    if (!found.ok()) return notFound(found.status(), document.id());
    Document merged = read<Document>(*found);
    const std::string etag = document.meta().etag().empty() ? merged.meta().etag() : document.meta().etag();
    google::protobuf::FieldMask taken;
    for (const std::string& path : mask.paths())
      if (path != "id" && path != "meta" && path.rfind("meta.", 0) != 0) taken.add_paths(path);
    google::protobuf::util::FieldMaskUtil::MergeOptions options;
    options.set_replace_message_fields(true);
    options.set_replace_repeated_fields(true);
    google::protobuf::util::FieldMaskUtil::MergeMessageTo(document, taken, options, &merged);
    merged.mutable_meta()->set_etag(etag);
    document = std::move(merged);
    return {};
  }

 private:
  std::string method(const char* call) const { return absl::StrCat(service_, "/", call); }

  static Failure notFound(const absl::Status& status, const std::string& id) {
    if (status.code() != absl::StatusCode::kNotFound) return fromStorage(status);
    Failure out = failure(absl::NotFoundError(absl::StrCat("there is no ", kindOf(Document()), " '", id,
                                                           "' in this household")),
                          "NO_SUCH_DOCUMENT");
    (*out.detail.mutable_metadata())["id"] = id;
    return out;
  }

  Backend& backend_;
  std::string service_;
};

}  // namespace suppertide::service
