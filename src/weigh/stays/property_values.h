#pragma once
#include <string>
#include <vector>

#include "witnessmark/weigh/fixture_statement.h"

namespace witnessmark {

/// A value of a property of one subject, and the statements as they bear on its stays.
struct PropertyValue {
  std::string written;  ///< "colour: buff".
  std::vector<FixtureStatement>
      statements;  ///< Of this value; and, as absences, those of values that exclude it.
};

/// The values of all properties of one subject, from its property statements in order of presentation.
std::vector<PropertyValue> property_values(const std::vector<const FixtureStatement*>& statements);

}  // namespace witnessmark
