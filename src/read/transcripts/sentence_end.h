#pragma once
#include <string_view>

namespace witnessmark {

/// Whether the words stop at the end of a sentence: a full stop, question or exclamation mark or ellipsis,
/// quotation marks and remarks in brackets after it left aside. Machine captions without any full stop never
/// do.
bool ends_sentence(std::string_view words);

}  // namespace witnessmark
