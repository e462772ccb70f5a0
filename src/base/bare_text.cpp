#include "witnessmark/base/bare_text.h"

#include <unicode/uchar.h>
#include <unicode/utf8.h>

#include <algorithm>

namespace witnessmark {
namespace {

bool is_kept(UChar32 c) {
  constexpr std::uint32_t kKept =
      U_GC_L_MASK | U_GC_M_MASK | U_GC_N_MASK | U_GC_SC_MASK | U_GC_SM_MASK | U_GC_SO_MASK;
  return (U_GET_GC_MASK(c) & kKept) != 0;
}

bool keeps_numerals_together(UChar32 c) {
  return c == ',' || c == '\'' || c == 0x2019;
}

}  // namespace

BareText::BareText(std::string_view text) {
  const auto* bytes = reinterpret_cast<const std::uint8_t*>(text.data());
  const auto size = static_cast<std::int32_t>(text.size());
  letters.reserve(text.size());
  at.reserve(text.size());
  bool apart = false;
  std::int64_t position = 0;
  for (std::int32_t i = 0; i < size; ++position) {
    UChar32 c = 0;
    U8_NEXT(bytes, i, size, c);
    if (c < 0 || !is_kept(c)) {
      apart |= c < 0 || !keeps_numerals_together(c);
      continue;
    }
    if (apart && !letters.empty() && u_isdigit(c) && u_isdigit(static_cast<UChar32>(letters.back()))) {
      letters.push_back(U' ');
      at.push_back(at.back());
    }
    apart = false;
    letters.push_back(static_cast<char32_t>(u_foldCase(c, U_FOLD_CASE_DEFAULT)));
    at.push_back(position);
  }
}

std::size_t BareText::first_from(CodePoint position) const {
  return static_cast<std::size_t>(std::lower_bound(at.begin(), at.end(), position.value) - at.begin());
}

}  // namespace witnessmark
