// Gives a fuzz target each file of a folder, so that what was found once stays found.
//
//   fuzz_NAME_replay FOLDER...
#include <google/protobuf/stubs/logging.h>

#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

// As it is, cut short, and with a byte changed here and there: cheap company for each sample.
void giveVariants(const std::string& bytes) {
  const auto give = [](const std::string& variant) {
    LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(variant.data()), variant.size());
  };
  give(bytes);
  const std::size_t stride = bytes.size() / 16 + 1;
  for (std::size_t at = 1; at < bytes.size(); at += stride) {
    give(bytes.substr(0, at));
    std::string changed = bytes;
    changed[at] = static_cast<char>(changed[at] ^ 0x55);
    give(changed);
  }
}

}  // namespace

int main(int argc, char** argv) {
  google::protobuf::SetLogHandler(nullptr);  // it complains of each text that is no UTF-8
  int files = 0;
  for (int i = 1; i < argc; ++i) {
    for (const auto& entry : std::filesystem::recursive_directory_iterator(argv[i])) {
      if (!entry.is_regular_file()) continue;
      std::ifstream file(entry.path(), std::ios::binary);
      giveVariants({std::istreambuf_iterator<char>(file), {}});
      ++files;
    }
  }
  std::printf("%d samples\n", files);
  std::fflush(stdout);
  std::_Exit(files > 0 ? 0 : 1);  // servers that targets keep for life are not taken down
}
