// Which voices of one side are independent. All voices of one origin (a source, a narrator) are one. An
// origin that rests on another one that speaks on the same side adds nothing: it joins that one's group. It
// does not join two, so that a book which rests on two interviews does not make the two narrators one. Two
// origins that rest on each other (two narrators at one table), or that both rest on something that does not
// itself speak (two photographs dated by one log), are one group.
//
// A group stands for its roots, the origins in it that rest on no other: its kinds are theirs, and it counts
// only if one of them counts. An origin that also speaks on the other side, or that retells something that
// speaks only there, is divided.

#include "groups.h"

#include <algorithm>
#include <functional>
#include <map>
#include <numeric>
#include <set>

namespace witnessmark {
namespace {

struct OriginVoices {
  Origin origin;
  std::vector<const TracedVoice*> voices;
  std::vector<LineageLink> behind;
  std::set<Origin> rests_on;
};

std::vector<OriginVoices> by_origin(const std::vector<TracedVoice>& side) {
  std::vector<OriginVoices> origins;
  std::map<Origin, std::size_t> places;
  for (const TracedVoice& traced : side) {
    const auto [place, fresh] = places.try_emplace(traced.voice->origin, origins.size());
    if (fresh) origins.push_back({traced.voice->origin, {}, {}, {}});
    OriginVoices* at = &origins[place->second];
    at->voices.push_back(&traced);
    for (const LineageLink& link : traced.behind) {
      if (link.to == at->origin || !at->rests_on.insert(link.to).second) continue;
      at->behind.push_back(link);
    }
  }
  return origins;
}

/// The links that lead from an origin to something behind it.
std::vector<LineageLink> path_to(const OriginVoices& from, const Origin& to) {
  std::vector<LineageLink> path;
  Origin at = to;
  while (at != from.origin) {
    const auto link = std::find_if(from.behind.begin(), from.behind.end(),
                                   [&](const LineageLink& one) { return one.to == at; });
    if (link == from.behind.end() || path.size() > from.behind.size()) break;
    path.insert(path.begin(), *link);
    at = link->from;
  }
  return path;
}

/// A narrator who passes on what another said does not thereby say it.
bool counted(const OriginVoices& origin) {
  return std::any_of(origin.voices.begin(), origin.voices.end(),
                     [](const TracedVoice* traced) { return traced->voice->worth == Worth::counted; });
}

class Side {
 public:
  Side(const std::vector<TracedVoice>& side, const std::vector<TracedVoice>& other)
      : origins_(by_origin(side)),
        other_(by_origin(other)),
        group_(origins_.size()),
        root_(origins_.size(), true) {
    std::iota(group_.begin(), group_.end(), std::size_t{0});
    for (std::size_t i = 0; i < other_.size(); ++i) other_places_.emplace(other_[i].origin, i);
    links_.resize(origins_.size());
    for (std::size_t i = 0; i < origins_.size(); ++i) unite_with_what_it_rests_on(i);
    for (std::size_t i = 0; i < origins_.size(); ++i) {
      if (origins_[i].behind.empty()) continue;
      for (std::size_t j = i + 1; j < origins_.size(); ++j) unite_if_both_rest_on_something(i, j);
    }
  }

  GroupedSide grouped() const {
    GroupedSide made;
    std::vector<std::set<SourceKind>> kinds;
    std::map<std::size_t, std::vector<std::size_t>> groups;  // by the first origin of each
    for (std::size_t i = 0; i < origins_.size(); ++i) groups[group_of(i)].push_back(i);
    for (const auto& [head, members] : groups) {
      LineageGroup group = group_from(members);
      if (!group.divided) add_to_tally(members, made.tally, kinds, group);
      made.groups.push_back(std::move(group));
    }
    std::sort(made.groups.begin(), made.groups.end(), [](const LineageGroup& a, const LineageGroup& b) {
      return a.voices.front() < b.voices.front();
    });
    made.tally.kinds = most_kinds(kinds);
    return made;
  }

 private:
  std::size_t group_of(std::size_t i) const {
    while (group_[i] != i) i = group_[i];
    return i;
  }
  void unite(std::size_t i, std::size_t j) {
    const std::size_t a = group_of(i);
    const std::size_t b = group_of(j);
    if (a != b) group_[std::max(a, b)] = std::min(a, b);
  }
  void note(std::size_t i, std::vector<LineageLink> path) {
    links_[i].insert(links_[i].end(), path.begin(), path.end());
  }

  void unite_with_what_it_rests_on(std::size_t i) {
    for (const LineageLink& link : origins_[i].behind) {
      const auto parent = std::find_if(origins_.begin(), origins_.end(),
                                       [&](const OriginVoices& held) { return held.origin == link.to; });
      if (parent == origins_.end()) continue;
      const auto at = static_cast<std::size_t>(parent - origins_.begin());
      const bool mutual = parent->rests_on.contains(origins_[i].origin);
      if (mutual && at > i) continue;  // united when its turn comes
      note(i, path_to(origins_[i], link.to));
      unite(i, at);
      if (mutual) continue;
      root_[i] = false;
      return;
    }
  }

  void unite_if_both_rest_on_something(std::size_t i, std::size_t j) {
    if (!root_[i] || !root_[j] || group_of(i) == group_of(j)) return;
    for (const LineageLink& link : origins_[i].behind) {
      if (!origins_[j].rests_on.contains(link.to)) continue;
      note(i, path_to(origins_[i], link.to));
      note(j, path_to(origins_[j], link.to));
      unite(i, j);
      return;
    }
  }

  /// The link by which an origin is tied to the other side, if it is: itself, or what it retells. That a date
  /// rests on a source that says otherwise does not unsay what was seen.
  bool divided(std::size_t i) const {
    const auto itself = other_places_.find(origins_[i].origin);
    if (itself != other_places_.end() && counted(other_[itself->second]) && counted(origins_[i])) return true;
    for (const LineageLink& link : origins_[i].behind) {
      if (link.why == LineageLink::Why::interviewed_together || link.why == LineageLink::Why::dated_by)
        continue;
      const auto retold = other_places_.find(link.to);
      if (retold == other_places_.end() || !counted(other_[retold->second])) continue;
      const auto path = path_to(origins_[i], link.to);
      if (std::none_of(path.begin(), path.end(), [](const LineageLink& step) {
            return step.why == LineageLink::Why::interviewed_together ||
                   step.why == LineageLink::Why::dated_by;
          }))
        return true;
    }
    return false;
  }

  LineageGroup group_from(const std::vector<std::size_t>& members) const {
    LineageGroup group;
    group.divided = true;
    for (const std::size_t i : members) {
      for (const TracedVoice* traced : origins_[i].voices) group.voices.push_back(traced->place);
      for (const LineageLink& link : links_[i]) {
        if (std::find(group.links.begin(), group.links.end(), link) == group.links.end())
          group.links.push_back(link);
      }
      if (root_[i] && !divided(i)) group.divided = false;
    }
    std::sort(group.voices.begin(), group.voices.end());
    return group;
  }

  void add_to_tally(const std::vector<std::size_t>& members, SideTally& tally,
                    std::vector<std::set<SourceKind>>& kinds, LineageGroup& group) const {
    std::set<SourceKind> of_group;
    bool second_hand = false;
    bool intention = false;
    for (const std::size_t i : members) {
      const bool counts = root_[i] && !divided(i);
      for (const TracedVoice* traced : origins_[i].voices) {
        const Worth worth = traced->voice->worth;
        if (worth == Worth::counted && counts) of_group.insert(traced->kinds.begin(), traced->kinds.end());
        second_hand = second_hand || worth == Worth::counted || worth == Worth::second_hand;
        intention = intention || worth == Worth::intention;
      }
    }
    if (!of_group.empty()) {
      ++tally.groups;
      group.kinds.assign(of_group.begin(), of_group.end());
      kinds.push_back(std::move(of_group));
    } else if (second_hand) {
      ++tally.second_hand;
    } else if (intention) {
      ++tally.intentions;
    }
  }

  std::vector<OriginVoices> origins_, other_;
  std::map<Origin, std::size_t> other_places_;
  std::vector<std::size_t> group_;
  std::vector<bool> root_;
  std::vector<std::vector<LineageLink>> links_;
};

}  // namespace

// A kind for as many groups as can have one of their own (augmenting paths).
std::int64_t most_kinds(const std::vector<std::set<SourceKind>>& kinds) {
  std::map<SourceKind, std::size_t> brought_by;
  std::int64_t most = 0;
  for (std::size_t group = 0; group < kinds.size(); ++group) {
    std::set<SourceKind> tried;
    const std::function<bool(std::size_t)> bring = [&](std::size_t of) {
      for (const SourceKind kind : kinds[of]) {
        if (!tried.insert(kind).second) continue;
        const auto at = brought_by.find(kind);
        if (at != brought_by.end() && !bring(at->second)) continue;
        brought_by[kind] = of;
        return true;
      }
      return false;
    };
    most += bring(group);
  }
  return most;
}

GroupedSide group_side(const std::vector<TracedVoice>& side, const std::vector<TracedVoice>& other) {
  return Side(side, other).grouped();
}

}  // namespace witnessmark
