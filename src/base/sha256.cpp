#include "witnessmark/base/sha256.h"

#include <openssl/evp.h>

#include <array>
#include <stdexcept>

#include "base/hexadecimal.h"

namespace witnessmark {

std::string sha256_hex(std::string_view bytes) {
  std::array<std::uint8_t, 32> digest{};
  unsigned int length = 0;
  if (EVP_Digest(bytes.data(), bytes.size(), digest.data(), &length, EVP_sha256(), nullptr) != 1 ||
      length != digest.size()) {
    throw std::runtime_error("libcrypto could not compute SHA-256");
  }
  return hexadecimal(digest);
}

}  // namespace witnessmark
