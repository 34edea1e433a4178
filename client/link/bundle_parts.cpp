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
  std::size_t weight = 0;
  const auto add = [&](const auto& documents, auto addTo) {
    for (const auto& document : documents) {
      const std::size_t more = document.ByteSizeLong();
      if (weight > 0 && weight + more > kPartBytes) {
        parts.back().set_partial(true);
        parts.emplace_back();
        weight = 0;
      }
      weight += more;
      *(parts.back().mutable_bundle()->*addTo)() = document;
    }
  };
  const v1::Bundle& bundle = whole.bundle();
  if (bundle.has_household()) *parts.back().mutable_bundle()->mutable_household() = bundle.household();
  add(bundle.kitchens(), &v1::Bundle::add_kitchens);
  add(bundle.starters(), &v1::Bundle::add_starters);
  add(bundle.recipes(), &v1::Bundle::add_recipes);
  add(bundle.events(), &v1::Bundle::add_events);
  add(bundle.plans(), &v1::Bundle::add_plans);
  add(bundle.progresses(), &v1::Bundle::add_progresses);
  return parts;
}

}  // namespace suppertide::link
