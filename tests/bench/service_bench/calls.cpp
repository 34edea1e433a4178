#include "tests/bench/service_bench/calls.h"

#include <grpcpp/generic/generic_stub.h>

#include <condition_variable>
#include <mutex>

#include "server/base/ids.h"
#include "tests/support/raw_call.h"

namespace suppertide::bench {

v1::Recipe sampleRecipe(const std::string& id) {
  v1::Recipe recipe;
  recipe.set_id(id);
  recipe.set_display_name("Recipe " + id);
  recipe.set_serving_count(8);
  for (int i = 0; i < 6; ++i) {
    v1::Step& step = *recipe.add_steps();
    step.set_id("s" + std::to_string(i));
    step.set_title("Step " + std::to_string(i));
    step.set_kind(v1::STEP_KIND_HANDS_ON);
    step.mutable_duration()->mutable_likely()->set_seconds(600);
    step.set_instructions(std::string(150, 'i'));
  }
  return recipe;
}

std::unique_ptr<grpc::ClientContext> contextOf(const std::string& token) {
  auto context = std::make_unique<grpc::ClientContext>();
  if (!token.empty()) context->AddMetadata("authorization", "Bearer " + token);
  context->set_deadline(std::chrono::system_clock::now() + std::chrono::seconds(30));
  return context;
}

std::int64_t writeRecipe(v1::RecipeService::Stub& stub, const Home& home, const v1::Recipe& recipe,
                         bool create) {
  v1::WriteRecipeResponse answer;
  grpc::Status status;
  const auto context = contextOf(home.token);
  if (create) {
    v1::CreateRecipeRequest asked;
    asked.set_household_id(home.id);
    *asked.mutable_recipe() = recipe;
    asked.set_request_id(newId());
    status = stub.CreateRecipe(context.get(), asked, &answer);
  } else {
    v1::UpdateRecipeRequest asked;
    asked.set_household_id(home.id);
    *asked.mutable_recipe() = recipe;
    asked.set_request_id(newId());
    status = stub.UpdateRecipe(context.get(), asked, &answer);
  }
  if (!status.ok()) std::fprintf(stderr, "write: %s\n", status.error_message().c_str());
  return status.ok() ? answer.revision() : 0;
}

bool callRaw(const std::shared_ptr<grpc::Channel>& channel, const std::string& method,
             const std::string& bytes) {
  return rawCall(channel, *contextOf(""), "/raw/" + method, bytes).ok();
}

bool callHealth(const std::shared_ptr<grpc::Channel>& channel) {
  return rawCall(channel, *contextOf(""), "/grpc.health.v1.Health/Check", "").ok();
}

// Reads raw bytes of both servers alike; ours are parsed where somebody asks for revisions.
class Listening::Reactor : public grpc::ClientBidiReactor<grpc::ByteBuffer, grpc::ByteBuffer> {
 public:
  Reactor(const std::shared_ptr<grpc::Channel>& channel, Peer::Kind kind, const Home& home,
          std::int64_t after, Got got)
      : kind_(kind), got_(std::move(got)), stub_(channel) {
    std::string request = "x";
    std::string method = "/raw/Listen";
    if (kind == Peer::Kind::kOurs) {
      v1::WatchRequest asked;
      asked.set_household_id(home.id);
      asked.set_after_revision(after);
      request = asked.SerializeAsString();
      method = "/suppertide.v1.SyncService/Watch";
      context_.AddMetadata("authorization", "Bearer " + home.token);
    }
    const grpc::Slice slice(request);
    request_ = grpc::ByteBuffer(&slice, 1);
    stub_.PrepareBidiStreamingCall(&context_, method, grpc::StubOptions(), this);
    StartWriteLast(&request_, grpc::WriteOptions());
    StartRead(&message_);
    StartCall();
  }

  void OnReadDone(bool ok) override {
    if (!ok) return;
    std::int64_t revision = 0;
    if (kind_ == Peer::Kind::kOurs) {
      v1::WatchResponse response;
      grpc::ByteBuffer copy = message_;
      grpc::ProtoBufferReader reader(&copy);
      response.ParseFromZeroCopyStream(&reader);
      if (response.has_changes() && !response.changes().partial()) revision = response.changes().revision();
      if (response.has_bookmark()) revision = response.bookmark().revision();
    }
    got_(message_.Length(), revision);
    StartRead(&message_);
  }
  void OnDone(const grpc::Status&) override {
    const std::lock_guard lock(mutex_);
    done_ = true;
    wake_.notify_one();
  }
  void end() {
    context_.TryCancel();
    std::unique_lock lock(mutex_);
    wake_.wait(lock, [this] { return done_; });
  }

 private:
  const Peer::Kind kind_;
  const Got got_;
  grpc::GenericStub stub_;
  grpc::ClientContext context_;
  grpc::ByteBuffer request_;
  grpc::ByteBuffer message_;
  std::mutex mutex_;
  std::condition_variable wake_;
  bool done_ = false;  // guarded by mutex_
};

Listening::Listening(const std::shared_ptr<grpc::Channel>& channel, Peer::Kind kind, const Home& home,
                     std::int64_t after, Got got)
    : reactor_(std::make_unique<Reactor>(channel, kind, home, after, std::move(got))) {}

Listening::~Listening() {
  reactor_->end();
}

}  // namespace suppertide::bench
