// New inputs for fuzz_stored: a document with other values, or any bytes.
#include <google/protobuf/message.h>

#include <memory>

#include "tests/fuzz/mutate_message.h"
#include "tests/fuzz/mutators.h"
#include "tests/fuzz/stored_kinds.h"

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t maxSize,
                                               unsigned seed) {
  suppertide::Dice dice(seed);
  if (size == 0 || data[0] >= 128 || dice.chance(20)) return LLVMFuzzerMutate(data, size, maxSize);
  const auto* type = suppertide::fuzz::storedKind(data[0])->message_type();
  const std::unique_ptr<google::protobuf::Message> document(
      google::protobuf::MessageFactory::generated_factory()->GetPrototype(type)->New());
  document->ParsePartialFromArray(data + 1, static_cast<int>(size) - 1);
  for (int changes = dice.between(1, 4); changes > 0; --changes) suppertide::fuzz::mutate(*document, dice);
  return suppertide::fuzz::give(
      std::string(1, static_cast<char>(data[0])) + document->SerializePartialAsString(), data, maxSize);
}
