#include "witnessmark/weigh/lineage.h"

#include <fmt/core.h>

#include <set>

#include "witnessmark/base/fold.h"

namespace witnessmark {

std::string_view to_string(LineageLink::Why why) {
  switch (why) {
    case LineageLink::Why::derives_from:
      return "derives from";
    case LineageLink::Why::dated_by:
      return "is dated by";
    case LineageLink::Why::identified_by:
      return "is identified by";
    case LineageLink::Why::captioned_by:
      return "has its caption from";
    case LineageLink::Why::is_interview:
      return "is the interview";
    case LineageLink::Why::narrated_by:
      return "was narrated by";
    case LineageLink::Why::interviewed_together:
      return "was interviewed together with";
    case LineageLink::Why::had_it_from:
      return "had it from";
    case LineageLink::Why::had_read:
      return "had read it, as in";
    case LineageLink::Why::was_shown:
      return "was shown";
  }
  return "";
}

std::string dump(const LineageLink& link) {
  const std::string how = link.how.empty() ? "" : fmt::format(" ({})", link.how);
  return fmt::format("{} {} {}{}", link.from.key, to_string(link.why), link.to.key, how);
}

Lineage::Lineage(const Register& evidence, const std::vector<Interview>& interviews) {
  const auto add = [this](Origin from, Origin to, LineageLink::Why why, std::string how) {
    auto& links = links_[from];
    links.push_back({std::move(from), std::move(to), why, std::move(how)});
  };
  for (const Derivation& row : evidence.derivations)
    add({Origin::Kind::source, row.source}, {Origin::Kind::source, row.derives_from},
        LineageLink::Why::derives_from, row.how);
  for (const Source& source : evidence.sources) {
    if (!source.interview.empty())
      add({Origin::Kind::source, source.key}, {Origin::Kind::source, source.interview},
          LineageLink::Why::is_interview, "");
  }
  for (const Interview& interview : interviews) {
    for (const std::string& narrator : interview.narrators) {
      add({Origin::Kind::source, interview.key}, {Origin::Kind::person, narrator},
          LineageLink::Why::narrated_by, "");
      for (const std::string& other : interview.narrators) {
        if (other == narrator) continue;
        add({Origin::Kind::person, narrator}, {Origin::Kind::person, other},
            LineageLink::Why::interviewed_together, interview.key);
      }
    }
  }
}

std::vector<LineageLink> Lineage::behind(const Origin& origin) const {
  std::set<Origin> seen{origin};
  std::vector<LineageLink> found;
  std::vector<Origin> open{origin};
  for (std::size_t i = 0; i < open.size(); ++i) {
    const auto at = links_.find(open[i]);
    if (at == links_.end()) continue;
    for (const LineageLink& link : at->second) {
      if (!seen.insert(link.to).second) continue;
      found.push_back(link);
      open.push_back(link.to);
    }
  }
  return found;
}

std::string person_named(std::string_view words, const std::vector<Person>& persons) {
  const std::string asked = fold(words);
  if (asked.empty()) return "";
  const auto only = [&](auto&& fits) -> std::string {
    std::string found;
    for (const Person& person : persons) {
      if (!fits(person)) continue;
      if (!found.empty()) return "";
      found = person.key;
    }
    return found;
  };
  if (const std::string full = only([&](const Person& person) { return fold(person.name) == asked; });
      !full.empty())
    return full;
  return only([&](const Person& person) {
    const std::string name = fold(person.name);
    const auto space = name.rfind(' ');
    return space != std::string::npos && name.substr(space + 1) == asked;
  });
}

}  // namespace witnessmark
