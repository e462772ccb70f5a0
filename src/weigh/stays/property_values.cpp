// A statement of one value is of that value's stays as it stands, and of the stays of every other value of
// the property an absence: while the funnel was buff it was not red. Two values that may be one, told more
// and less fully, do not exclude one another; the lesser is taken for the fuller where only one fuller one is
// known.
#include "weigh/stays/property_values.h"

#include <algorithm>
#include <map>

#include "weigh/comparing/property.h"

namespace witnessmark {
namespace {

using PropertyStatements = std::vector<const FixtureStatement*>;

/// Values of one property, those left out that are a lesser form of another.
std::vector<std::string> fullest(const std::vector<std::string>& values) {
  std::vector<std::string> kept;
  for (const std::string& value : values) {
    const bool lesser = std::any_of(values.begin(), values.end(), [&](const std::string& other) {
      return other.size() > value.size() && says_the_same(value, other);
    });
    if (!lesser) kept.push_back(value);
  }
  return kept;
}

class Property {
 public:
  explicit Property(const PropertyStatements& statements) : statements_(statements) {
    std::vector<std::string> values;
    for (const FixtureStatement* one : statements) {
      const std::string value = split_attribute(one->attribute).value;
      if (std::find(values.begin(), values.end(), value) == values.end()) values.push_back(value);
    }
    values_ = fullest(values);
  }

  void add_values(std::vector<PropertyValue>& made) const {
    for (const std::string& value : values_) {
      PropertyValue& one = made.emplace_back();
      for (const FixtureStatement* statement : statements_) add(*statement, value, one);
    }
  }

 private:
  /// The values a statement may mean.
  std::vector<std::string> meant_by(const std::string& value) const {
    std::vector<std::string> meant;
    for (const std::string& fuller : values_)
      if (says_the_same(value, fuller)) meant.push_back(fuller);
    return meant;
  }

  void add(const FixtureStatement& statement, const std::string& value, PropertyValue& made) const {
    const std::string own = split_attribute(statement.attribute).value;
    const auto meant = meant_by(own);
    const bool may_be = std::find(meant.begin(), meant.end(), value) != meant.end();
    if (may_be && meant.size() == 1) {
      if (made.written.empty() || (own == value && split_attribute(made.written).value != value))
        made.written = statement.attribute;
      made.statements.push_back(statement);
      return;
    }
    if (may_be || statement.denied || statement.statement == Statement::absent) return;
    made.statements.push_back(statement);
    made.statements.back().statement = Statement::absent;
  }

  const PropertyStatements& statements_;
  std::vector<std::string> values_;
};

}  // namespace

std::vector<PropertyValue> property_values(const PropertyStatements& statements) {
  std::map<std::string, PropertyStatements> by_name;
  for (const FixtureStatement* one : statements) {
    const Attribute attribute = split_attribute(one->attribute);
    if (!attribute.only_told) by_name[attribute.name].push_back(one);
  }
  std::vector<PropertyValue> made;
  for (const auto& [name, those] : by_name) Property(those).add_values(made);
  return made;
}

}  // namespace witnessmark
