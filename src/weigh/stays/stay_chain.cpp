#include "weigh/stays/stay_chain.h"

#include <algorithm>

namespace witnessmark {

StayChain::StayChain(std::size_t days) : days_(days) {
  low_.fill(kNoLow);
  high_.fill(kNoHigh);
}

bool StayChain::narrow(const Limit& limit) {
  if (limit.low > low_[limit.day])
    for (std::size_t day = limit.day; day < days_ && low_[day] < limit.low; ++day) {
      low_[day] = limit.low;
      if (low_[day] > high_[day]) return false;
    }
  if (limit.high < high_[limit.day])
    for (std::size_t day = limit.day + 1; day-- > 0 && high_[day] > limit.high;) {
      high_[day] = limit.high;
      if (low_[day] > high_[day]) return false;
    }
  return true;
}

bool StayChain::narrow(const Alternative& alternative) {
  return std::all_of(alternative.begin(), alternative.end(), [this](const Limit& limit) { return narrow(limit); });
}

bool StayChain::allows(const Alternative& alternative) const {
  if (alternative.size() == 1) {
    const Limit& limit = alternative.front();
    // Alone it is met by some choice of days when it shares a day with what is left of that day.
    return limit.low <= limit.high && limit.low <= high_[limit.day] && limit.high >= low_[limit.day];
  }
  StayChain narrower = *this;
  return narrower.narrow(alternative);
}

bool StayChain::implies(const Alternative& alternative) const {
  return std::all_of(alternative.begin(), alternative.end(), [this](const Limit& limit) {
    return low_[limit.day] >= limit.low && high_[limit.day] <= limit.high;
  });
}

/// Takes one alternative after another of the part with the fewest that are left; where one is left it is taken without
/// choosing.
class StayChain::Search {
 public:
  Search(std::size_t most_choices, bool hull) : left_(most_choices), hull_wanted_(hull) {}

  void run(StayChain chain, std::vector<const Part*> open) {
    if (limit_met_ || !settle(chain, open)) return;
    if (hull_wanted_ && found_ && !widens(chain)) return;
    if (open.empty()) {
      take(chain);
      return;
    }
    const auto fewest = std::min_element(open.begin(), open.end(), [&](const Part* a, const Part* b) {
      return count(chain, *a) < count(chain, *b);
    });
    const Part& part = **fewest;
    open.erase(fewest);
    for (const Alternative& alternative : part) {
      StayChain narrower = chain;
      if (!narrower.narrow(alternative)) continue;
      if (left_ == 0) {
        limit_met_ = true;
        return;
      }
      --left_;
      run(narrower, open);
      if (limit_met_ || (found_ && !hull_wanted_)) return;
    }
  }

  bool found() const { return found_; }
  bool limit_met() const { return limit_met_; }
  const StayChain& hull() const { return *hull_; }

 private:
  static std::size_t count(const StayChain& chain, const Part& part) {
    return static_cast<std::size_t>(std::count_if(
        part.begin(), part.end(), [&](const Alternative& alternative) { return chain.allows(alternative); }));
  }

  /// False when nothing is left.
  static bool settle(StayChain& chain, std::vector<const Part*>& open) {
    for (bool changed = true; changed;) {
      changed = false;
      for (auto at = open.begin(); at != open.end();) {
        const Alternative* only = nullptr;
        std::size_t allowed = 0;
        bool holds = false;
        for (const Alternative& alternative : **at) {
          holds = holds || chain.implies(alternative);
          if (!chain.allows(alternative)) continue;
          only = &alternative;
          ++allowed;
        }
        if (holds) {
          at = open.erase(at);
          continue;
        }
        if (allowed == 0) return false;
        if (allowed > 1) {
          ++at;
          continue;
        }
        if (!chain.narrow(*only)) return false;
        at = open.erase(at);
        changed = true;
      }
    }
    return true;
  }

  /// Whether something of it lies outside of the hull so far.
  bool widens(const StayChain& chain) const {
    for (std::size_t day = 0; day < chain.days_; ++day)
      if (chain.low_[day] < hull_->low_[day] || chain.high_[day] > hull_->high_[day]) return true;
    return false;
  }

  void take(const StayChain& chain) {
    found_ = true;
    if (!hull_) {
      hull_ = chain;
      return;
    }
    for (std::size_t day = 0; day < chain.days_; ++day) {
      hull_->low_[day] = std::min(hull_->low_[day], chain.low_[day]);
      hull_->high_[day] = std::max(hull_->high_[day], chain.high_[day]);
    }
  }

  std::size_t left_;
  bool hull_wanted_;
  bool found_ = false, limit_met_ = false;
  std::optional<StayChain> hull_;
};

Answer StayChain::can_hold(StayChain chain, const std::vector<const Part*>& parts, std::size_t most_choices) {
  Search search(most_choices, false);
  search.run(chain, parts);
  if (search.found()) return Answer::yes;
  return search.limit_met() ? Answer::cannot_tell : Answer::no;
}

StayChain::Hull StayChain::hull(StayChain chain, const std::vector<const Part*>& parts, std::size_t most_choices) {
  Search search(most_choices, true);
  search.run(chain, parts);
  Hull made;
  made.days.resize(chain.days_);
  made.consistent = search.found() ? Answer::yes : search.limit_met() ? Answer::cannot_tell : Answer::no;
  if (!search.found() || search.limit_met()) return made;
  for (std::size_t day = 0; day < chain.days_; ++day) {
    HullBounds& bounds = made.days[day].emplace();
    if (search.hull().low_[day] != kNoLow) bounds.earliest = Day{search.hull().low_[day]};
    if (search.hull().high_[day] != kNoHigh) bounds.latest = Day{search.hull().high_[day]};
  }
  return made;
}

}  // namespace witnessmark
