#include "witnessmark/base/sha256.h"

#include <doctest/doctest.h>

using namespace witnessmark;

TEST_CASE("SHA-256 gives the digests NIST publishes") {
  // NIST, "Cryptographic Standards and Guidelines: Example Values", SHA-256 (one and two blocks), and FIPS
  // 180-2, appendix B.3 (a million times "a"). The empty message: NIST CAVP, SHA256ShortMsg.rsp, Len = 0.
  struct Row {
    std::string message;
    const char* digest;
  };
  const Row rows[] = {
      {"", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"},
      {"abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"},
      {"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
       "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"},
      {std::string(1000000, 'a'), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"},
  };
  for (const Row& row : rows) CHECK(sha256_hex(row.message) == row.digest);
}

TEST_CASE("SHA-256 reads past NUL bytes") {
  CHECK(sha256_hex(std::string_view("a\0b", 3)) != sha256_hex(std::string_view("a\0c", 3)));
}
