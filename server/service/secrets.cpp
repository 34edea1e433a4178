#include "server/service/secrets.h"

#include <google/protobuf/io/coded_stream.h>
#include <google/protobuf/io/zero_copy_stream_impl_lite.h>
#include <sodium.h>

#include <array>
#include <cctype>
#include <stdexcept>

namespace suppertide::service {
namespace {

constexpr char kAlphabet[] = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";  // no I, O, 0, 1

void ready() {
  if (sodium_init() < 0) throw std::runtime_error("libsodium cannot start");
}

std::string hashOf(const std::string& whole) {
  ready();
  std::array<unsigned char, crypto_generichash_BYTES> hash{};
  crypto_generichash(hash.data(), hash.size(), reinterpret_cast<const unsigned char*>(whole.data()),
                     whole.size(), nullptr, 0);
  return {reinterpret_cast<const char*>(hash.data()), hash.size()};
}

// As it is hashed: without dashes, case and fingerprint.
std::string plain(const std::string& code) {
  std::string out;
  for (const char c : code.substr(0, code.find('.')))
    if (std::isalnum(static_cast<unsigned char>(c)) != 0)
      out += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return out;
}

}  // namespace

std::string newToken() {
  ready();
  std::array<unsigned char, 32> bytes{};
  randombytes_buf(bytes.data(), bytes.size());
  std::array<char, 64> text{};
  sodium_bin2base64(text.data(), text.size(), bytes.data(), bytes.size(),
                    sodium_base64_VARIANT_URLSAFE_NO_PADDING);
  return text.data();
}

std::string newCode() {
  ready();
  std::string code;
  for (int i = 0; i < 12; ++i) {
    if (i > 0 && i % 4 == 0) code += '-';
    code += kAlphabet[randombytes_uniform(sizeof(kAlphabet) - 1)];
  }
  return code;
}

std::string hashOfToken(const std::string& token) {
  return hashOf("token:" + token);
}

std::string hashOfCode(const std::string& code) {
  return hashOf("code:" + plain(code));
}

std::string memberIdOfCode(const std::string& code) {
  static constexpr char kDigits[] = "0123456789abcdef";
  const std::string hash = hashOf("member:" + plain(code));
  std::string id;
  for (std::size_t i = 0; i < 16; ++i) {
    const auto byte = static_cast<unsigned char>(hash[i]);
    id += kDigits[byte >> 4];
    id += kDigits[byte & 15];
  }
  return id;
}

std::string fingerprintOf(const std::string& method, const google::protobuf::MessageLite& content) {
  std::string bytes = method + ":";
  bytes.reserve(bytes.size() + content.ByteSizeLong());
  {
    google::protobuf::io::StringOutputStream stream(&bytes);
    google::protobuf::io::CodedOutputStream coded(&stream);
    coded.SetSerializationDeterministic(true);  // maps would come in any order
    content.SerializePartialToCodedStream(&coded);
  }
  return hashOf(bytes);
}

}  // namespace suppertide::service
