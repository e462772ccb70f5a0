#pragma once
#include <array>

namespace witnessmark {

/// January first.
inline constexpr std::array<const char*, 12> kMonthNames{"January",   "February", "March",    "April",
                                                         "May",       "June",     "July",     "August",
                                                         "September", "October",  "November", "December"};

}  // namespace witnessmark
