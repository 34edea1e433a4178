// Bundles as people write them: any text through the client's reader, and what comes
// of it through the validator.
#include <cstddef>
#include <cstdint>
#include <string>

#include "client/terminal/bundle_file.h"
#include "server/compose/validate.h"
#include "suppertide/v1/bundle.pb.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  suppertide::v1::Bundle bundle;
  const auto reading = suppertide::terminal::readMessage(text, bundle);
  const auto found = suppertide::compose::validate(bundle, false);
  for (const auto& violation : suppertide::terminal::joined(reading, found))
    suppertide::terminal::lineOf(violation);
  return 0;
}
