#pragma once
#include <string>

#include "app/people.h"
#include "witnessmark/store/weighings.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// Of the rules by which claims are weighed: the date policy as it stands in its file, and the number below,
/// which grows with every change of the code that makes an outcome, a relation, a gap or a fact of recall another.
constexpr int kRulesOfWeighing = 4;
std::string rules_sha256(std::string_view date_policy);

/// All that weighings rest on. The evidence on a thing is hashed with the order of its entries, with what each of
/// them rests on, and with the places they lie in.
Grounds grounds_of(const RegisterIndex& evidence, const People& people, std::string_view rules_sha256);

}  // namespace witnessmark
