// New inputs for fuzz_bundle: a bundle with other values in its JSON, or any text.
#include <google/protobuf/util/json_util.h>

#include "client/terminal/bundle_file.h"
#include "suppertide/v1/bundle.pb.h"
#include "tests/fuzz/mutate_message.h"
#include "tests/fuzz/mutators.h"

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t maxSize,
                                               unsigned seed) {
  suppertide::Dice dice(seed);
  if (dice.chance(40)) return LLVMFuzzerMutate(data, size, maxSize);
  suppertide::v1::Bundle bundle;
  suppertide::terminal::readMessage({reinterpret_cast<const char*>(data), size}, bundle);
  for (int changes = dice.between(1, 4); changes > 0; --changes) suppertide::fuzz::mutate(bundle, dice);
  std::string text;
  if (!google::protobuf::util::MessageToJsonString(bundle, &text).ok())
    return LLVMFuzzerMutate(data, size, maxSize);
  return suppertide::fuzz::give(text, data, maxSize);
}
