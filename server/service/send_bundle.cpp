#include "server/service/send_bundle.h"

#include <deque>
#include <memory>
#include <utility>

#include "server/service/answer_stream.h"
#include "server/service/bundle_import.h"

namespace suppertide::service {
namespace {

constexpr char kExportBundle[] = "HouseholdService/ExportBundle";
constexpr std::size_t kBundlePartBytes = 1024 * 1024;

// One at least. Goes by the fields that a bundle has, so that no kind is forgotten.
std::deque<v1::Bundle> partsOf(const v1::Bundle& bundle) {
  const auto* fields = v1::Bundle::descriptor();
  const auto* reading = bundle.GetReflection();
  std::deque<v1::Bundle> parts(1);
  std::size_t weight = 0;
  if (bundle.has_household()) *parts.back().mutable_household() = bundle.household();
  for (int f = 0; f < fields->field_count(); ++f) {
    const auto* field = fields->field(f);
    if (!field->is_repeated()) continue;
    for (int i = 0; i < reading->FieldSize(bundle, field); ++i) {
      const auto& document = reading->GetRepeatedMessage(bundle, field, i);
      const std::size_t more = document.ByteSizeLong();
      if (weight > 0 && weight + more > kBundlePartBytes) {
        parts.emplace_back();
        weight = 0;
      }
      weight += more;
      reading->AddMessage(&parts.back(), field)->CopyFrom(document);
    }
  }
  return parts;
}

class ExportCall final : public AnswerStream<v1::Bundle> {
 public:
  ExportCall(Backend& backend, grpc::CallbackServerContext& context, const v1::ExportBundleRequest& asked)
      : AnswerStream(backend, context, kExportBundle), asked_(asked) {}

  void OnWriteDone(bool ok) override {
    if (!ok) return end(grpc::Status::CANCELLED);
    parts_.empty() ? end(grpc::Status::OK) : sendNext();
  }

 private:
  Failure open(const grpc::CallbackServerContext& context) override {
    Caller caller;
    if (const Failure refused = backend_.admit(context, kExportBundle, asked_.household_id(), caller);
        refused.failed())
      return refused;
    if (const Failure refused = enlist(caller); refused.failed()) return refused;
    v1::Bundle bundle;
    const Failure wrong = exportOf(backend_, caller.householdId, asked_.event_id(), bundle);
    if (!wrong.failed()) parts_ = partsOf(bundle);
    return wrong;
  }
  void opened() override { sendNext(); }

  void sendNext() {
    v1::Bundle part = std::move(parts_.front());
    parts_.pop_front();
    std::lock_guard lock(mutex_);
    send(std::move(part));
  }

  const v1::ExportBundleRequest asked_;
  std::deque<v1::Bundle> parts_;  // not sent yet
};

}  // namespace

grpc::ServerWriteReactor<v1::Bundle>* sendBundle(Backend& backend, grpc::CallbackServerContext& context,
                                                 const v1::ExportBundleRequest& asked) {
  const auto call = std::make_shared<ExportCall>(backend, context, asked);
  call->start();
  return call.get();
}

}  // namespace suppertide::service
