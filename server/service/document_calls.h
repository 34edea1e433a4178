// Get, list, create, update and delete for one kind of document; the four
// document services differ only in names.
#pragma once

#include <google/protobuf/util/field_mask_util.h>

#include <algorithm>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "absl/strings/str_cat.h"
#include "server/base/ids.h"
#include "server/service/backend.h"

namespace suppertide::service {

inline constexpr int kUsualPage = 100;
inline constexpr int kMostPage = 500;
inline constexpr int kAnyNumber = 0;
inline constexpr int kMostTries = 5;  // when others write at the same time

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
  write.fingerprint = fingerprintOf(method, content);
  write.validateOnly = validateOnly;
  return write;
}

// What is refused now may be the repeat of what was carried out before the
// household changed; then its outcome is due. So storage is asked all the
// same, but with an etag that no document has.
inline void neverCarryOut(storage::WriteRequest& request) {
  for (storage::Put& put : request.puts) {
    put.expect = storage::Expect::kPresent;
    put.etag = "none";
  }
}

template <typename Document>
class DocumentCalls {
 public:
  // What else must hold of a document that is to be written. May read the disk.
  using AlsoCheck = std::function<Failure(const Caller&, const Document&)>;

  // `service` as in "RecipeService"; a household has at most `most` of the kind.
  DocumentCalls(Backend& backend, std::string service, int most = kAnyNumber, AlsoCheck also = nullptr)
      : backend_(backend), service_(std::move(service)), most_(most), also_(std::move(also)) {}

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

  // `given` is in the request, and lives as long.
  template <typename Request, typename Answer>
  grpc::ServerUnaryReactor* create(grpc::CallbackServerContext* context, const Request* request,
                                   const Document& given, const char* call, Answer* answer,
                                   Document* answered) {
    return createFrom(context, request, call, answer, answered,
                      [&given](const Caller&, const Request&, Document& document) {
                        document = given;
                        return Failure();
                      });
  }

  // As create(), with a document that `make` makes once the caller is admitted. It may read the disk.
  template <typename Request, typename Answer, typename Make>
  grpc::ServerUnaryReactor* createFrom(grpc::CallbackServerContext* context, const Request* request,
                                       const char* call, Answer* answer, Document* answered, Make make) {
    return serve(backend_, context, request, method(call), request->household_id(),
                 [=, this](const Caller& caller, const Request& asked, const Finish& finish) {
                   Document document;
                   if (const Failure wrong = make(caller, asked, document); wrong.failed())
                     return finish(wrong);
                   document.clear_meta();
                   if (document.id().empty()) document.set_id(newId());
                   const auto writing = writingOf(caller, asked, method(call), answer, answered, finish);
                   writing->made = std::move(document);
                   writing->expect = storage::Expect::kAbsent;
                   writing->prepare = [this, caller](Document& made) {
                     const Failure wrong = check(caller, made);
                     return wrong.failed() ? wrong : checkRoom(caller);
                   };
                   write(writing);
                 });
  }

  // `given` is in the request, and lives as long.
  template <typename Request, typename Answer>
  grpc::ServerUnaryReactor* update(grpc::CallbackServerContext* context, const Request* request,
                                   const std::string& householdId, const Document& given, const char* call,
                                   Answer* answer, Document* answered) {
    return serve(backend_, context, request, method(call), householdId,
                 [this, call, answer, answered, &given](const Caller& caller, const Request& asked,
                                                        const Finish& finish) {
                   const auto writing = writingOf(caller, asked, method(call), answer, answered, finish);
                   writing->given = &given;
                   writing->expect = storage::Expect::kPresent;
                   writing->prepare = [this, caller, &mask = asked.update_mask()](Document& made) {
                     const Failure wrong = merge(caller, mask, made);
                     return wrong.failed() ? wrong : check(caller, made);
                   };
                   write(writing);
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
          backend_.queue().writeNow(std::move(write),
                                    [answer, finish](absl::StatusOr<storage::WriteResult> result) {
                                      if (!result.ok()) return finish(fromStorage(result.status()));
                                      answer->set_revision(result->revision);
                                      finish({});
                                    });
        });
  }

 private:
  // Makes the document to store out of the one given; what is wrong refuses the write.
  using Prepare = std::function<Failure(Document&)>;

  // One create or update under way.
  struct Writing {
    storage::WriteRequest request;
    Failure wrong;  // found before anything was read
    Document* answered;
    std::function<void(std::int64_t)> setRevision;
    Finish finish;
    Document made;                    // where there is nothing in the request
    const Document* given = nullptr;  // in the request; null: `made` instead
    storage::Expect expect = storage::Expect::kAnything;
    Prepare prepare;
    int triesLeft = kMostTries;
  };

  template <typename Request, typename Answer>
  std::shared_ptr<Writing> writingOf(const Caller& caller, const Request& asked, const std::string& name,
                                     Answer* answer, Document* answered, const Finish& finish) {
    auto writing = std::make_shared<Writing>();
    writing->request = writeRequest(caller, name, asked.request_id(), asked, asked.validate_only());
    writing->wrong = checkRequestId(asked.request_id());
    writing->answered = answered;
    writing->setRevision = [answer](std::int64_t revision) { answer->set_revision(revision); };
    writing->finish = finish;
    return writing;
  }

  // Prepares and stores what was given, then answers with the document as it is stored
  // or, with validate_only, as it would be. Again when someone else wrote in between
  // and the caller named no etag.
  void write(const std::shared_ptr<Writing>& writing) {
    if (writing->wrong.failed()) return writing->finish(writing->wrong);
    const Document& given = writing->given != nullptr ? *writing->given : writing->made;
    const bool namesEtag = !given.meta().etag().empty();
    auto document = std::make_shared<Document>(given);
    const Failure wrong = writing->prepare(*document);
    storage::WriteRequest request = writing->request;
    request.puts.push_back(putOfOwn(*document, writing->expect));
    if (wrong.failed()) neverCarryOut(request);
    backend_.queue().writeNow(std::move(request), [this, writing, document, wrong,
                                                   namesEtag](absl::StatusOr<storage::WriteResult> result) {
      const bool raced = result.status().code() == absl::StatusCode::kAborted && !namesEtag;
      if (raced && !wrong.failed() && --writing->triesLeft > 0)
        return backend_.readers().post([this, writing] { write(writing); });
      if (!result.ok()) return writing->finish(wrong.failed() ? wrong : fromStorage(result.status()));
      *writing->answered =
          result->replayed ? read<Document>(result->documents.front()) : std::move(*document);
      if (result->changed) *writing->answered->mutable_meta() = metaOf(result->documents.front());
      writing->setRevision(result->revision);
      writing->finish({});
    });
  }

  Failure check(const Caller& caller, const Document& document) {
    if (const auto wrong = compose::validate(document); !wrong.empty()) return invalid(wrong);
    return also_ ? also_(caller, document) : Failure();
  }

  // Whether one more of the kind has room.
  Failure checkRoom(const Caller& caller) {
    if (most_ == kAnyNumber) return {};
    const auto present = backend_.store().list(caller.householdId, kindOf(Document()), "", most_);
    if (!present.ok()) return fromStorage(present.status());
    if (static_cast<int>(present->size()) < most_) return {};
    return tooMany(kindOf(Document()), most_);
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
  const std::string service_;
  const int most_;
  const AlsoCheck also_;
};

}  // namespace suppertide::service
