#include "client/link/bundle_parts.h"

namespace suppertide::link {
namespace {

constexpr std::size_t kPartBytes = 1024 * 1024;

}  // namespace

std::vector<v1::ImportBundleRequest> partsOf(const v1::ImportBundleRequest& whole) {
  std::vector<v1::ImportBundleRequest> parts(1);
  parts.back().set_household_id(whole.household_id());
  parts.back().set_request_id(whole.request_id());
  parts.back().set_validate_only(whole.validate_only());
  const v1::Bundle& bundle = whole.bundle();
  if (bundle.has_household()) *parts.back().mutable_bundle()->mutable_household() = bundle.household();
  const auto* fields = v1::Bundle::descriptor();
  const auto* reading = bundle.GetReflection();
  std::size_t weight = 0;
  for (int f = 0; f < fields->field_count(); ++f) {
    const auto* field = fields->field(f);
    if (!field->is_repeated()) continue;
    for (int i = 0; i < reading->FieldSize(bundle, field); ++i) {
      const auto& document = reading->GetRepeatedMessage(bundle, field, i);
      const std::size_t more = document.ByteSizeLong();
      if (weight > 0 && weight + more > kPartBytes) {
        parts.back().set_partial(true);
        parts.emplace_back();
        weight = 0;
      }
      weight += more;
      reading->AddMessage(parts.back().mutable_bundle(), field)->CopyFrom(document);
    }
  }
  return parts;
}

}  // namespace suppertide::link
